import { handsLine } from '../../table/hands-line.ts'
import { panAsk } from '../../table/wax-pan.ts'
import { BackStrip } from '../../ui/bar.tsx'
import { useApp } from '../app.ts'
import { HandsText, LaneButton, lateness } from './hands.tsx'
import { ringLine } from './ring-line.ts'

/** How long the strip that undoes the last hit stays. */
const STRIP_MS = 10_000

/**
 * The line above the bar. For ten seconds after a hit it takes the hit back, or puts it back again; otherwise it
 * says what does not work.
 */
export function Strip() {
  const { table, words, formats, now, health, card, told, extras } = useApp()
  const w = words.value
  const last = table.value.hits.at(-1)
  const named = (kind: string, potId: string | undefined) => {
    const number = potId === undefined ? undefined : table.value.pots[potId]?.facts.number
    return [number, w.hits[kind]].filter((part) => part !== undefined).join(' ')
  }
  const pan = card.value.kind === 'wax-pan' ? undefined : panAsk(table.value, now.value)
  const back = table.value.takenBack
  const { sound, awake } = health.value
  const silent = table.value.settings.sound !== 'numerals' && (sound === 'off' || sound === 'dead')
  const sleepy = awake === 'lost' || awake === 'refused' || awake === 'absent'
  const faults = [silent ? w.bench.silent : undefined, sleepy ? w.bench.resting : undefined]
  const lines = [...faults, ringLine(extras.value, card.value, w)].filter(Boolean)
  const late = lateness(handsLine(table.value, told.value, now.value)) > 0
  const lanes = table.value.settings.potters === 2
  return (
    <div class={lanes ? 'strip strip-lanes' : 'strip'}>
      {back && now.value - back.at < STRIP_MS ? (
        <BackStrip act="put-back" label={w.bench.putBack} />
      ) : last && now.value - last.at < STRIP_MS && w.hits[last.kind] !== undefined ? (
        <BackStrip act="take-back" label={w.bench.takeBack(named(last.kind, last.potId))} />
      ) : pan ? (
        <BackStrip act="pan" label={w.bench.panStrip(formats.value.span(pan.onMs))} />
      ) : lines.length > 0 ? (
        <p class={faults.some(Boolean) ? 'alarms' : 'ring-line'} role="status">
          {lines.join(' · ')}
        </p>
      ) : late ? (
        <button class="back-strip hands-line" type="button" data-press="small" data-act="ways">
          <HandsText card={card.value} />
        </button>
      ) : (
        <p class="hands-line figures">
          <HandsText card={card.value} />
        </p>
      )}
      {lanes ? <LaneButton /> : null}
    </div>
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
