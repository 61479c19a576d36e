import type { CoatFacts, CoverFacts } from '../../../shared/nouns.ts'
import type { Fault } from '../../../shared/opening.ts'
import {
  type CoatAgain,
  type Difference,
  differences,
  type MadeWith,
  stackAgain,
} from '../../engine/fired/again.ts'
import { endOf } from '../firing/firing.ts'
import { plannedDip } from '../forecast/hypothetical-dip.ts'
import { engineDip, historyOf, MIN_MS } from '../forecast/pot-history.ts'
import { LIMITS } from '../model/limits.ts'
import type { LoadState } from '../model/load-state.ts'
import { coatsOn } from '../model/plan.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { coatOf, isSure, loadFiredIn, whenMade } from './fired-coats.ts'
import { firedOf } from './fired-pot.ts'
import { heatAt } from './heats.ts'
import { onShelf, passedFoot } from './results.ts'

/** A fired pot's stack for a pot of today. */
export interface Again {
  readonly coats: readonly (CoatAgain & { readonly bucketId: string; readonly cover: CoverFacts })[]
  /** As a plan: each coat's edges as they were dipped, its seconds anew, after its wait. Undefined where a coat cannot be had. */
  readonly plan: readonly CoatFacts[] | undefined
  readonly differences: readonly Difference[]
  /** It ran, past the foot line or down to the shelf: the same again would. */
  readonly ran: 'shelf' | 'past-foot' | undefined
  /** What went wrong with its glaze besides: the same again may. */
  readonly faults: readonly Fault[]
}

/** Why a fired pot cannot be made again: its coats are not known, or a bucket of it is no more. */
export type NotAgain = { readonly why: 'unsure' } | { readonly why: 'no-bucket'; readonly bucketId: string }

/** Faults that a stack brings with it. */
const OF_GLAZE: ReadonlySet<Fault> = new Set<Fault>([
  'crawled',
  'pinholed',
  'crazed',
  'blistered',
  'shivered',
  'dry',
  'bare',
])

/** Seconds as a person counts them. */
const STEP_S = 0.5
/** Seconds as a count can be set: see `DOSE`. */
export const counted = (holdS: number): number =>
  Math.min(LIMITS.holdS.most, Math.max(LIMITS.holdS.least, Math.round(holdS / STEP_S) * STEP_S))

/** A glaze is mixed this near to what it was dipped at, g/mL: beyond it is another glaze. Our choice. */
const MIXED_NEAR = 0.1
const mixedTo = (gramsPerMl: number) => ({
  least: Math.max(LIMITS.gramsPerMl.least, gramsPerMl - MIXED_NEAR),
  most: Math.min(LIMITS.gramsPerMl.most, gramsPerMl + MIXED_NEAR),
})

/** A bare pot of the same make, where none of today is chosen: wiped before its first coat as that one was. */
function bare({ facts, wipedAt, dips }: PotState, now: number): PotState {
  const first = dips[0]?.outAt
  return {
    facts,
    dips: [],
    touches: [],
    weighings: [],
    uncounted: false,
    gone: false,
    ...(wipedAt === undefined || first === undefined ? {} : { wipedAt: now - Math.max(0, first - wipedAt) }),
  }
}

function madeWith(
  table: Table,
  { facts }: PotState,
  slab: boolean,
  dips: readonly DipState[],
  densityOf: (dip: DipState) => number,
  fillOf: (dip: DipState) => string,
): MadeWith {
  return {
    wallMm: facts.shape.wallMm,
    slab,
    bisqueCone: facts.bisqueCone ?? table.board.bisqueCone,
    absorption: facts.absorption ?? table.board.absorption,
    coats: dips.map((dip) => ({ glazeId: dip.bucketId, fill: fillOf(dip), gramsPerMl: densityOf(dip) })),
  }
}

/**
 * That one again: the stack of a fired pot as it was dipped, on `target` (a pot of today; left out, one of the same make),
 * each coat with the seconds that give today what it was then, from `now` on (table time, ms).
 */
export function againOf(
  table: Table,
  pot: PotState,
  now: number,
  target: PotState = bare(pot, now),
): Again | NotAgain {
  if (!isSure(table, pot)) return { why: 'unsure' }
  const dips = coatsOn(pot)
  const gone = dips.find(({ bucketId }) => !table.buckets[bucketId])
  if (gone) return { why: 'no-bucket', bucketId: gone.bucketId }
  const today = (bucketId: string): number => table.buckets[bucketId]?.gramsPerMl ?? 1
  const goal = table.settings.readyMeans === 'thirsty' ? 'thirsty' : 'touch'
  const done = dips.flatMap((dip, i) => {
    const { bucketId, cover, holdS } = dip
    const made = engineDip(table, target, plannedDip(i, { bucketId, cover, holdS }, today(bucketId), now))
    const mm = coatOf(table, pot, dip.dipId)
    const waitedMin = Math.max(0, dip.outAt - (dips[i - 1]?.outAt ?? dip.outAt)) / MIN_MS
    const densities = mixedTo(dip.gramsPerMl)
    return made && mm !== undefined && mm > 0 ? [{ dip: made, mm, waitedMin, densities, of: dip }] : []
  })
  const standing = historyOf(table, target)
  const coats = stackAgain(standing, done, goal).flatMap((coat, i) => {
    const of = done[i]?.of
    return of ? [{ ...coat, bucketId: of.bucketId, cover: of.cover }] : []
  })
  const plan = coats.map(
    ({ bucketId, cover, holdS, afterMin }): CoatFacts => ({
      bucketId,
      cover,
      holdS: counted(holdS),
      ...(afterMin > 0 ? { afterMin: Math.ceil(afterMin) } : {}),
    }),
  )
  const meets = coats.length === dips.length && coats.every((coat) => coat.meets)
  const filledAt = (bucketId: string): number =>
    table.buckets[bucketId]?.log.findLast(({ what }) => what === 'filled')?.at ?? 0
  const made = whenMade(table, pot)
  const then = madeWith(
    made,
    pot,
    stoodOnSlab(table, pot),
    dips,
    ({ gramsPerMl }) => gramsPerMl,
    ({ bucketId, outAt }) => (outAt >= filledAt(bucketId) ? 'this' : 'before'),
  )
  const nowMade = madeWith(
    table,
    target,
    target.slab ?? false,
    dips,
    ({ bucketId }) => today(bucketId),
    () => 'this',
  )
  return {
    coats,
    plan: meets ? plan : undefined,
    differences: differences(then, nowMade, heatThen(table, pot)),
    ran: ranFar(pot),
    faults: (firedOf(pot).found?.faults ?? []).filter((fault) => OF_GLAZE.has(fault)),
  }
}

/** The load that a pot was judged out of, if its kiln was lit. */
function firedIn(table: Table, pot: PotState): LoadState | undefined {
  const { found, loadId } = firedOf(pot)
  return loadFiredIn(table, pot, found?.loadId ?? loadId)
}

const stoodOnSlab = (table: Table, pot: PotState): boolean =>
  firedIn(table, pot)?.things[pot.facts.lidOf ?? pot.facts.potId]?.slab ?? pot.slab ?? false

function ranFar(pot: PotState): Again['ran'] {
  const { found } = firedOf(pot)
  if (onShelf(found?.run)) return 'shelf'
  return passedFoot(pot, found?.run) ? 'past-foot' : undefined
}

/** How the firing of a pot went beside its plan; nothing where nobody knows it. */
function heatThen(
  table: Table,
  pot: PotState,
): { readonly overK: number | null; readonly plannedEndC: number } {
  const load = firedIn(table, pot)
  const end = load && endOf(load.firing)
  if (!load || !end) return { overK: null, plannedEndC: 1222 }
  const storey = load.things[pot.facts.lidOf ?? pot.facts.potId]?.storey
  return { overK: heatAt(load, storey).overK, plannedEndC: end.tempC }
}
