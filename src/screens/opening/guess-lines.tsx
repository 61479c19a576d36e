import type { AppGuess } from '../../../shared/opening.ts'
import { firedOf } from '../../table/fired/fired-pot.ts'
import type { PotState } from '../../table/model/state.ts'
import { reachText, useOpening } from './opening-app.ts'

/** What was guessed of a pot, shown once its lid is up. */
export function GuessLines({ pot }: { readonly pot: PotState }) {
  const { words, formats } = useOpening()
  const w = words.value.opening
  const { guess, appGuess: app, found } = firedOf(pot)
  // Of a pot that nobody guessed the app's is told once it is judged: it is no word to judge by.
  if (!guess && !(app && found)) return null
  const text = (mm: number | 'shelf') => reachText(words.value, formats.value, mm)
  const short = (mm: number) => (app && mm >= app.roomMm ? w.run.shelf : String(Math.round(mm)))
  const range = ({ lowMm, likelyMm, highMm, roomMm }: AppGuess): string => {
    // From none to the shelf says nothing of the middle either.
    if (lowMm <= 0 && highMm >= roomMm) return w.score.any
    const likely = text(likelyMm >= roomMm ? 'shelf' : Math.round(likelyMm))
    return short(lowMm) === short(highMm) ? likely : w.score.range(likely, short(lowMm), short(highMm))
  }
  return (
    <dl class="open-guess figures">
      {guess ? (
        <>
          <dt>{w.score.you}</dt>
          <dd>{text(guess.mm)}</dd>
        </>
      ) : null}
      {app ? (
        <>
          <dt>{w.score.app}</dt>
          <dd>{range(app)}</dd>
        </>
      ) : null}
    </dl>
  )
}
