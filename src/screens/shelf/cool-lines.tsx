import { useMemo } from 'preact/hooks'
import type { BandMs } from '../../table/forecast/forecast.ts'
import { cooling, loadCooling, USED_BELOW_C } from '../../table/load/cool.ts'
import { coldLine } from '../../table/load/kiln-spoken.ts'
import { coldness, LID_C, lidWarning, UNLOAD_C } from '../../table/load/loads.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { COOL_WORDS } from '../../words/cool.ts'
import { KILN_CARE_WORDS } from '../../words/kiln-care.ts'
import { useDays } from '../days.ts'
import { useLoad } from './load-app.ts'
import { useSpoken } from './use-spoken.ts'

/** What is told of a kiln that cools. `done`: it is cold. */
export function CoolLines({ load, done }: { readonly load: LoadState; readonly done: boolean }) {
  const { table, now, words, formats, extras } = useLoad()
  const care = KILN_CARE_WORDS[table.value.settings.language]
  const c = COOL_WORDS[table.value.settings.language]
  const days = useDays()
  const { temp } = formats.value
  const cools = useMemo(() => loadCooling(table.value, load), [load, table.value.air])
  const told = (say: typeof c.lidAt, tempC: number, { lower, likely, upper }: BandMs) => {
    const range = Number.isFinite(upper)
      ? days.between({ likely: lower, upper })
      : c.fromNever(days.moment(lower), words.value.units.never)
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
        <p>{c.thermometer}</p>
        <p>{care.food}</p>
      </>
    )
  const second = coldness(load).again
  return (
    <>
      {load.openedAt === undefined ? null : lidWarning(load) === 'hot' ? (
        <p class="alarm figures">{c.openHot(temp(LID_C), temp(UNLOAD_C))}</p>
      ) : unload ? null : (
        <p class="kiln-big figures">{c.openUnread(temp(UNLOAD_C))}</p>
      )}
      {load.bungAt === undefined ? null : <p class="figures">{c.bungAt(days.moment(load.bungAt))}</p>}
      {second !== undefined ? (
        <p class="kiln-big figures">{c.coldTwice(days.moment(second))}</p>
      ) : lid && unload ? (
        <>
          {load.openedAt === undefined && lid.upper > (cools?.last.at ?? 0)
            ? told(c.lidAt, LID_C, lid)
            : null}
          {told(c.unloadAt, UNLOAD_C, unload)}
        </>
      ) : (
        <p>
          {(cooling(load).some(({ tempC }) => tempC < USED_BELOW_C) ? c.oneMore : c.moreReadings)(
            temp(USED_BELOW_C),
          )}
        </p>
      )}
      {again ? (
        <p class="figures">
          {again.at === undefined
            ? c.readAtTemp(temp(Math.round(again.tempC / 10) * 10))
            : c.readAt(temp(Math.round(again.tempC / 10) * 10), days.moment(again.at))}
        </p>
      ) : null}
      <p class="help">{c.thermometer}</p>
      {unload && Number.isFinite(unload.likely) && extras.value && extras.value.longWaits() > 0 ? (
        <div class="kiln-keys">
          <button type="button" class="key" onClick={() => void extras.value?.calendar()}>
            {c.calendar}
          </button>
        </div>
      ) : null}
    </>
  )
}
