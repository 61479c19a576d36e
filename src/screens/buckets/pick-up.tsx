import type { BucketFacts } from '../../../shared/nouns.ts'
import { showEntry } from '../../table/entry/entry.ts'
import { coatByWeight, Z90 } from '../../table/forecast/readings.ts'
import { pickUpOfPin } from '../../table/forecast/wall-inputs.ts'
import { outOfRange } from '../../table/model/limits.ts'
import { More } from '../../ui/more.tsx'
import { marked } from '../../words/number.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, type NumberEntry, useEntry } from '../desk/entry-field.tsx'
import { amount } from '../text/amounts.ts'

/** Both faces of a tile of 50 by 80 mm, cm2. Assumption. */
const USUAL_CM2 = 80

interface PickUpProps {
  readonly facts: BucketFacts | undefined
  readonly pin: NumberEntry
  readonly gramsPerMl: number | undefined
  readonly solidsGravity: number | undefined
}

/** What the scratch came to, and the scale in its place: a tile weighed wet straight after its dip. */
export function PickUp({ facts, pin, gramsPerMl, solidsGravity }: PickUpProps) {
  const { table, words } = useDesk()
  const w = words.value.desk.measured.glaze
  const { units } = table.value.settings
  const gain = useEntry('tileG', undefined, true)
  const area = useEntry('areaCm2', USUAL_CM2)
  const known = facts && pickUpOfPin(table.value, facts)
  const coatMm =
    gain.value !== undefined &&
    area.value !== undefined &&
    gramsPerMl !== undefined &&
    solidsGravity !== undefined
      ? coatByWeight(gramsPerMl, solidsGravity, gain.value, area.value)
      : undefined
  const x = (by: number) => (known ? known.factor * Math.exp(by * Z90 * known.sd) : 1)
  return (
    <div class="field-wide pick-up">
      {known ? <p class="figures">{w.pickUp(x(0), x(-1), x(1))}</p> : null}
      <More label={w.weighed}>
        <p class="help">{w.help}</p>
        <div class="fields">
          <EntryField entry={gain} label={w.gain} />
          <EntryField entry={area} label={w.area} />
        </div>
        {coatMm === undefined ? null : (
          <div class="taken">
            <strong class="figures">{w.is(amount('pinMm', coatMm, units))}</strong>
            <button
              type="button"
              class="key"
              disabled={outOfRange('pinMm', coatMm) !== undefined}
              onClick={() => pin.setText(marked(showEntry('pinMm', coatMm, units)))}
            >
              {words.value.desk.measured.air.take}
            </button>
          </div>
        )}
      </More>
    </div>
  )
}
