import { AIR_OLD_MS } from '../../table/model/defaults.ts'
import { Choice } from '../../ui/choice.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { SavedNumber } from '../desk/entry-field.tsx'
import { useRoomWords } from '../desk/room-words.ts'
import { optionsOf } from '../desk/settings.ts'
import { Cloth } from './cloth.tsx'
import { Cold } from './cold.tsx'
import { Pair } from './pair.tsx'
import { useAir } from './use-air.ts'

/** Temperature, humidity and draught: what every wait rests on. */
export function Air() {
  const { now, words, formats } = useDesk()
  const w = useRoomWords()
  const m = words.value.desk.measured.air
  const { air, at, set } = useAir()
  const old = at !== undefined && now.value - at >= AIR_OLD_MS
  return (
    <section>
      {old ? (
        <div class="air-old">
          <p class="alarm figures">{m.old(formats.value.span(now.value - at))}</p>
          <button type="button" class="key" onClick={() => set({})}>
            {m.still}
          </button>
        </div>
      ) : null}
      <div class="fields">
        <SavedNumber field="tempC" label={w.temp} stored={air.tempC} save={(tempC) => set({ tempC })} />
        <SavedNumber field="rh" label={w.rh} stored={air.rh} save={(rh) => set({ rh })} />
      </div>
      <Choice
        label={w.draught}
        options={optionsOf(words.value.why.draughts)}
        value={air.draught}
        onChoose={(draught) => void set({ draught, cloth: undefined })}
      />
      <Cloth />
      <Pair />
      <Cold />
    </section>
  )
}
