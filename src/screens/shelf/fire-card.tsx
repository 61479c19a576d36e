import type { VNode } from 'preact'
import { useMemo, useState } from 'preact/hooks'
import { hotInKiln } from '../../table/load/before-fire.ts'
import { coneAhead } from '../../table/load/fire.ts'
import { coneDown, glassTells, stageOf } from '../../table/load/loads.ts'
import { coneNearAt } from '../../table/load/look-from.ts'
import { mayFog, steamsAt } from '../../table/load/steam.ts'
import type { Action } from '../../table/model/action.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { AnswerBars, KnuckleBar } from '../../ui/bar.tsx'
import { FIRE_WORDS } from '../../words/fire.ts'
import { KILN_CARE_WORDS } from '../../words/kiln-care.ts'
import { useDays } from '../days.ts'
import { BackLine } from '../desk/back-line.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { lazyPart } from '../lazy.tsx'
import { FireLines } from './fire-lines.tsx'
import { kilnRefusalText, useLoad } from './load-app.ts'
import type { Over } from './shelf.tsx'

const OffsetLines = lazyPart(() => import('./offset-lines.tsx').then((part) => part.OffsetLines))
const CoolLines = lazyPart(() => import('./cool-lines.tsx').then((part) => part.CoolLines))

interface FireProps {
  readonly load: LoadState
  readonly open: (over: Over) => void
  /** Keys to other loads that are in the fire or not cold yet. */
  readonly beside: readonly VNode[]
}

/** A load from the moment its kiln is on until it is cool: one bar that follows it, everything else beside it. */
export function FireCard({ load, open, beside }: FireProps) {
  const { table, now, words, formats, act, go } = useLoad()
  const ahead = useMemo(() => coneAhead(table.value, load), [table.value.offsets, load])
  const stage = stageOf(table.value, load, now.value, ahead?.lower ?? coneNearAt(load))
  const steams = stage.is === 'candle' || (stage.is === 'fire' && glassTells(table.value, load, now.value))
  const w = words.value.desk.shelf
  const care = KILN_CARE_WORDS[table.value.settings.language]
  const fire = FIRE_WORDS[table.value.settings.language]
  const [said, setSaid] = useState<string>()
  const { loadId, firing } = load
  const days = useDays()
  const hit = (action: Action, atMs?: number) => {
    const refusal = act(action, atMs)
    setSaid(refusal && kilnRefusalText(words.value, formats.value, table.peek(), refusal))
  }
  const fogged = (atMs?: number) => hit({ do: 'hold-glass', loadId, fogged: true }, atMs)
  const bars = {
    candle: {
      label: w.bar.clear,
      press: (atMs?: number) => hit({ do: 'hold-glass', loadId, fogged: false }, atMs),
    },
    cone: {
      label: w.bar.cone,
      press: (atMs: number) => hit({ do: 'see-cone', loadId, cone: firing.cone, is: 'down' }, atMs),
    },
    off: { label: w.bar.off, press: (atMs: number) => hit({ do: 'switch-off', loadId }, atMs) },
    open: { label: w.bar.open, press: () => open('open') },
    judge: { label: w.bar.judge, press: () => go({ at: 'opening', loadId }) },
    read: { label: w.bar.reading, press: () => open('reading') },
  }
  const done = stage.is === 'unload' && stage.cold
  const does = done
    ? bars.judge
    : stage.is === 'candle' || stage.is === 'cone' || stage.is === 'off' || stage.is === 'open'
      ? bars[stage.is]
      : bars.read
  useBar((atMs) => does.press(atMs))
  const small =
    stage.is === 'candle'
      ? { label: w.fogged, onPress: fogged }
      : stage.is === 'cone' || stage.is === 'open'
        ? { label: w.bar.reading, onPress: () => open('reading') }
        : undefined
  const fires = load.offAt === undefined
  const other = load.openedAt === undefined ? hotInKiln(table.value, load, now.value) : undefined
  const last = load.readings.at(-1)
  const { temp } = formats.value
  const down = coneDown(load)
  const past = down?.cone === firing.cone ? undefined : down
  const look = load.cones.findLast(({ cone }) => cone === firing.cone)
  const { pots, settings } = table.value
  const wet = useMemo(() => steamsAt(table.value, load), [load, pots, settings])
  const fogs = wet !== undefined || mayFog(table.value, load, now.value)
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        {other ? <p class="alarm figures">{fire.both(w.loadOf(days.moment(other.begunAt)))}</p> : null}
        <p class="kiln-big figures">
          {last && last.at > (load.offAt ?? 0)
            ? w.last(temp(last.tempC), days.moment(last.at))
            : load.offAt !== undefined
              ? w.off(days.moment(load.offAt))
              : load.litAt === undefined
                ? ''
                : w.lit(days.moment(load.litAt))}
        </p>
        {fires ? <OffsetLines load={load} fire={fire} open={open} asks /> : null}
        {fires ? (
          <FireLines load={load} stage={stage} ahead={ahead} candles={steams} fogs={fogs} steams={wet} />
        ) : (
          <>
            {done ? <p class="kiln-big">{fire.cold}</p> : null}
            <CoolLines load={load} done={done} />
            {past ? (
              <p class="figures">{fire.past(past.cone, firing.cone, days.moment(past.at))}</p>
            ) : look ? (
              <p class="figures">{fire.seen(firing.cone, w.stand[look.is], days.moment(look.at))}</p>
            ) : null}
          </>
        )}
        <p class="caution">
          {fires
            ? stage.is === 'candle' || wet
              ? care.glass
              : stage.is === 'fire'
                ? care.light
                : care.spy
            : stage.is === 'cool'
              ? care.cool
              : care.open}
        </p>
        {fires ? null : <OffsetLines load={load} fire={fire} open={open} asks />}
        <OffsetLines load={load} fire={fire} open={open} asks={false} />
        <div class="kiln-keys">
          {fires ? (
            <>
              {fogs && stage.is !== 'candle' ? (
                <button type="button" class="key" onClick={() => fogged()}>
                  {w.fogged}
                </button>
              ) : null}
              {wet ? (
                <button type="button" class="key" onClick={() => bars.candle.press()}>
                  {w.clear}
                </button>
              ) : null}
              {stage.is === 'off' || stage.is === 'candle' ? (
                <button type="button" class="key" onClick={() => open('reading')}>
                  {w.bar.reading}
                </button>
              ) : null}
              <button type="button" class="key" onClick={() => open('off')}>
                {stage.is === 'off' ? fire.offEarlier : w.bar.off}
              </button>
            </>
          ) : load.openedAt === undefined ? (
            <>
              {load.bungAt === undefined ? (
                <button type="button" class="key" onClick={() => open('bung')}>
                  {w.bung}
                </button>
              ) : null}
              {stage.is === 'cool' ? (
                <button type="button" class="key" onClick={() => open('open')}>
                  {w.bar.open}
                </button>
              ) : null}
            </>
          ) : null}
          {stage.is === 'candle' ? null : (
            <button type="button" class="key" onClick={() => open('cone')}>
              {w.cone}
            </button>
          )}
          {load.openedAt === undefined ? null : (
            <button type="button" class="key" onClick={() => open('which')}>
              {w.over.which}
            </button>
          )}
          <button type="button" class="key" onClick={() => open('right')}>
            {w.over.right}
          </button>
          <button type="button" class="key" onClick={() => open('ticket')}>
            {w.ticket}
          </button>
          {load.offAt === undefined || done ? null : (
            <button type="button" class="key" onClick={() => go({ at: 'opening', loadId })}>
              {load.openedAt === undefined ? w.guess : w.judge}
            </button>
          )}
          {beside}
        </div>
      </KilnMain>
      <BackLine />
      {small ? (
        <AnswerBars big={does.label} small={small} hand={table.value.settings.hand} />
      ) : (
        <KnuckleBar label={does.label} />
      )}
    </>
  )
}
