import { firedOf } from '../../table/fired/fired-pot.ts'
import type { PotState } from '../../table/model/state.ts'
import { placeIn } from '../../table/opening/queue.ts'
import { nameOf } from '../text/pot-text.ts'
import { foundText, isGood, useOpening } from './opening-app.ts'

interface ListProps {
  readonly pots: readonly PotState[]
  /** The lid is up: they are judged, else guessed. */
  readonly isOpen: boolean
  readonly choose: (potId: string) => void
}

/** Pots to choose from, as large as a glove: number, place, and what is known of each. */
export function PotList({ pots, isOpen, choose }: ListProps) {
  const { table, words, formats } = useOpening()
  const w = words.value.opening
  const stateOf = (pot: PotState): string => {
    const { found, guess, outAt } = firedOf(pot)
    if (!isOpen) return guess ? w.is.guessed : w.is.toGuess
    if (found) return foundText(words.value, formats.value, found)
    return outAt === undefined ? w.is.open : w.is.out
  }
  return (
    <ul class="open-pots">
      {pots.map((pot) => {
        const { found, guess } = firedOf(pot)
        const done = isOpen ? found && isGood(found) : guess
        return (
          <li key={pot.facts.potId}>
            <button
              type="button"
              class={done ? 'key open-pot is-done' : 'key open-pot'}
              onClick={() => choose(pot.facts.potId)}
            >
              <strong class="figures">{nameOf(words.value, pot)}</strong>
              <span class="figures">{placeIn(table.value, pot) ?? '–'}</span>
              <small class="figures">{stateOf(pot)}</small>
            </button>
          </li>
        )
      })}
    </ul>
  )
}
