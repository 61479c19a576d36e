import type { PotFacts } from '../../../shared/nouns.ts'
import { potsOnTable } from './plan.ts'
import type { PotState, Table } from './state.ts'

/** Lid and jar of each other. */
export const arePieces = (a: PotFacts, b: Pick<PotFacts, 'lidOf'> & { readonly potId?: string }): boolean =>
  (a.lidOf !== undefined && a.lidOf === b.potId) || (b.lidOf !== undefined && b.lidOf === a.potId)

/** The other piece of a pot that is on the table: a jar's lid, a lid's jar. */
export const otherPiece = (table: Table, facts: PotFacts): PotState | undefined =>
  potsOnTable(table).find((pot) => arePieces(pot.facts, facts))

/** These pots and what belongs to them. */
export const withPieces = (table: Table, potIds: readonly string[]): readonly string[] => [
  ...new Set(
    potIds.flatMap((potId) => {
      const pot = table.pots[potId]
      const other = pot && otherPiece(table, pot.facts)
      return other ? [potId, other.facts.potId] : [potId]
    }),
  ),
]
