import type { PotState, Table } from '../../table/model/state.ts'
import type { DeskWords } from '../../words/desk.ts'
import { nameOf } from '../text/pot-text.ts'

/** More pots than these are counted, not named; where it is one more, that is named too. */
const NAMED = 6

/** Pots by their numbers, in order. */
export function potsNamed(words: DeskWords, table: Table, pots: readonly PotState[]): string {
  const names = pots
    .toSorted((a, b) => a.facts.number - b.facts.number)
    .map(({ facts }) => String(nameOf(words, table.pots[facts.potId])))
  const rest = names.length - NAMED
  return rest > 1 ? words.desk.shelf.before.more(names.slice(0, NAMED).join(', '), rest) : names.join(', ')
}
