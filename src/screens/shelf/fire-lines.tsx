import type { BandMs } from '../../table/forecast/forecast.ts'
import { lookAgainAt, WITHIN_C } from '../../table/load/fire.ts'
import {
  CANDLED_C,
  CLEAR_TWICE_MS,
  clearSince,
  coneDown,
  glassTellsFrom,
  isCandled,
  type LoadStage,
  standsOf,
} from '../../table/load/loads.ts'
import { LOOK_FROM_K, lookFromC } from '../../table/load/look-from.ts'
import type { Steams } from '../../table/load/steam.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { FIRE_WORDS } from '../../words/fire.ts'
import { useDays } from '../days.ts'
import { lazyPart } from '../lazy.tsx'
import { useLoad } from './load-app.ts'
import { SteamLines } from './steam-lines.tsx'

const CandleLines = lazyPart(() => import('./candle-lines.tsx').then((part) => part.CandleLines))

/** A band is told by the minute. */
const WIDTH_MS = 60_000

interface FireLinesProps {
  readonly load: LoadState
  readonly stage: LoadStage
  /** When its cone falls, where that is told. */
  readonly ahead: BandMs | undefined
  /** The glass still tells something. */
  readonly candles: boolean
  /** It may yet fog. */
  readonly fogs: boolean
  readonly steams: Steams | undefined
}

/** What is told of a load whose kiln is on. */
export function FireLines({ load, stage, ahead, candles, fogs, steams }: FireLinesProps) {
  const { table, now, words, formats } = useLoad()
  const { language, units } = table.value.settings
  const fire = FIRE_WORDS[language]
  const days = useDays()
  const { firing } = load
  const down = coneDown(load)
  const { stand } = words.value.desk.shelf
  const stood = standsOf(load)
  const again = (ahead && lookAgainAt(load, ahead)) ?? 0
  /** It was looked at as it was due, and not long ago. */
  const isSeen = now.value < again
  // Of each cone the last look; what is said below is not said twice.
  const seen = load.cones.filter(
    ({ cone }, i) =>
      cone !== down?.cone &&
      !(cone === firing.cone && isSeen) &&
      load.cones.findLastIndex((each) => each.cone === cone) === i,
  )
  // Read beyond all doubt of it, it is due at its reading, and there is no band to tell.
  const width = ahead ? ahead.upper - ahead.lower : 0
  const isDue = ahead !== undefined && (width < WIDTH_MS || now.value > ahead.upper)
  const from = lookFromC(load)
  const within = `${WITHIN_C * (units === 'us' ? 1.8 : 1)} ${units === 'us' ? '°F' : '°C'}`
  return (
    <>
      {steams ? <SteamLines steams={steams} /> : null}
      {candles || (fogs && isCandled(load)) ? <Candling load={load} /> : null}
      {seen.map(({ cone, is, at }) => (
        <p key={cone} class="figures">
          {fire.seen(cone, stand[is], days.moment(at))}
        </p>
      ))}
      {down === undefined ? null : (
        <p class="figures">
          {down.cone === firing.cone
            ? fire.down(firing.cone, days.moment(down.at))
            : fire.past(down.cone, firing.cone, days.moment(down.at))}
        </p>
      )}
      {stage.is === 'hold' ? (
        <p class="kiln-big figures">{fire.holdUntil(days.moment(stage.untilAt))}</p>
      ) : null}
      {!ahead || down !== undefined ? null : stood && isSeen ? (
        <p class="kiln-big figures">{fire.still(firing.cone, days.moment(stood.at), days.moment(again))}</p>
      ) : (
        <p class={isDue ? 'alarm kiln-big figures' : 'kiln-big figures'}>
          {(isDue ? fire.overdue : fire.conesFall)(firing.cone, days.moment(ahead.likely))}{' '}
          {width < WIDTH_MS ? null : (
            <small>{fire.between(days.moment(ahead.lower), days.moment(ahead.upper))}</small>
          )}
        </p>
      )}
      {ahead || down !== undefined || candles || steams ? null : firing.make === 'american' ? (
        <p class="help">
          {load.readings.some(({ tempC }) => tempC >= (from ?? Infinity) + LOOK_FROM_K - WITHIN_C)
            ? fire.oneMore
            : fire.early(within)}
        </p>
      ) : from === undefined ? null : (
        <p class="figures">
          {fire.untold(firing.cone, formats.value.temp(from + LOOK_FROM_K), formats.value.temp(from))}
        </p>
      )}
      {candles || steams ? null : <p>{fire.decides}</p>}
    </>
  )
}

function Candling({ load }: { readonly load: LoadState }) {
  const { table, now, formats } = useLoad()
  const fire = FIRE_WORDS[table.value.settings.language]
  const days = useDays()
  const last = load.glass.at(-1)
  const from = glassTellsFrom(load) ?? now.value
  const clear = clearSince(load)
  return (
    <>
      {isCandled(load) ? null : <p>{fire.candling(formats.value.temp(CANDLED_C))}</p>}
      {isCandled(load) ? null : <CandleLines load={load} />}
      {clear !== undefined && isCandled(load) ? (
        <p class="figures">{fire.glassDry(days.moment(clear))}</p>
      ) : clear !== undefined ? (
        <p class="figures">{fire.glassClear(days.moment(clear), days.moment(clear + CLEAR_TWICE_MS))}</p>
      ) : last?.fogged ? (
        <p class="figures">{fire.glassFogged(days.moment(last.at))}</p>
      ) : now.value < from ? (
        <p class="figures">
          {last
            ? fire.glassEarly(days.moment(last.at), days.moment(from))
            : fire.glassFrom(days.moment(from))}
        </p>
      ) : null}
    </>
  )
}
