import type { FiringFacts } from '../../../shared/nouns.ts'
import type { ZoneForecast } from '../../engine/contract.ts'
import { type CoatOnWall, coatsOf, type GlazePair } from '../../engine/melt/coats.ts'
import { tellingZone, zonesAfter } from '../../engine/wait/seconds.ts'
import { toldFlowOf } from '../firing/glaze-flow.ts'
import { spanOf } from '../forecast/drawing.ts'
import { historyOf } from '../forecast/pot-history.ts'
import { hasOverlap } from '../model/halves.ts'
import type { LoadState } from '../model/load-state.ts'
import { coatsOn } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { bucketOfCoat, factsDipped } from '../model/uses.ts'
import { firedOf } from './fired-pot.ts'

/** The coats of a fired pot are known as they were dipped: nothing was told by eye, no half overlaps another. */
export const isSure = (table: Table, pot: PotState): boolean =>
  coatsOn(pot).length > 0 &&
  !pot.uncounted &&
  pot.coatsCounted === undefined &&
  coatsOn(pot).every(({ unsure, bucketId }) => !unsure && bucketOfCoat(table, bucketId) !== undefined) &&
  !hasOverlap(table, pot, coatsOn(pot))

/** What the dips of a pot covered of its outside, in their order. */
const spansOn = (pot: PotState) =>
  coatsOn(pot).flatMap(({ bucketId, cover }) => {
    const span = spanOf(pot.facts, cover)
    return span ? [{ bucketId, ...span }] : []
  })

/** Height of the lowest glazed edge outside, mm; that of the foot line where no coat is known. */
export function lowestEdgeMm(pot: PotState): number {
  const from = spansOn(pot).map(({ fromMm }) => fromMm)
  return from.length === 0 ? pot.facts.shape.footLineMm : Math.min(...from)
}

/** Pairs on the outside of a pot by what its dips covered: one glaze straight on another, each once. */
export function pairsOn(pot: PotState): readonly GlazePair[] {
  const pairs = new Map<string, GlazePair>()
  const dips = spansOn(pot)
  const cuts = [...new Set(dips.flatMap(({ fromMm, toMm }) => [fromMm, toMm]))].sort((a, b) => a - b)
  for (const [i, cut] of cuts.entries()) {
    const middle = (cut + (cuts[i + 1] ?? cut)) / 2
    const here = dips.filter(({ fromMm, toMm }) => fromMm < middle && toMm > middle)
    for (const [k, { bucketId: over }] of here.entries()) {
      const under = here[k - 1]?.bucketId
      if (under !== undefined && under !== over) pairs.set(JSON.stringify([under, over]), { under, over })
    }
  }
  return [...pairs.values()]
}

type Fills = NonNullable<LoadState['fills']>

/** Buckets as they were; those that nobody knew then as they are. */
const asFilled = <Buckets extends Table['removed']>(buckets: Buckets, fills: Fills): Buckets =>
  buckets &&
  (Object.fromEntries(
    Object.entries(buckets).map(([id, bucket]) => [id, { ...bucket, ...fills[id] }]),
  ) as Buckets)

/**
 * The table with the board's clay and the buckets as a pot has them: as they were when the lid was shut on it, or, of a pot in
 * no load here, when it was taken out.
 */
export function whenMade(table: Table, pot: PotState): Table {
  const { found, loadId } = firedOf(pot)
  const key = pot.facts.lidOf ?? pot.facts.potId
  const loads = table.loads ?? {}
  const load =
    loads[found?.loadId ?? loadId ?? ''] ?? Object.values(loads).findLast(({ things }) => things[key])
  const { board, fills } = load?.board ? load : pot
  if (!board) return table
  if (!fills) return { ...table, board }
  const { buckets, removed } = table
  return {
    ...table,
    board,
    buckets: asFilled(buckets, fills),
    ...(removed ? { removed: asFilled(removed, fills) } : {}),
  }
}

interface Kept {
  readonly of: readonly unknown[]
  readonly zones: readonly ZoneForecast[]
}
const kept = new WeakMap<PotState, Kept>()

/** Zones of a pot with all that was dipped; kept until it or what its coats are computed from changes. */
export function firedZones(table: Table, pot: PotState): readonly ZoneForecast[] {
  const made = whenMade(table, pot)
  const of = [made.board, made.settings, ...coatsOn(pot).map((dip) => factsDipped(made, dip))]
  const before = kept.get(pot)
  if (before?.of.length === of.length && before.of.every((one, i) => one === of[i])) return before.zones
  const zones = zonesAfter(historyOf(made, pot))
  kept.set(pot, { of, zones })
  return zones
}

/** Dry thickness of one coat of a fired pot where it is told by, its tallest stretch, mm; undefined where it is nowhere. */
export const coatOf = (table: Table, pot: PotState, dipId: string): number | undefined =>
  tellingZone(firedZones(table, pot), dipId)?.coats.find((coat) => coat.dipId === dipId)?.likelyMm

/** Coats with the doses that tiles tell for a firing, none of what results taught in them. */
export const toldCoats = (
  table: Table,
  zones: readonly ZoneForecast[],
  firing: FiringFacts | undefined,
): readonly CoatOnWall[] => coatsOf(zones, (glazeId, underId) => toldFlowOf(table, glazeId, underId, firing))

/** The load that a pot was fired in, if the kiln was lit; a lid goes with its jar. */
export function loadFiredIn(table: Table, pot: PotState, loadId: string | undefined): LoadState | undefined {
  const load = loadId === undefined ? undefined : table.loads?.[loadId]
  return load && load.litAt !== undefined && load.things[pot.facts.lidOf ?? pot.facts.potId]
    ? load
    : undefined
}
