import { CLEAR_TWICE_MS } from '../../table/load/loads.ts'
import type { Steams } from '../../table/load/steam.ts'
import { FIRE_WORDS } from '../../words/fire.ts'
import { useDays } from '../days.ts'
import { useLoad } from './load-app.ts'
import { potsNamed } from './pots-named.ts'

/** What bursts pots, as it is known: the gravest of it. */
export function SteamLines({ steams }: { readonly steams: Steams }) {
  const { table, words, formats } = useLoad()
  const fire = FIRE_WORDS[table.value.settings.language]
  const w = fire.steams
  const days = useDays()
  const { tempC, foggedAt, clearAt, early, atHeat, wet } = steams
  const named = potsNamed(words.value, table.value, wet)
  const temp = formats.value.temp(tempC ?? 0)
  const clock = foggedAt === undefined ? undefined : days.moment(foggedAt)
  return (
    <>
      {tempC === undefined ? null : (
        <p class="alarm figures" role="status">
          {clock === undefined ? w.unclear(temp) : (atHeat ? w.atHeat : w.fogged)(temp, clock)}
        </p>
      )}
      {clearAt === undefined ? null : (
        <p class="figures">{fire.glassClear(days.moment(clearAt), days.moment(clearAt + CLEAR_TWICE_MS))}</p>
      )}
      {early ? (
        <p class="figures">{fire.glassEarly(days.moment(early.at), days.moment(early.from))}</p>
      ) : null}
      {wet.length > 0 && !atHeat ? <p class="alarm figures">{w.wet(named, wet.length > 1)}</p> : null}
    </>
  )
}
