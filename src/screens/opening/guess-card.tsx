import { useState } from 'preact/hooks'
import { appGuess } from '../../table/fired/guess.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import type { PotState } from '../../table/model/state.ts'
import { outsideWall } from '../../table/opening/wall.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { BackLine } from '../desk/back-line.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { openingRefusal, reachText, useOpening } from './opening-app.ts'
import { stepped, WallRuler } from './wall-ruler.tsx'

interface GuessProps {
  readonly pot: PotState
  readonly load: LoadState | undefined
  /** The next pot, whether or not this one was guessed. */
  readonly next: () => void
}

/** Before the lid: where a person thinks that the melt of this pot ends. What the app thinks stays hidden. */
export function GuessCard({ pot, load, next }: GuessProps) {
  const { table, words, formats, act } = useOpening()
  const w = words.value.opening
  const [at, setAt] = useState<number | 'shelf'>()
  const [said, setSaid] = useState<string>()
  const { roomMm } = outsideWall(table.value, pot)
  useBar((atMs) => {
    if (at === undefined) return next()
    // Fixed with the same hit, and shown to nobody until the lid is up.
    const app = load && appGuess(table.peek(), pot, load)
    const refusal = act({ do: 'guess', potId: pot.facts.potId, mm: at, ...(app ? { app } : {}) }, atMs)
    if (refusal) setSaid(openingRefusal(words.value, formats.value, refusal))
    else next()
  })
  const told = at === undefined ? '' : reachText(words.value, formats.value, at)
  return (
    <>
      <div class="open-back open-back-wide">
        <BackLine />
      </div>
      <KilnMain>
        <Alarm said={said} />
        <p class="open-ask open-ask-high">{w.guess.ask}</p>
        <WallRuler
          pot={pot}
          front={at}
          told={told}
          onTap={setAt}
          onStep={(by) => setAt(stepped(at, by, roomMm))}
        />
      </KilnMain>
      <KnuckleBar
        label={at === undefined ? w.guess.skip : w.guess.bar}
        rest={at === undefined}
        under={at === undefined ? undefined : told}
      />
    </>
  )
}
