import type { CoatFacts } from '../../../shared/nouns.ts'
import { planOf } from './plan.ts'
import type { PotState, Table } from './state.ts'

/** The pot's plan with other seconds for one coat; without that coat for 0 s. */
export function planWith(table: Table, pot: PotState, coat: number, holdS: number): readonly CoatFacts[] {
  return holdS > 0
    ? planOf(table, pot).map((facts, i) => (i === coat ? { ...facts, holdS } : facts))
    : planWithout(table, pot, [coat])
}

/** The pot's plan without the coats of these indices. */
export const planWithout = (table: Table, pot: PotState, coats: readonly number[]): readonly CoatFacts[] =>
  planOf(table, pot).filter((_, i) => !coats.includes(i))

/** Coats named pot by pot, all of one pot together: leaving out one moves the others up. */
export function coatsByPot(
  coats: readonly { readonly potId: string; readonly coat: number }[],
): ReadonlyMap<string, readonly number[]> {
  const by = new Map<string, number[]>()
  for (const { potId, coat } of coats) by.set(potId, [...(by.get(potId) ?? []), coat])
  return by
}
