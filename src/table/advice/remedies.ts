import type { CoatFacts } from '../../../shared/nouns.ts'
import { footRoom, pairsOf, type RunVerdict } from '../../engine/melt/melt.ts'
import { type Mend, runRemedies } from '../../engine/melt/remedy.ts'
import { footOf } from '../fired/foot.ts'
import { zonesAtEnd, zonesWith } from '../forecast/hypothetical-dip.ts'
import { coverOn } from '../forecast/shape-inputs.ts'
import { coatsOn, nextCoat, planOf } from '../model/plan.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { mostSeconds } from './most-seconds.ts'

/**
 * What keeps the melt off the shelf, worked out again with the change made. `coat`: what the coat of this dip
 * becomes; without one it is left out.
 */
export type Remedy =
  | (Change & { readonly is: 'edge'; readonly edgeUpMm: number; readonly coat: CoatFacts })
  | (Change & { readonly is: 'seconds'; readonly coat: CoatFacts })
  | (Change & { readonly is: 'skip' })
  | {
      readonly is: 'stack'
      readonly stackId: string
      readonly reaches: Reached
      readonly coats: readonly CoatFacts[]
    }
  /** Melt that a catch slab has to hold if the margin is used up. */
  | { readonly is: 'slab'; readonly ml: number }

interface Change {
  /** Index of the coat in the pot's plan. */
  readonly at: number
  readonly reaches: Reached
}
type Reached = 'clear' | 'near'

/** Edges are marked to the millimetre; so many are tried above the one that was found. */
const EDGE_TRIES = 4

const RANK: Readonly<Record<RunVerdict, number>> = { clear: 0, near: 1, unknown: 2, over: 3 }

/** Everything that would keep this dip off the shelf, the smallest change first. Empty where nothing need be done. */
export function remediesFor(table: Table, pot: PotState, dip: DipState): readonly Remedy[] {
  const zones = zonesWith(table, pot, dip)
  if (!zones) return []
  const foot = footOf(table, pot, zones)
  const { verdict, doubts } = foot.room
  if ((verdict !== 'over' && verdict !== 'near') || doubts.includes('flat')) return []
  const outside = foot.input.coats.some((coat) => coat.dipId === dip.dipId && coat.face === 'outside')
  const found = outside ? runRemedies(foot.input, dip.dipId) : undefined
  const near = found?.near ? changes(table, pot, dip, found.near, 'near') : []
  const clear = found?.clear ? changes(table, pot, dip, found.clear, 'clear') : []
  const without = found?.near || found?.clear ? found.without : undefined
  const skip: readonly Remedy[] =
    without === 'clear' || without === 'near' ? [{ is: 'skip', at: dip.coat, reaches: without }] : []
  const slab: readonly Remedy[] = pot.slab ? [] : [{ is: 'slab', ml: foot.room.marginShelfMl }]
  return [...near, ...clear, ...skip, ...otherStack(table, pot, verdict), ...slab]
}

function changes(
  table: Table,
  pot: PotState,
  dip: DipState,
  mend: Mend,
  reaches: Reached,
): readonly Remedy[] {
  const at = dip.coat
  const list: Remedy[] = []
  const edge = mend.edgeUpMm === null ? undefined : edgeThatDoes(table, pot, dip, mend.edgeUpMm, reaches)
  if (edge) list.push({ is: 'edge', at, reaches, ...edge })
  const { bucketId, cover } = dip
  const holdS =
    mend.thicknessShare === null
      ? 0
      : mostSeconds(dip.holdS, (s) => does(table, pot, { ...dip, holdS: s }, reaches))
  if (holdS > 0) list.push({ is: 'seconds', at, reaches, coat: { bucketId, cover, holdS } })
  return list
}

/** The coats of a plan with a remedy made. */
export const mended = (plan: readonly CoatFacts[], remedy: Extract<Remedy, Change>): readonly CoatFacts[] =>
  plan.flatMap((coat, i) => (i !== remedy.at ? [coat] : remedy.is === 'skip' ? [] : [remedy.coat]))

/** The dip with another lower edge, rim first; undefined where that would leave the inside bare. */
function withEdge(pot: PotState, dip: DipState, edgeUpMm: number): CoatFacts | undefined {
  // Held sideways, a pot keeps no level edge.
  if (dip.cover.kind === 'side') return undefined
  const cover = coverOn(pot.facts, dip.cover)
  const { bucketId, holdS } = dip
  const lined = pot.facts.pourInsideFirst === true || coatsOn(pot).some(({ cover }) => cover.kind === 'full')
  switch (cover.kind) {
    case 'inside':
      return undefined
    case 'collar':
      return { bucketId, holdS, cover: { kind: 'collar', depthMm: pot.facts.shape.heightMm - edgeUpMm } }
    case 'downTo':
      return { bucketId, holdS, cover: { kind: 'downTo', edgeUpMm } }
    case 'full':
    case 'upTo':
      // An upper edge short of the rim can't be kept by a dip that comes from there.
      if (cover.kind === 'upTo' && cover.edgeUpMm < pot.facts.shape.heightMm) return undefined
      return lined ? { bucketId, holdS, cover: { kind: 'downTo', edgeUpMm } } : undefined
  }
}

/** Whether the pot then stands as well as is wanted, every pair counted as tried. */
function does(table: Table, pot: PotState, dip: DipState, wanted: Reached): boolean {
  const zones = zonesWith(table, pot, dip)
  if (!zones) return false
  const { input } = footOf(table, pot, zones)
  return RANK[footRoom({ ...input, provedPairs: pairsOf(input.coats) }).verdict] <= RANK[wanted]
}

/** The lowest edge from `fromMm` up, to the millimetre, with which the pot stands as wanted, and the coat with it. */
export function edgeThatDoes(
  table: Table,
  pot: PotState,
  dip: DipState,
  fromMm: number,
  wanted: Reached,
): { readonly edgeUpMm: number; readonly coat: CoatFacts } | undefined {
  for (let i = 0; i < EDGE_TRIES; i++) {
    const edgeUpMm = Math.ceil(fromMm) + i
    const coat = withEdge(pot, dip, edgeUpMm)
    if (!coat || ('depthMm' in coat.cover && coat.cover.depthMm < 1)) return undefined
    if (does(table, pot, { ...dip, cover: coat.cover }, wanted)) return { edgeUpMm, coat }
  }
  return undefined
}

/** Another stack that begins with the coats that are on, and ends better than this dip would. */
function otherStack(table: Table, pot: PotState, now: RunVerdict): readonly Remedy[] {
  const on = coatsOn(pot)
  let best: Extract<Remedy, { is: 'stack' }> | undefined
  for (const { stackId } of Object.values(table.stacks)) {
    if (stackId === pot.facts.stackId && !pot.ownPlan) continue
    const { ownPlan: _own, begunPlan: _begun, ...bare } = pot
    const other: PotState = { ...bare, facts: { ...pot.facts, stackId } }
    const plan = planOf(table, other)
    if (plan.length <= nextCoat(pot) || on.some((dip) => plan[dip.coat]?.bucketId !== dip.bucketId)) continue
    const zones = zonesAtEnd(table, other)
    const verdict = zones && footOf(table, other, zones).room.verdict
    if (verdict !== 'clear' && verdict !== 'near') continue
    if (RANK[verdict] < Math.min(RANK[now], best ? RANK[best.reaches] : Number.POSITIVE_INFINITY))
      best = { is: 'stack', stackId, reaches: verdict, coats: plan }
  }
  return best ? [best] : []
}
