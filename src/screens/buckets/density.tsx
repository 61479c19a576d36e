import { mixTo } from '../../table/entry/mix.ts'
import type { BucketState } from '../../table/model/state.ts'
import { Gauge } from '../../ui/gauge.tsx'
import { useDays } from '../days.ts'
import { useBucketWords } from '../desk/bucket-words.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, type NumberEntry } from '../desk/entry-field.tsx'
import { bulk, weight } from '../text/amounts.ts'
import { cautionText } from '../text/pot-text.ts'
import { Cup } from './cup.tsx'

interface DensityProps {
  readonly bucket: BucketState
  readonly reading: NumberEntry
  readonly keep: () => void
}

/** A reading of the density, and what brings the bucket to its target: two thirds first, then weigh again. */
export function DensityCheck({ bucket, reading, keep }: DensityProps) {
  const { table, words, formats } = useDesk()
  const w = useBucketWords()
  const { moment } = useDays()
  const { units } = table.value.settings
  const { facts, densityAt } = bucket
  const mix = reading.value === undefined ? undefined : mixTo(facts, reading.value)
  return (
    <section class="density">
      <Gauge
        target={facts.targetGramsPerMl}
        tolerance={facts.toleranceGramsPerMl}
        reading={
          reading.ok && reading.value !== undefined
            ? reading.value
            : densityAt === undefined
              ? undefined
              : bucket.gramsPerMl
        }
        pattern={facts.pattern}
        text={formats.value.density}
        less={w.thin}
        more={w.thick}
      />
      {mix?.is === 'on-target' ? <p class="density-said">{w.onTarget}</p> : null}
      {mix?.is === 'water' ? (
        <>
          <p class="density-said figures">{w.addWater(bulk(formats.value, mix.firstLitres, units))}</p>
          <p class="help figures">{w.addWaterMore(bulk(formats.value, mix.allLitres, units))}</p>
        </>
      ) : null}
      {mix?.is === 'dry' ? (
        <>
          <p class="density-said figures">{w.addDry(weight(mix.firstKg, units))}</p>
          <p class="help figures">{w.addDryMore(weight(mix.allKg, units))}</p>
          <p class="caution">
            {cautionText(words.value, bucket.facts.cautions)} {w.dustCaution}
          </p>
        </>
      ) : null}
      <div class="density-read">
        <EntryField entry={reading} label={w.read} />
        <button type="button" class="key" onClick={keep}>
          {w.readKey}
        </button>
      </div>
      {mix === undefined ? <p class="help">{w.readHelp}</p> : null}
      <Cup reading={reading} />
      {densityAt === undefined ? null : <p class="help figures">{w.readAt(moment(densityAt))}</p>}
    </section>
  )
}
