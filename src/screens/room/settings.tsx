import type { Settings } from '../../../shared/nouns.ts'
import type { LimitedField } from '../../table/model/limits.ts'
import { Choice } from '../../ui/choice.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { SavedNumber } from '../desk/entry-field.tsx'
import { useRoomWords } from '../desk/room-words.ts'
import { optionsOf, useSet } from '../desk/settings.ts'
import { LanguageChoice } from './language.tsx'
import { SoundSettings } from './sound.tsx'

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
      <h2>{w.count}</h2>
      <div class="fields">
        <NumberOf field="leadInS" label={w.leadIn} help={w.leadInHelp} />
        <NumberOf field="dripS" label={w.drip} />
        <NumberOf field="lowerMmPerS" label={w.lower} />
      </div>
      <SoundSettings />
    </section>
  )
}

/** How this room works. */
export function Work() {
  const { table } = useDesk()
  const set = useSet()
  const w = useRoomWords()
  const { settings } = table.value
  return (
    <section>
      <h2>{w.work}</h2>
      <Choice
        label={w.wax}
        options={optionsOf(w.waxes)}
        value={settings.wax}
        onChoose={(wax) => void set('wax', wax)}
      />
      {settings.wax === 'hot' ? <p class="caution">{w.waxCaution}</p> : null}
      <Choice
        label={w.order}
        options={optionsOf(w.orders)}
        value={settings.waxFirst ? 'wax' : 'wipe'}
        onChoose={(first) => void set('waxFirst', first === 'wax')}
      />
      <Choice
        label={w.ready}
        help={w.readyHelp}
        options={optionsOf(w.readies)}
        value={settings.readyMeans}
        onChoose={(readyMeans) => void set('readyMeans', readyMeans)}
      />
      {settings.readyMeans === 'clock' ? (
        <div class="fields">
          <NumberOf field="firstWaitMin" label={w.firstWait} />
          <NumberOf field="laterWaitMin" label={w.laterWait} />
          <NumberOf field="kilnWaitMin" label={w.kilnWait} />
        </div>
      ) : null}
      <div class="fields">
        <NumberOf field="staleMin" label={w.stale} />
        <NumberOf field="stackLimitMm" label={w.limit} />
        <NumberOf field="collarVesselMm" label={w.vessel} />
      </div>
    </section>
  )
}

/** What belongs to this phone and the hand that holds it. */
export function Phone() {
  const { table } = useDesk()
  const set = useSet()
  const w = useRoomWords()
  const { settings } = table.value
  return (
    <section>
      <h2>{w.phone}</h2>
      <LanguageChoice />
      <Choice
        label={w.units}
        options={optionsOf(w.unit)}
        value={settings.units}
        onChoose={(units) => void set('units', units)}
      />
      <Choice
        label={w.hand}
        options={optionsOf(w.hands)}
        value={settings.hand}
        onChoose={(hand) => void set('hand', hand)}
      />
      <Choice
        label={w.theme}
        options={optionsOf(w.themes)}
        value={settings.theme}
        onChoose={(theme) => void set('theme', theme)}
      />
    </section>
  )
}
