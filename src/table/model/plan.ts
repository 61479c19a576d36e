import type { CoatFacts, PotFacts } from '../../../shared/nouns.ts'
import { isDraft } from './change.ts'
import type { DipState, PotState, Table } from './state.ts'

/** Seconds to roll a poured glaze round the inside. Common practice, no source. */
const ROLL_S = 3

/** The pot's coats in order, the pouring of the inside first where asked. Empty when its stack is gone. */
export const planOf = (table: Table, pot: PotState): readonly CoatFacts[] =>
  pot.ownPlan ?? pot.begunPlan ?? stackPlan(table, pot.facts)

/** The coats of a pot of these facts as its stack has them. */
export function stackPlan(table: Table, facts: PotFacts): readonly CoatFacts[] {
  const coats = table.stacks[facts.stackId]?.coats ?? []
  return facts.pourInsideFirst ? withPour(coats) : coats
}

/** These coats after the inside was poured with the first one's glaze. */
export function withPour(coats: readonly CoatFacts[]): readonly CoatFacts[] {
  const [first] = coats
  return first ? [{ bucketId: first.bucketId, cover: { kind: 'inside' }, holdS: ROLL_S }, ...coats] : coats
}

/** The dips that are on the pot: those since it was last washed off. */
export function coatsOn(pot: PotState): readonly DipState[] {
  const since = pot.washedAt
  return since === undefined ? pot.dips : pot.dips.filter((dip) => dip.outAt > since)
}

/** The latest coat that is on, if any. */
export const lastDip = (pot: PotState): DipState | undefined => coatsOn(pot).at(-1)

/** Whether the pot has a coat: such a one passes with all that was done to it, never as a plan. */
export const isBegun = (pot: PotState): boolean =>
  coatsOn(pot).length > 0 || (pot.coatsCounted ?? 0) > 0 || pot.uncounted

/** Index in the plan of the next coat; the plan's length when all are on. */
export function nextCoat(pot: PotState): number {
  const counted = pot.coatsCounted ?? 0
  return coatsOn(pot).reduce((next, dip) => Math.max(next, dip.coat + 1), counted)
}

/** Whether coats of its plan are still to come. */
export const wantsCoats = (table: Table, pot: PotState): boolean => nextCoat(pot) < planOf(table, pot).length

/** The first coat that went into another bucket than planned for it, if the plan was not mended since. */
export function strayed(table: Table, pot: PotState): DipState | undefined {
  const plan = planOf(table, pot)
  return coatsOn(pot).find((dip) => {
    const planned = plan[dip.coat]
    return planned !== undefined && planned.bucketId !== dip.bucketId && dip.plannedBucketId !== dip.bucketId
  })
}

/** A pot's place as chalked: A3. */
export const placeText = (pot: PotState): string => `${pot.facts.place.board}${pot.facts.place.spot}`

const onTable = new WeakMap<Table['pots'], readonly PotState[]>()

/** Pots that are on the table, in the order of their places. */
export function potsOnTable(table: Table): readonly PotState[] {
  let pots = onTable.get(table.pots)
  if (!pots) {
    pots = Object.values(table.pots)
      .filter((pot) => !pot.gone)
      .sort(byPlace)
    if (!isDraft(table.pots)) onTable.set(table.pots, pots)
  }
  return pots
}

/** By board, then by place on it. */
export const byPlace = ({ facts: { place: a } }: PotState, { facts: { place: b } }: PotState): number =>
  a.board === b.board ? a.spot - b.spot : a.board < b.board ? -1 : 1
