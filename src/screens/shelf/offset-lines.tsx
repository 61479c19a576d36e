import { coneStands, conesTaught, isOdd, offsetLearned } from '../../table/load/cones-taught.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import type { FIRE_WORDS } from '../../words/fire.ts'
import { useLoad } from './load-app.ts'
import type { Over } from './shelf.tsx'

/** A change smaller than this is not offered, K. */
const WORTH_C = 1

/** What the cones say of this kiln's thermometer: it moves nothing until the person takes it. */
export function OffsetLines({
  load,
  fire,
  open,
  asks,
}: {
  readonly load: LoadState
  readonly fire: (typeof FIRE_WORDS)['en']
  readonly open: (over: Over) => void
  /** Says what has to be asked, else what is offered. */
  readonly asks: boolean
}) {
  const { table, formats, act } = useLoad()
  const { kilnId } = load.kiln
  const { units } = table.value.settings
  const { temp } = formats.value
  const degrees = (byC: number) =>
    `${Math.round(byC * (units === 'us' ? 1.8 : 1) * 10) / 10} ${units === 'us' ? '°F' : '°C'}`
  const said = (byC: number) => (byC < 0 ? fire.cooler(degrees(-byC)) : fire.hotter(degrees(byC)))
  const stands = coneStands(load)
  const last = stands && isOdd(table.value, kilnId, stands) ? stands : conesTaught(load).at(-1)
  if (!last) return null
  const odd = isOdd(table.value, kilnId, last)
  const learned = offsetLearned(table.value, kilnId)
  const taken = table.value.offsets?.[kilnId]
  const offers =
    learned && Math.abs(learned.mean - (taken?.offsetC ?? 0)) >= WORTH_C && learned.of > (taken?.of ?? 0)
  const take = (offsetC: number, of: number) =>
    act({ do: 'take-offset', kilnId, offsetC: Math.round(offsetC * 10) / 10, of })
  if (odd !== asks || (!odd && !offers)) return null
  return (
    <div>
      <p class={odd ? 'alarm figures' : 'figures'}>
        {(last.stands ? fire.stands : fire.offset)(last.cone, temp(last.shownC), temp(last.chartC))}
      </p>
      {odd ? (
        <>
          <p>{fire.odd}</p>
          <div class="kiln-keys">
            <button
              type="button"
              class="key"
              onClick={() => act({ do: 'drop-look', loadId: load.loadId, hit: last.hit })}
            >
              {fire.coneWrong}
            </button>
            <button type="button" class="key" onClick={() => open('right')}>
              {fire.readingWrong}
            </button>
            <button type="button" class="key" onClick={() => take(last.overK, 1)}>
              {fire.kilnIsSo}
            </button>
          </div>
        </>
      ) : offers ? (
        <>
          <p class="figures">{fire.learned(said(learned.mean), degrees(learned.sd), learned.of)}</p>
          <button type="button" class="key" onClick={() => take(learned.mean, learned.of)}>
            {fire.use}
          </button>
        </>
      ) : null}
    </div>
  )
}
