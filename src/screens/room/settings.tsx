import type { Settings } from '../../../shared/nouns.ts'
import type { LimitedField } from '../../table/model/limits.ts'
import { Choice } from '../../ui/choice.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { SavedNumber } from '../desk/entry-field.tsx'
import { useRoomWords } from '../desk/room-words.ts'
import { optionsOf, useSet } from '../desk/settings.ts'
import { SoundSettings } from './sound.tsx'
import { Sounds } from './sounds.tsx'

type NumberSetting = Extract<keyof Settings, LimitedField>

/** A setting that is a number. */
export function NumberOf({
  field,
  label,
  help,
}: {
  readonly field: NumberSetting
  readonly label: string
  readonly help?: string
}) {
  const { table } = useDesk()
  const set = useSet()
  return (
    <SavedNumber
      field={field}
      label={label}
      {...(help === undefined ? {} : { help })}
      stored={table.value.settings[field]}
      save={(value) => set(field, value)}
    />
  )
}

/** What a count is made of. */
export function Count() {
  const w = useRoomWords()
  return (
    <section>
      <div class="fields">
        <NumberOf field="leadInS" label={w.leadIn} help={w.leadInHelp} />
        <NumberOf field="dripS" label={w.drip} />
        <NumberOf field="lowerMmPerS" label={w.lower} />
        <NumberOf field="staleMin" label={w.stale} />
        <NumberOf field="collarVesselMm" label={w.vessel} />
      </div>
      <SoundSettings />
      <Sounds />
    </section>
  )
}

/** When a wait is over. */
export function Waits() {
  const { table } = useDesk()
  const set = useSet()
  const w = useRoomWords()
  const { readyMeans } = table.value.settings
  return (
    <section>
      <h2>{w.waits}</h2>
      <Choice
        label={w.ready}
        help={w.readyHelp}
        options={optionsOf(w.readies)}
        value={readyMeans}
        onChoose={(means) => void set('readyMeans', means)}
      />
      {readyMeans === 'clock' ? (
        <div class="fields">
          <NumberOf field="firstWaitMin" label={w.firstWait} />
          <NumberOf field="laterWaitMin" label={w.laterWait} />
          <NumberOf field="kilnWaitMin" label={w.kilnWait} />
        </div>
      ) : null}
    </section>
  )
}

/** What goes onto the clay before and over all: wax, and the limit of all coats. */
export function Wax() {
  const { table } = useDesk()
  const set = useSet()
  const w = useRoomWords()
  const { wax, waxFirst } = table.value.settings
  return (
    <section>
      <h2>{w.onIt}</h2>
      <Choice
        label={w.wax}
        options={optionsOf(w.waxes)}
        value={wax}
        onChoose={(kind) => void set('wax', kind)}
      />
      {wax === 'hot' ? <p class="caution">{w.waxCaution}</p> : null}
      <Choice
        label={w.order}
        options={optionsOf(w.orders)}
        value={waxFirst ? 'wax' : 'wipe'}
        onChoose={(first) => void set('waxFirst', first === 'wax')}
      />
      <div class="fields">
        <NumberOf field="stackLimitMm" label={w.limit} />
      </div>
    </section>
  )
}
