import { useState } from 'preact/hooks'
import { readCloth } from '../../table/forecast/readings.ts'
import { More } from '../../ui/more.tsx'
import { decimal } from '../../words/number.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, type NumberEntry, useEntry } from '../desk/entry-field.tsx'
import { Alarm } from '../desk/save.tsx'
import { useAir } from './use-air.ts'

/** A kitchen towel, mm. */
const USUAL_MM = { wide: 300, high: 400 } as const
const MIN_MS = 60_000
/** A factor this near to one is no news. */
const NEWS = 1.15

/** The day's air from a damp cloth: hung once, weighed twice. */
export function Cloth() {
  const { words, formats } = useDesk()
  const w = words.value.desk.measured.air
  const { air, set } = useAir()
  const { cloth, hung } = air
  const f = formats.value
  return (
    <>
      {cloth ? (
        <div class="taken">
          <p class="figures">
            <strong>
              {w.lost(decimal(cloth.lostG, 1), f.span(cloth.minutes * MIN_MS))}
              {w.pace[cloth.factor > NEWS ? 'fast' : cloth.factor < 1 / NEWS ? 'slow' : 'as']}
            </strong>{' '}
            {w.factor(cloth.factor)}
          </p>
          <button type="button" class="key" onClick={() => set({ cloth: undefined })}>
            {w.forget}
          </button>
        </div>
      ) : null}
      {hung ? <Second hung={hung} /> : <First again={cloth !== undefined} />}
    </>
  )
}

function First({ again }: { readonly again: boolean }) {
  const { now, words } = useDesk()
  const w = words.value.desk.measured.air
  const { set } = useAir()
  const wide = useEntry('clothMm', USUAL_MM.wide)
  const high = useEntry('clothMm', USUAL_MM.high)
  const grams = useEntry('clothG', undefined)
  const hang = () => {
    if (![wide, high, grams].map((entry) => entry.check()).every(Boolean)) return
    const [widthMm, heightMm, g] = [wide.value, high.value, grams.value]
    if (widthMm === undefined || heightMm === undefined || g === undefined) return
    set({ hung: { widthMm, heightMm, grams: g, at: now.value } })
  }
  return (
    <More label={w.cloth} key={String(again)}>
      <p class="help">{w.clothHelp}</p>
      <div class="fields">
        <EntryField entry={wide} label={w.wide} />
        <EntryField entry={high} label={w.high} />
        <EntryField entry={grams} label={w.weight} />
        <button type="button" class="key" onClick={hang}>
          {w.hang}
        </button>
      </div>
    </More>
  )
}

function Second({ hung }: { readonly hung: NonNullable<ReturnType<typeof useAir>['air']['hung']> }) {
  const { table, now, words, formats } = useDesk()
  const w = words.value.desk.measured.air
  const { air, set } = useAir()
  const grams = useEntry('clothG', undefined)
  const [said, setSaid] = useState<string>()
  const minutes = (now.value - hung.at) / MIN_MS
  const read = () => {
    const g = checked(grams)
    if (g === undefined) return
    const cloth = readCloth(air, hung, g, minutes)
    if (typeof cloth === 'string') setSaid(w[cloth])
    else set({ cloth, hung: undefined })
  }
  const f = formats.value
  return (
    <div class="hung">
      <p class="figures">
        <strong>{w.cloth}.</strong>{' '}
        {w.hanging(f.clock(hung.at + table.value.skewMs), f.span(minutes * MIN_MS))}
      </p>
      <div class="fields">
        <EntryField entry={grams} label={w.weight} />
        <button type="button" class="key" onClick={read}>
          {w.reading}
        </button>
      </div>
      <Alarm said={said} />
      <button type="button" class="key" onClick={() => set({ hung: undefined })}>
        {w.forget}
      </button>
    </div>
  )
}

const checked = (entry: NumberEntry): number | undefined => (entry.check() ? entry.value : undefined)
