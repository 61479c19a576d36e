import type { CoatFacts } from '../../../shared/nouns.ts'
import type { ZoneForecast } from '../../engine/contract.ts'
import type { Limits } from '../../engine/wait/grade.ts'
import { repairRest } from '../../engine/wait/repair.ts'
import { zonesAfter } from '../../engine/wait/seconds.ts'
import { coatFrom } from '../model/coat-from.ts'
import { coatsOn, nextCoat, planOf } from '../model/plan.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { limitOf, pairLimits } from '../model/taken.ts'
import { engineDip, MIN_MS, standingWith } from './pot-history.ts'

/** The dip that START would make now, as the table would keep it. */
export function dipNow(table: Table, pot: PotState, bucketId: string, now: number): DipState | undefined {
  const from = coatFrom(table, pot, bucketId)
  const bucket = table.buckets[bucketId]
  if (!from || !bucket) return undefined
  const { cover, holdS } = from.plan
  return plannedDip(from.coat, { bucketId, cover, holdS }, bucket.gramsPerMl, now)
}

/** A coat of a plan, the `index`-th, as the table would keep it if it were dipped at `at`. */
export function plannedDip(index: number, coat: CoatFacts, gramsPerMl: number, at: number): DipState {
  const { bucketId, cover, holdS } = coat
  return {
    dipId: `planned ${index}`,
    hit: '',
    coat: index,
    bucketId,
    plannedBucketId: bucketId,
    cover,
    gramsPerMl,
    tappedAt: at,
    underAt: at,
    outAt: at,
    holdS,
    lowerS: 0,
    plannedHoldS: holdS,
    how: 'planned',
    unstirred: false,
    unsure: false,
  }
}

/** Zones of the pot right after a dip that has not happened. */
export function zonesWith(table: Table, pot: PotState, dip: DipState): readonly ZoneForecast[] | undefined {
  const more = engineDip(table, pot, dip)
  if (!more) return undefined
  const standing = standingWith(table, pot, pot.dips)
  return zonesAfter({ ...standing, events: [...standing.events, more] })
}

/** Zones of the pot once the rest of its plan is on as well, a coat every so often; undefined for a bare one. */
export function zonesAtEnd(table: Table, pot: PotState): readonly ZoneForecast[] | undefined {
  const standing = standingWith(table, pot, pot.dips)
  const next = nextCoat(pot)
  const from = Math.max(0, ...standing.events.map(({ atMin }) => atMin)) * MIN_MS
  const rest = planOf(table, pot)
    .slice(next)
    .flatMap((coat, i) => {
      const bucket = table.buckets[coat.bucketId]
      const at = from + (i + 1) * APART_MS
      return (bucket && engineDip(table, pot, plannedDip(next + i, coat, bucket.gramsPerMl, at))) ?? []
    })
  const events = [...standing.events, ...rest]
  return events.some(({ kind }) => kind === 'dip') ? zonesAfter({ ...standing, events }) : undefined
}

/** The limits of this table: of all coats together, and of each glaze, its own or as it was taken of fired pots. */
export const limitsOf = (table: Table): Limits => ({
  stackMm: table.settings.stackLimitMm,
  glazeMm: Object.fromEntries(
    Object.values(table.buckets).map(({ facts: { bucketId, limitMm } }) => [
      bucketId,
      limitOf(table, { bucketId }) ?? limitMm,
    ]),
  ),
  pairs: pairLimits(table),
})

/** Time taken for one coat to follow another in a forecast of coats to come. */
const APART_MS = 20 * 60_000

/**
 * After a coat that was held otherwise than planned: seconds for the next one that keep every zone inside its limits
 * and nearest to the plan. `holdS` undefined: skip it. Undefined when nothing slipped, or the plan still stands.
 */
export function repairNow(
  table: Table,
  pot: PotState,
  now: number,
): { readonly holdS: number | undefined } | undefined {
  const on = coatsOn(pot)
  if (!on.some((dip) => dip.holdS !== dip.plannedHoldS)) return undefined
  const next = nextCoat(pot)
  const rest = planOf(table, pot)
    .slice(next)
    .flatMap((coat, i) => {
      const bucket = table.buckets[coat.bucketId]
      if (!bucket) return []
      const at = now + i * APART_MS
      const dip = plannedDip(next + i, coat, bucket.gramsPerMl, at)
      return engineDip(table, pot, dip) ?? []
    })
  const [first] = rest
  if (!first) return undefined
  const meant = pot.dips.map((dip) => ({ ...dip, holdS: dip.plannedHoldS }))
  const plan = [...standingWith(table, pot, meant).events, ...rest]
  const repair = repairRest(standingWith(table, pot, pot.dips), plan, rest, limitsOf(table))
  const holdS = repair.rest[0]?.holdS
  return holdS === first.holdS ? undefined : { holdS }
}
