import { useState } from 'preact/hooks'
import { firedOf } from '../../table/fired/fired-pot.ts'
import { appGuess } from '../../table/fired/guess.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import type { PotState } from '../../table/model/state.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { BackLine } from '../desk/back-line.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { openingRefusal, reachText, useOpening } from './opening-app.ts'
import { WallRuler } from './wall-ruler.tsx'

interface GuessProps {
  readonly pot: PotState
  readonly load: LoadState | undefined
  /** The next pot, this one guessed, or left to nobody's guess. */
  readonly next: () => void
  readonly skip: () => void
}

/** Before the lid: where a person thinks that the melt of this pot ends. What the app thinks stays hidden. */
export function GuessCard({ pot, load, next, skip }: GuessProps) {
  const { table, words, formats, act } = useOpening()
  const w = words.value.opening
  const { guess } = firedOf(pot)
  const [tapped, setTapped] = useState<number | 'shelf'>()
  const [said, setSaid] = useState<string>()
  const at = guess ? guess.mm : tapped
  useBar((atMs) => {
    if (guess) return next()
    if (tapped === undefined) return skip()
    // Fixed with the same hit, and shown to nobody until the lid is up.
    const app = load && appGuess(table.peek(), pot, load)
    const refusal = act({ do: 'guess', potId: pot.facts.potId, mm: tapped, ...(app ? { app } : {}) }, atMs)
    if (refusal) setSaid(openingRefusal(words.value, formats.value, refusal))
    else next()
  })
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        <p class="open-ask">{guess ? w.guess.stands : w.guess.ask}</p>
        <WallRuler pot={pot} front={at} at={at} onSet={guess ? undefined : setTapped} back={<BackLine />} />
      </KilnMain>
      <KnuckleBar
        label={guess ? w.next : tapped === undefined ? w.guess.skip : w.guess.bar}
        rest={!guess && tapped === undefined}
        under={guess || tapped === undefined ? undefined : reachText(words.value, formats.value, tapped)}
      />
    </>
  )
}
