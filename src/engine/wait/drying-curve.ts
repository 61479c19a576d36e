/** How a wait goes: what is still wet along it, of the face that is dry last. */

import type { Air, PotWall, WallEvent } from '../contract.ts'
import { HORIZON_MIN } from '../parameters.ts'
import { type Goal, stillWet, wait } from '../wall/drying.ts'
import { courseOf, runPot } from '../wall/pot.ts'
import { waitsOf, wets, wettedS } from './forecast.ts'

/** What is still wet of a face, parts of what was at the start of its wait, 1 to 0. */
export interface Wetness {
  /** The film that stands on it and shines. */
  readonly film: number
  /** What must leave under it: until it is touch-dry, or thirsty again. */
  readonly damp: number
}

/** A wait from the last wetting on, as computed: minutes on the clock of the events, and how wet on the way. */
export interface DryingCurve {
  readonly fromMin: number
  /** Until the goal; seven days where it is never reached. */
  readonly lastsMin: number
  /** At the squares of even parts of the wait: most changes early. */
  readonly wet: readonly Wetness[]
}

const PARTS = 48
const DRY: Wetness = { film: 0, damp: 0 }

const partOf = (mm: number, ofMm: number): number => (ofMm > 0 ? Math.min(1, Math.max(0, mm / ofMm)) : 0)

/**
 * Follows the face that is last to be touch-dry, or thirsty again, through its wait. `fill` scales the water that dips
 * bring. RangeError as `forecastPot`.
 */
export function dryingCurve(
  pot: PotWall,
  events: readonly WallEvent[],
  air0: Air,
  fill: number,
  goal: Exclude<Goal, 'kiln'>,
): DryingCurve {
  const course = courseOf(pot, events, air0)
  const { slowest, thirstLast } = waitsOf(runPot(course, fill), goal)
  const last = goal === 'touch' ? slowest : thirstLast
  const min = (goal === 'touch' ? last?.touchMin : last?.thirstyMin) ?? 0
  const fromS = wettedS(course)
  const curve = { fromMin: course.originMin + fromS / 60, lastsMin: Math.min(HORIZON_MIN, Math.max(0, min)) }
  if (!last || curve.lastsMin === 0) return { ...curve, wet: [DRY] }

  const until = course.events.findLastIndex(wets) + 1
  const wetted = { ...course, stretches: [last.piece.stretch], events: course.events.slice(0, until) }
  const run = runPot(wetted, fill)
  const [{ wall }] = run.pieces as [(typeof run.pieces)[number]]
  const airs = course.events.slice(until).filter((event) => event.kind === 'air')
  let { weather } = run
  let nowS = fromS
  const followTo = (toS: number): void => {
    for (let next = airs[0]; next; next = airs[0]) {
      const atS = (next.atMin - course.originMin) * 60
      if (atS > toS) break
      nowS = wait(wall, weather, fromS, nowS, atS)
      weather = course.weathers.get(next.air) ?? weather
      airs.shift()
    }
    nowS = wait(wall, weather, fromS, nowS, toS)
  }
  const first = stillWet(wall, last.face)
  const wet = Array.from({ length: PARTS + 1 }, (_, k) => {
    followTo(fromS + curve.lastsMin * 60 * (k / PARTS) ** 2)
    const now = stillWet(wall, last.face)
    const touch = partOf(now.touchMm, now.ofTouchMm)
    const thirst = partOf(now.thirstMm, first.thirstMm)
    return {
      film: partOf(now.filmMm, first.filmMm),
      damp: goal === 'touch' ? touch : Math.max(touch, thirst),
    }
  })
  return { ...curve, wet }
}

/** What is still wet when `done` of a wait (0 to 1; more is dry) is over. */
export function wetnessAfter({ wet }: DryingCurve, done: number): Wetness {
  const last = wet.length - 1
  if (done >= 1 || last === 0) return wet[last] ?? DRY
  const at = Math.sqrt(Math.max(0, done)) * last
  const k = Math.floor(at)
  const [a, b] = [wet[k] ?? DRY, wet[k + 1] ?? DRY]
  const between = (from: number, to: number): number => from + (to - from) * (at - k)
  return { film: between(a.film, b.film), damp: between(a.damp, b.damp) }
}
