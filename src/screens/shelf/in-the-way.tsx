import type { ComponentChildren } from 'preact'
import { useMemo } from 'preact/hooks'
import { forecastOf } from '../../table/forecast/forecast.ts'
import { inTheWay } from '../../table/load/before-fire.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { useDays } from '../days.ts'
import { useLoad } from './load-app.ts'
import { potsNamed } from './pots-named.ts'

const MIN_MS = 60_000
interface WayProps {
  readonly load: LoadState
  /** All its shelves stand: its pots go into the fire as they are. */
  readonly loaded: boolean
  /** A key that goes on all the same, once it was asked. */
  readonly children: ComponentChildren
}

/** What speaks against loading, shutting and lighting: another load hot in this kiln, pots that are not dry. */
export function InTheWay({ load, loaded, children }: WayProps) {
  const { table, now, words, formats } = useLoad()
  const w = words.value.desk.shelf.before
  const days = useDays()
  const { pots, air, loads, settings } = table.value
  const { wet, hot } = useMemo(
    () => inTheWay(table.value, load, now.value),
    [load, pots, air, loads, settings, Math.floor(now.value / MIN_MS)],
  )
  const seen = (of: LoadState): string => {
    const last = of.readings.at(-1)
    return last
      ? words.value.desk.shelf.last(formats.value.temp(last.tempC), days.moment(last.at))
      : words.value.desk.shelf.loadOf(days.moment(of.begunAt))
  }
  const isWet = loaded && wet.length > 0
  if (!hot && !isWet) return null
  const named = potsNamed(words.value, table.value, wet)
  const dryAt = Math.max(...wet.map((pot) => forecastOf(table.value, pot)?.kiln.likely ?? 0))
  const dry = Number.isFinite(dryAt) ? days.moment(dryAt) : words.value.units.never
  return (
    <>
      {hot ? (
        <p class="alarm figures">{hot.offAt === undefined ? w.on(seen(hot)) : w.cools(seen(hot))}</p>
      ) : null}
      {isWet ? (
        <p class="alarm figures">
          {load.shutAt === undefined ? w.wet(named, wet.length > 1) : w.wetNow(named, wet.length > 1, dry)}
        </p>
      ) : null}
      {children}
    </>
  )
}
