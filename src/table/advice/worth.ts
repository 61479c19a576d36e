import type { WallEvent } from '../../engine/contract.ts'
import { waitsOf } from '../../engine/wait/forecast.ts'
import { weighingTells } from '../../engine/wait/learn.ts'
import { type Learned, unlearnedOn } from '../../engine/wait/learned.ts'
import { type Measurement, readingOf, type WaitToCome, worthOf } from '../../engine/wait/worth.ts'
import { dippedBody } from '../../engine/wall/body.ts'
import { courseOf, runPot } from '../../engine/wall/pot.ts'
import { plannedDip } from '../forecast/hypothetical-dip.ts'
import { lessonFor, lessonOf } from '../forecast/learning.ts'
import { engineDip, historyWith, MIN_MS } from '../forecast/pot-history.ts'
import { bodyOf } from '../forecast/wall-inputs.ts'
import { planOf, potsOnTable } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'

/** One measurement that would narrow the waits of this board. */
export type Offer =
  /** The clay: a pot weighed dry and after seconds in water, or a tile dipped twice. */
  | { readonly kind: 'clay'; readonly factor: number }
  /** A pot, weighed bare and after its coat, or touched at its likely moment; coats from 1. */
  | {
      readonly kind: 'scale' | 'touch'
      readonly potId: string
      readonly coat: number
      readonly factor: number
    }

export interface BoardWorth {
  /** Late over early of the board's waits before any check, and as they are known now. */
  readonly untaught: number
  readonly factor: number
  readonly checks: number
  /** What narrows most of the board; undefined where nothing would by much. */
  readonly best: Offer | undefined
}

/** Kinds of pots looked at, the most numerous first: a phone must answer at once. */
const KINDS = 3
/** An offer must narrow waits by this part. Our choice. */
const WORTH_PART = 0.93
/** Of one kind a measurement is offered for so many coats: later ones come too late to help. */
const COATS = 2

interface Planned extends WaitToCome {
  readonly potId: string
  readonly coat: number
}

/** The waits after each planned coat of a bare pot, each coat when the one below is likely dry. */
function waitsToCome(table: Table, pot: PotState, pots: number, now: number): Planned[] {
  const { pot: wall, air0, events: before } = historyWith(table, pot, [])
  const { potId } = pot.facts
  const events: WallEvent[] = [...before]
  const waits: Planned[] = []
  let at = now
  for (const [i, coat] of planOf(table, pot).entries()) {
    const gramsPerMl = table.buckets[coat.bucketId]?.gramsPerMl
    const dip =
      gramsPerMl === undefined ? undefined : engineDip(table, pot, plannedDip(i, coat, gramsPerMl, at))
    if (!dip) break
    events.push(dip)
    const learned = lessonFor(table, coat.bucketId)
    const { touchMin } = waitsOf(runPot(courseOf(wall, events, air0), Math.exp(learned.fillMean)), 'touch')
    waits.push({
      id: `${potId} ${i}`,
      pot: wall,
      events: [...events],
      air0,
      pots,
      potId,
      coat: i + 1,
      learned,
    })
    if (!Number.isFinite(touchMin)) break
    at += touchMin * MIN_MS
  }
  return waits
}

/** Bare pots of this table by what their waits depend on, the most numerous kinds first. */
function kindsOf(table: Table): { readonly pot: PotState; readonly pots: number }[] {
  const kinds = new Map<string, { readonly pot: PotState; readonly pots: number }>()
  for (const pot of potsOnTable(table)) {
    if (pot.dips.length > 0 || pot.later) continue
    const { shape, absorption } = pot.facts
    const key = JSON.stringify([shape, absorption, planOf(table, pot)])
    const known = kinds.get(key)
    kinds.set(key, { pot: known?.pot ?? pot, pots: (known?.pots ?? 0) + 1 })
  }
  return [...kinds.values()].sort((a, b) => b.pots - a.pots).slice(0, KINDS)
}

let kept: { readonly key: readonly unknown[]; readonly value: BoardWorth | undefined } | undefined

/**
 * How far the waits of the pots that are still bare are known, and which one measurement would narrow them most.
 * Undefined where none is bare, or waits go by the clock.
 */
export function worthNow(table: Table, now: number): BoardWorth | undefined {
  const learned = lessonOf(table)
  const { pots, buckets, stacks, air, board, settings } = table
  const key = [pots, buckets, stacks, air, board, settings]
  if (kept?.key.every((one, k) => one === key[k])) return kept.value
  const value = settings.readyMeans === 'clock' ? undefined : computed(table, learned, now)
  kept = { key, value }
  return value
}

function computed(table: Table, learned: Learned, now: number): BoardWorth | undefined {
  const kinds = kindsOf(table)
  const waits = kinds.flatMap(({ pot, pots }) => waitsToCome(table, pot, pots, now))
  if (waits.length === 0) return undefined
  const offers: { readonly measurement: Measurement; readonly at: (factor: number) => Offer }[] = []
  const body = bodyOf(table)
  const start = unlearnedOn(body)
  if (table.board.sorptivityMmPerSqrtS === undefined && learned.count === 0)
    offers.push({
      measurement: { kind: 'reading', sd: readingOf(start, unlearnedOn(dippedBody(body))) },
      at: (factor) => ({ kind: 'clay', factor }),
    })
  waits.forEach((wait, k) => {
    const { potId, coat } = wait
    if (coat > COATS) return
    const touch: Measurement = { kind: 'touch', wait: k }
    const scale: Measurement = { kind: 'reading', sd: weighingTells(wait), wait: k }
    offers.push({ measurement: touch, at: (factor) => ({ kind: 'touch', potId, coat, factor }) })
    offers.push({ measurement: scale, at: (factor) => ({ kind: 'scale', potId, coat, factor }) })
  })
  const { factor, after } = worthOf(
    waits,
    learned,
    offers.map(({ measurement }) => measurement),
  )
  const least = Math.min(...after)
  const untold = waits.map((wait) => ({ ...wait, learned: start }))
  const untaught = learned.count === 0 ? factor : worthOf(untold, start, []).factor
  const found = least < WORTH_PART * factor ? offers[after.indexOf(least)]?.at(least) : undefined
  return { untaught, factor, checks: learned.count, best: found }
}
