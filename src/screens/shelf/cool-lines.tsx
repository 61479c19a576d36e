import { useMemo } from 'preact/hooks'
import type { BandMs } from '../../table/forecast/forecast.ts'
import { loadCooling } from '../../table/load/cool.ts'
import { coldLine } from '../../table/load/kiln-spoken.ts'
import { coldness, LID_C, lidWarning, UNLOAD_C } from '../../table/load/loads.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { useDays } from '../days.ts'
import { amount } from '../text/amounts.ts'
import { useLoad } from './load-app.ts'
import { useSpoken } from './use-spoken.ts'

/** What is told of a kiln that cools. `done`: it is cold. */
export function CoolLines({ load, done }: { readonly load: LoadState; readonly done: boolean }) {
  const { table, now, words, extras } = useLoad()
  const w = words.value.desk.shelf
  const days = useDays()
  const temp = (tempC: number) => amount('readC', Math.round(tempC), table.value.settings.units)
  const cools = useMemo(() => loadCooling(table.value, load), [load, table.value.air])
  const told = (say: typeof w.lidAt, tempC: number, { lower, likely, upper }: BandMs) => {
    const range = Number.isFinite(upper)
      ? days.between({ likely: lower, upper })
      : w.fromNever(days.moment(lower), words.value.units.never)
    return (
      <p class="kiln-big figures">
        {say(temp(tempC), days.moment(likely))} <small>({range})</small>
      </p>
    )
  }
  const { lid, unload, again } = cools ?? {}
  useSpoken(unload && !done ? coldLine(table.value, load, unload.likely, now.value) : undefined)
  if (done)
    return (
      <>
        <p>{w.thermometer}</p>
        <p>{w.care.food}</p>
      </>
    )
  const second = coldness(load).again
  return (
    <>
      {load.openedAt === undefined ? null : lidWarning(load) === 'hot' ? (
        <p class="alarm figures">{w.openHot(temp(LID_C), temp(UNLOAD_C))}</p>
      ) : unload ? null : (
        <p class="kiln-big figures">{w.openUnread(temp(UNLOAD_C))}</p>
      )}
      {load.bungAt === undefined ? null : <p class="figures">{w.bungAt(days.moment(load.bungAt))}</p>}
      {second !== undefined ? (
        <p class="kiln-big figures">{w.coldTwice(days.moment(second))}</p>
      ) : lid && unload ? (
        <>
          {load.openedAt === undefined && lid.upper > (cools?.last.at ?? 0)
            ? told(w.lidAt, LID_C, lid)
            : null}
          {told(w.unloadAt, UNLOAD_C, unload)}
        </>
      ) : (
        <p>{w.moreReadings}</p>
      )}
      {again ? (
        <p class="figures">
          {again.at === undefined
            ? w.readAtTemp(temp(again.tempC))
            : w.readAt(temp(Math.round(again.tempC / 10) * 10), days.moment(again.at))}
        </p>
      ) : null}
      <p class="help">{w.thermometer}</p>
      {unload && Number.isFinite(unload.likely) && extras.value && extras.value.longWaits() > 0 ? (
        <div class="kiln-keys">
          <button type="button" class="key" onClick={() => void extras.value?.calendar()}>
            {w.calendar}
          </button>
        </div>
      ) : null}
    </>
  )
}
