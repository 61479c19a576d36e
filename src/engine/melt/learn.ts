/** What a fired pot says of its doses, and which flow test would be worth most. */

import { inRange } from '../check.ts'
import type { Profile } from '../contract.ts'
import { type CoatOnWall, checkedCoats, coatsOn, type GlazePair, layCoats, untriedPairs } from './coats.ts'
import { flow, frontMm } from './flow.ts'
import { LEAST_SLOPE } from './melt.ts'
import { downToMm, downwards, pathAlong } from './path.ts'

/** How much more (over 1) or less the pot ran than its doses said. */
export interface PotFinding {
  readonly doseFactor: number
  /** True when the run ended on the shelf, so the factor is a lower bound. */
  readonly atLeast: boolean
}

/** A pot as it stands before the firing. */
export interface BoardPot {
  readonly profile: Profile
  readonly coats: readonly CoatOnWall[]
}

/** What a flow tile should try: one glaze, or one glaze over another. */
export interface TileSubject {
  readonly under: string | null
  readonly over: string
  /** Pots of this board that carry it outside. */
  readonly pots: number
  /** Square of the thickest dry coat under which it lies, mm2: what a run grows with. */
  readonly weightMm2: number
}

/** What goes on the ticket of a flow tile, and how to read it afterwards. */
export interface TileTicket extends TileSubject {
  readonly dips: readonly number[]
  readonly bandMm: number
  readonly onCatchDish: true
}

/** Beyond these a finding says that the outline or the glaze was another one (assumption). */
const FACTOR = { least: 0.02, most: 50 } as const
const HALVINGS = 24
/** Stripes of one, two and three dips tell the square law from anything else; 60 mm of band keeps R under L/2. */
const STRIPES = [1, 2, 3] as const
const BAND_MM = 60

/**
 * The factor on all doses of a pot's outside with which it runs `runMm`, the mean travel of its lowest edge along
 * the wall as measured after firing. Null when no coat there has a dose, or nothing ran.
 * RangeError for a run out of range or coats out of range.
 */
export function findingOfPot(pot: BoardPot, runMm: number): PotFinding | null {
  checkedCoats(pot.coats)
  inRange('runMm', runMm, 0, 1000)
  const outside = coatsOn(pot.coats, 'outside')
  if (runMm === 0 || !outside.some((coat) => coat.dose)) return null
  const line = downwards(pot.profile, 'outside')
  const edgeMm = Math.max(0, ...outside.map((coat) => downToMm(line, coat.fromMm)))
  const path = pathAlong(line, edgeMm, LEAST_SLOPE)
  const roomMm = path.lengthMm - edgeMm
  const wanted = Math.min(runMm, roomMm)
  const runs = (factor: number): number => {
    const melt = layCoats(path, line, outside, false)
    const from = frontMm(melt)
    flow(melt, factor)
    return frontMm(melt) - from
  }
  let [low, high] = [Math.log(FACTOR.least), Math.log(FACTOR.most)]
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2
    if (runs(Math.exp(middle)) < wanted) low = middle
    else high = middle
  }
  return { doseFactor: Math.exp((low + high) / 2), atLeast: runMm >= roomMm }
}

/** Thickest dry build over any height where the coats that `here` accepts lie, mm. */
function thickestUnder(coats: readonly CoatOnWall[], here: (coat: CoatOnWall) => boolean): number {
  const marked = coats.filter(here)
  const builds = marked.map((mark) =>
    coats
      .filter((coat) => coat.fromMm < mark.toMm && coat.toMm > mark.fromMm)
      .reduce((sum, coat) => sum + coat.likelyMm, 0),
  )
  return Math.max(0, ...builds)
}

/**
 * The flow tile that should ride along with this board: of the untested glazes and the untried pairs, the one whose
 * unknown run weighs most, thickness squared summed over the pots. Untested glazes go before pairs, since without
 * them no pot can be cleared at all. Null when nothing is untested.
 */
export function tileTicket(board: readonly BoardPot[], proved: readonly GlazePair[]): TileTicket | null {
  const subjects = new Map<string, TileSubject>()
  const add = (under: string | null, over: string, thickMm: number): void => {
    const key = JSON.stringify([under, over])
    const before = subjects.get(key)
    subjects.set(key, {
      under,
      over,
      pots: (before?.pots ?? 0) + 1,
      weightMm2: (before?.weightMm2 ?? 0) + thickMm * thickMm,
    })
  }
  for (const { coats } of board) {
    const outside = coatsOn(checkedCoats(coats), 'outside')
    for (const glazeId of new Set(outside.filter((c) => !c.dose).map((c) => c.glazeId)))
      add(
        null,
        glazeId,
        thickestUnder(outside, (c) => c.glazeId === glazeId),
      )
    for (const { under, over } of untriedPairs(outside, proved))
      add(
        under,
        over,
        thickestUnder(outside, (c) => c.glazeId === over),
      )
  }
  const all = [...subjects.values()]
  const lone = all.filter((s) => s.under === null)
  const [most] = (lone.length > 0 ? lone : all).sort((a, b) => b.weightMm2 - a.weightMm2)
  return most ? { ...most, dips: STRIPES, bandMm: BAND_MM, onCatchDish: true } : null
}
