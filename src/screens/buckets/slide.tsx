import { readSlide } from '../../table/forecast/readings.ts'
import { More } from '../../ui/more.tsx'
import { decimal } from '../../words/number.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, useEntry } from '../desk/entry-field.tsx'
import { amount } from '../text/amounts.ts'

/** Both faces of a slide 25 mm wide, 60 mm of it under, cm2 (ISO 8037-1: 76 by 26 mm). */
const USUAL_CM2 = 30

interface SlideProps {
  /** Film that was taken, wet g/cm2. */
  readonly clings: number | undefined
  readonly take: (gramsPerCm2: number | undefined) => void
  readonly gramsPerMl: number | undefined
  readonly solidsGravity: number | undefined
}

/** The film that a wall keeps when it can't drink, from a slide weighed before its dip and after its drip. */
export function SlideCard({ clings, take, gramsPerMl, solidsGravity }: SlideProps) {
  const { table, words } = useDesk()
  const w = words.value.desk.measured
  const { units } = table.value.settings
  const gain = useEntry('slideG', undefined, true)
  const area = useEntry('areaCm2', USUAL_CM2)
  const read = (gainG: number | undefined, areaCm2: number | undefined) =>
    gainG === undefined || areaCm2 === undefined || gramsPerMl === undefined || solidsGravity === undefined
      ? undefined
      : readSlide(gramsPerMl, solidsGravity, gainG, areaCm2)
  const was = clings === undefined ? undefined : read(clings, 1)
  const found = read(gain.value, area.value)
  const mm = (value: number) => amount('pinMm', value, units)
  return (
    <div class="field-wide pick-up">
      {was === undefined || was === 'wrong' ? null : (
        <div class="taken">
          <strong class="figures">{w.glaze.slideWas(mm(was.fullMm))}</strong>
          <button type="button" class="key" onClick={() => take(undefined)}>
            {w.air.forget}
          </button>
        </div>
      )}
      <More label={w.glaze.slide}>
        <p class="help">{w.glaze.slideHelp}</p>
        <div class="fields">
          <EntryField entry={gain} label={w.glaze.slideG} />
          <EntryField entry={area} label={w.glaze.slideArea} />
        </div>
        {found === 'wrong' ? (
          <p class="alarm" role="alert">
            {w.glaze.slideWrong}
          </p>
        ) : null}
        {found === undefined || found === 'wrong' ? null : (
          <div class="taken">
            <strong class="figures">{w.glaze.slideIs(mm(found.fullMm), decimal(found.yieldPa, 1))}</strong>
            <button type="button" class="key" onClick={() => take(found.gramsPerCm2)}>
              {w.air.take}
            </button>
          </div>
        )}
      </More>
    </div>
  )
}
