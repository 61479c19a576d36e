import { firedOf } from '../../table/fired/fired-pot.ts'
import type { PotState } from '../../table/model/state.ts'
import { reachText, useOpening } from './opening-app.ts'

/** What was guessed of a pot, shown once its lid is up. */
export function GuessLines({ pot }: { readonly pot: PotState }) {
  const { words, formats } = useOpening()
  const w = words.value.opening
  const { guess } = firedOf(pot)
  if (!guess) return null
  const text = (mm: number | 'shelf') => reachText(words.value, formats.value, mm)
  const { app } = guess
  const short = (mm: number) => (app && mm >= app.roomMm ? w.run.shelf : String(Math.round(mm)))
  return (
    <dl class="open-guess figures">
      <dt>{w.score.you}</dt>
      <dd>{text(guess.mm)}</dd>
      {app ? (
        <>
          <dt>{w.score.app}</dt>
          <dd>
            {w.score.range(
              text(app.likelyMm >= app.roomMm ? 'shelf' : Math.round(app.likelyMm)),
              short(app.lowMm),
              short(app.highMm),
            )}
          </dd>
        </>
      ) : null}
    </dl>
  )
}
