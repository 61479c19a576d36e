import type { AppGuess } from '../../../shared/opening.ts'
import { firedOf } from '../../table/fired/fired-pot.ts'
import type { PotState } from '../../table/model/state.ts'
import type { Formats, Units } from '../../words/format.ts'
import type { OpeningWords } from '../../words/opening.ts'
import { reachText, useOpening } from './opening-app.ts'
import { atMark, scaleOf } from './run-scale.ts'

/** What the app guessed, with its range: to the marks of the ruler, as a hand taps it. */
export function appText(words: OpeningWords, formats: Formats, units: Units, app: AppGuess): string {
  const w = words.opening
  const { lowMm, likelyMm, highMm, roomMm } = app
  const scale = scaleOf(units)
  const mark = (mm: number) => Math.round(mm / scale.markMm)
  const short = (mm: number) => (mm >= roomMm ? w.run.shelf : scale.number(mark(mm)))
  const likely = reachText(words, formats, likelyMm >= roomMm ? 'shelf' : atMark(scale, mark(likelyMm)))
  // The middle is scored, however wide its range.
  if (lowMm <= 0 && highMm >= roomMm) return w.score.any(likely)
  return short(lowMm) === short(highMm) ? likely : w.score.range(likely, short(lowMm), short(highMm))
}

/** What was guessed of a pot, shown once its lid is up. */
export function GuessLines({ pot }: { readonly pot: PotState }) {
  const { table, words, formats } = useOpening()
  const w = words.value.opening
  const { guess, appGuess: app, found } = firedOf(pot)
  // Of a pot that nobody guessed the app's is told once it is judged: it is no word to judge by.
  if (!guess && !(app && found)) return null
  return (
    <dl class="open-guess figures">
      {guess ? (
        <>
          <dt>{w.score.you}</dt>
          <dd>{reachText(words.value, formats.value, guess.mm)}</dd>
        </>
      ) : null}
      {app ? (
        <>
          <dt>{w.score.app}</dt>
          <dd>{appText(words.value, formats.value, table.value.settings.units, app)}</dd>
        </>
      ) : null}
    </dl>
  )
}
