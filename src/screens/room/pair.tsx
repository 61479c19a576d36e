import { useState } from 'preact/hooks'
import { type PairDraught, readPair } from '../../table/forecast/readings.ts'
import { Choice } from '../../ui/choice.tsx'
import { More } from '../../ui/more.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, useEntry } from '../desk/entry-field.tsx'
import { optionsOf } from '../desk/settings.ts'
import { amount } from '../text/amounts.ts'
import { useAir } from './use-air.ts'

/** Humidity from a dry and a wet thermometer: how the wet one hung matters as much as what it reads. */
export function Pair() {
  const { table, words } = useDesk()
  const w = words.value.desk.measured.air
  const { air, set } = useAir()
  const [draught, setDraught] = useState<PairDraught>('natural')
  const dry = useEntry('tempC', air.tempC)
  const wet = useEntry('wetC', undefined, true)
  const [dryC, wetC] = [dry.value, wet.value]
  const found = dryC === undefined || wetC === undefined ? undefined : readPair(air, dryC, wetC, draught)
  return (
    <More label={w.pair}>
      <div class="fields">
        <EntryField entry={dry} label={w.dry} />
        <EntryField entry={wet} label={w.wet} />
      </div>
      <Choice label={w.hung} options={optionsOf(w.hungs)} value={draught} onChoose={setDraught} />
      {found && found.is !== 'humidity' ? <p class="alarm">{w[found.is]}</p> : null}
      {found?.is === 'humidity' && found.icy ? <p class="alarm">{w.icy}</p> : null}
      {found?.is === 'humidity' && dryC !== undefined ? (
        <div class="taken">
          <strong class="figures">{w.pairRh(amount('rh', found.rh, table.value.settings.units))}</strong>
          <button type="button" class="key" onClick={() => set({ tempC: dryC, rh: found.rh })}>
            {w.take}
          </button>
        </div>
      ) : null}
    </More>
  )
}
