/** Which flow test would be worth most. */

import type { Profile } from '../contract.ts'
import { type CoatOnWall, checkedCoats, coatsOn, type GlazePair, untriedPairs } from './coats.ts'

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

/** Stripes of one, two and three dips tell the square law from anything else; 60 mm of band keeps R under L/2. */
const STRIPES = [1, 2, 3] as const
const BAND_MM = 60

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
