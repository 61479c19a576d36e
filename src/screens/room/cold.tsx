import { dewOn } from '../../table/forecast/readings.ts'
import { More } from '../../ui/more.tsx'
import { decimal } from '../../words/number.ts'
import { useDesk } from '../desk/desk-app.ts'
import { SavedNumber } from '../desk/entry-field.tsx'
import { useAir } from './use-air.ts'

/** Height above the sea, and pots brought in from a cold place: dew settles on them. */
export function Cold() {
  const { now, words, formats } = useDesk()
  const w = words.value.desk.measured.air
  const { air, set } = useAir()
  const { cold } = air
  const dew = cold && dewOn(air, cold.potC)
  const dewText = dew && formats.value.temp(dew.dewPointC)
  return (
    <More label={w.more}>
      <div class="fields">
        <SavedNumber
          field="altitudeM"
          label={w.altitude}
          stored={air.altitudeM ?? 0}
          save={(altitudeM) => set({ altitudeM })}
        />
        <SavedNumber
          field="potsC"
          label={w.pots}
          stored={cold?.potC ?? air.tempC}
          save={(potC) => set({ cold: { potC, at: now.peek() } })}
        />
      </div>
      {dew && dewText ? (
        <p class={dew.condenses ? 'alarm figures' : 'help figures'} role="status">
          {dew.condenses ? w.dew(dewText, decimal(dew.filmMmPerH, 2)) : w.noDew(dewText)}
        </p>
      ) : null}
    </More>
  )
}
