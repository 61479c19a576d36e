import type { CoatFacts } from '../../../shared/nouns.ts'
import {
  type CoatAgain,
  type Difference,
  differences,
  type MadeWith,
  stackAgain,
  waitsMin,
} from '../../engine/fired/again.ts'
import { tellingZone } from '../../engine/wait/seconds.ts'
import { endOf } from '../firing/firing.ts'
import { plannedDip } from '../forecast/hypothetical-dip.ts'
import { engineDip, historyOf } from '../forecast/pot-history.ts'
import { LIMITS } from '../model/limits.ts'
import { coatsOn } from '../model/plan.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { firedZones, isSure, loadFiredIn } from './fired-coats.ts'
import { firedOf } from './fired-pot.ts'
import { heatAt } from './heats.ts'

/** A fired pot's stack for a pot of today. */
export interface Again {
  readonly coats: readonly (CoatAgain & { readonly bucketId: string })[]
  /** As a plan: each coat's edges as they were dipped, its seconds anew. */
  readonly plan: readonly CoatFacts[]
  readonly differences: readonly Difference[]
}

/** Why a fired pot cannot be made again: its coats are not known, or a bucket of it is no more. */
export type NotAgain = { readonly why: 'unsure' } | { readonly why: 'no-bucket'; readonly bucketId: string }

/** Seconds as a person counts them. */
const STEP_S = 0.5
const counted = (holdS: number): number =>
  Math.min(LIMITS.holdS.most, Math.max(LIMITS.holdS.least, Math.round(holdS / STEP_S) * STEP_S))

/** A bare pot of the same make, where none of today is chosen. */
const bare = ({ facts }: PotState): PotState => ({
  facts,
  dips: [],
  touches: [],
  weighings: [],
  uncounted: false,
  gone: false,
})

const thickness = (table: Table, pot: PotState, { dipId }: DipState): number | undefined =>
  tellingZone(firedZones(table, pot), dipId)?.coats.find((coat) => coat.dipId === dipId)?.likelyMm

function madeWith(
  table: Table,
  { facts }: PotState,
  dips: readonly DipState[],
  waitMin: number,
  densityOf: (dip: DipState) => number,
  fillOf: (dip: DipState) => string,
): MadeWith {
  return {
    wallMm: facts.shape.wallMm,
    bisqueCone: facts.bisqueCone ?? table.board.bisqueCone,
    absorption: facts.absorption ?? table.board.absorption,
    coats: dips.map((dip) => ({ glazeId: dip.bucketId, fill: fillOf(dip), gramsPerMl: densityOf(dip) })),
    waitMin,
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
  target: PotState = bare(pot),
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
    const mm = thickness(table, pot, dip)
    return made && mm !== undefined && mm > 0 ? [{ dip: made, mm, of: dip }] : []
  })
  const standing = historyOf(table, target)
  const coats = stackAgain(standing, done, goal).map((coat, i) => ({
    ...coat,
    bucketId: done[i]?.of.bucketId ?? coat.glazeId,
  }))
  const plan = coats.flatMap(({ bucketId, holdS }, i): CoatFacts[] => {
    const cover = done[i]?.of.cover
    return cover ? [{ bucketId, cover, holdS: counted(holdS) }] : []
  })
  const filledAt = (bucketId: string): number =>
    table.buckets[bucketId]?.log.findLast(({ what }) => what === 'filled')?.at ?? 0
  const then = madeWith(
    table,
    pot,
    dips,
    waitsMin(historyOf(table, pot), goal),
    ({ gramsPerMl }) => gramsPerMl,
    ({ bucketId, outAt }) => (outAt >= filledAt(bucketId) ? 'this' : 'before'),
  )
  const nowMade = madeWith(
    table,
    target,
    dips,
    coats.reduce((sum, { waitMin }) => sum + waitMin, 0),
    ({ bucketId }) => today(bucketId),
    () => 'this',
  )
  return { coats, plan, differences: differences(then, nowMade, heatThen(table, pot)) }
}

/** How the firing of a pot went beside its plan; nothing where nobody knows it. */
function heatThen(
  table: Table,
  pot: PotState,
): { readonly overK: number | null; readonly plannedEndC: number } {
  const { found, loadId } = firedOf(pot)
  const load = loadFiredIn(table, pot, found?.loadId ?? loadId)
  const end = load && endOf(load.firing)
  if (!load || !end) return { overK: null, plannedEndC: 1222 }
  const storey = load.things[pot.facts.lidOf ?? pot.facts.potId]?.storey
  return { overK: heatAt(load, storey).overK, plannedEndC: end.tempC }
}
