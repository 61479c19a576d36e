import { handsLine } from '../../table/hands-line.ts'
import { panAsk } from '../../table/wax-pan.ts'
import { BackStrip } from '../../ui/bar.tsx'
import { useApp } from '../app.ts'
import { HandsText, LaneButton, lateness } from './hands.tsx'
import { offersRing, ringLine, STRIP_MS } from './ring-line.ts'
import { nameOf } from './said.ts'

/**
 * The line above the bar. For ten seconds after a hit it takes the hit back, or puts it back again; otherwise it
 * says what does not work.
 */
export function Strip() {
  const { table, words, formats, now, health, card, extras } = useApp()
  const w = words.value
  const last = table.value.hits.at(-1)
  const named = (kind: string, potId: string | undefined) => {
    const number = nameOf(words.value, table.value.pots[potId ?? ''])
    return [number, w.hits[kind]].filter(Boolean).join(' ')
  }
  const pan = card.value.kind === 'wax-pan' ? undefined : panAsk(table.value, now.value)
  const back = table.value.takenBack
  const { sound, awake } = health.value
  const silent = table.value.settings.sound !== 'numerals' && (sound === 'off' || sound === 'dead')
  const sleepy = awake === 'lost' || awake === 'refused' || awake === 'absent'
  const faults = [silent ? w.bench.silent : undefined, sleepy ? w.bench.resting : undefined]
  const lines = [...faults, ringLine(extras.value, card.value, w)].filter(Boolean)
  const lanes = table.value.settings.potters === 2
  return (
    <div class={lanes ? 'strip strip-lanes' : 'strip'}>
      {offersRing(extras.value, table.value, card.value, now.value) ? (
        <p class="ring-line">{w.ring.offer}</p>
      ) : back && now.value - back.at < STRIP_MS ? (
        <BackStrip act="put-back" label={w.bench.putBack} />
      ) : last && now.value - last.at < STRIP_MS && w.hits[last.kind] !== undefined ? (
        <BackStrip act="take-back" label={w.bench.takeBack(named(last.kind, last.potId))} />
      ) : pan ? (
        <BackStrip act="pan" label={w.bench.panStrip(formats.value.span(pan.onMs))} />
      ) : (
        <LowLines lines={lines} fault={faults.some(Boolean)} />
      )}
      {lanes ? <LaneButton /> : null}
    </div>
  )
}

interface LowProps {
  readonly lines: readonly (string | undefined)[]
  readonly fault: boolean
}

/** What does not work, then the hands line; late for the kiln, all of it is the way to the ways out. */
function LowLines({ lines, fault }: LowProps) {
  const { table, now, card, told } = useApp()
  const late = lateness(handsLine(table.value, told.value, now.value)) > 0
  const said =
    lines.length > 0 ? (
      <span class={fault ? 'alarms' : 'ring-line'} role="status">
        {lines.join(' · ')}
      </span>
    ) : null
  const brief = late || lines.length > 0 || table.value.settings.potters === 2
  if (late)
    return (
      <button class="back-strip hands-line" type="button" data-press="small" data-act="ways">
        {said}
        <HandsText card={card.value} brief />
      </button>
    )
  return (
    <p class="hands-line figures">
      {said}
      {lines.length > 1 ? null : <HandsText card={card.value} brief={brief} />}
    </p>
  )
}

/** Nothing may look saved that is not. */
export function NotSaved() {
  const { health, words, retrySave } = useApp()
  const w = words.value.bench
  return health.value.saved === 'not-saved' ? (
    <button type="button" class="not-saved" onClick={retrySave}>
      <strong>{w.notSaved}</strong>
      <span>{w.notSavedText}</span>
    </button>
  ) : null
}
