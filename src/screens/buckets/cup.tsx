import { showEntry } from '../../table/entry/entry.ts'
import { densityOfCup } from '../../table/entry/mix.ts'
import { outOfRange } from '../../table/model/limits.ts'
import { More } from '../../ui/more.tsx'
import { marked } from '../../words/number.ts'
import { useBucketWords } from '../desk/bucket-words.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, type NumberEntry, useEntry } from '../desk/entry-field.tsx'

/** What a measuring cup holds where nothing else was said, mL. Common practice, no source. */
const USUAL_ML = 100

/** A known volume on the scale: the reading follows from three numbers. */
export function Cup({ reading }: { readonly reading: NumberEntry }) {
  const { formats } = useDesk()
  const w = useBucketWords().cup
  const volume = useEntry('cupMl', USUAL_ML)
  const empty = useEntry('cupEmptyG', undefined, true)
  const full = useEntry('cupFullG', undefined, true)
  const [ml, emptyG, fullG] = [volume.value, empty.value, full.value]
  const found =
    ml === undefined || emptyG === undefined || fullG === undefined
      ? undefined
      : densityOfCup(ml, emptyG, fullG)
  const wrong = found !== undefined && outOfRange('gramsPerMl', found) !== undefined
  return (
    <More label={w.title}>
      <div class="fields">
        <EntryField entry={volume} label={w.volume} />
        <span />
        <EntryField entry={empty} label={w.empty} />
        <EntryField entry={full} label={w.full} />
      </div>
      {found === undefined ? null : wrong ? (
        <p class="alarm" role="alert">
          {w.wrong(formats.value.density(found))}
        </p>
      ) : (
        <button
          type="button"
          class="desk-second"
          onClick={() => reading.setText(marked(showEntry('gramsPerMl', found, reading.units)))}
        >
          {w.take(marked(showEntry('gramsPerMl', found, reading.units)))}
        </button>
      )}
    </More>
  )
}
