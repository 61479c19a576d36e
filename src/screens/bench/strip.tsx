import { HIT_TOLD_MS, setDown } from '../../table/card/last-hit.ts'
import type { Action } from '../../table/model/action.ts'
import { takesBack } from '../../table/model/potters.ts'
import { panAsk } from '../../table/steps/wax-pan.ts'
import { BackStrip } from '../../ui/bar.tsx'
import { PressButton } from '../../ui/press.tsx'
import { useApp } from '../app.ts'
import { hitText, placeOf } from '../text/pot-text.ts'
import { offersRing } from './ring-line.ts'
import { LowLines, OtherPotterDoes, RingAsk } from './stand-ins.tsx'
import './strip.css'

/**
 * The line above the bar. For ten seconds after a hit it takes the hit back, or puts it back again; otherwise it
 * says what does not work.
 */
export function Strip() {
  const { table, words, formats, now, health, card, extras, bench } = useApp()
  const hit = (action: Action) => (atMs: number) => bench.hit(action, atMs)
  const w = words.value
  const last = takesBack(table.value, now.value)
  const pan = card.value.kind === 'wax-pan' ? undefined : panAsk(table.value, now.value)
  const back = table.value.takenBack
  const down = setDown(table.value, now.value)
  const { sound, awake } = health.value
  const silent = table.value.settings.sound !== 'numerals' && (sound === 'off' || sound === 'dead')
  const sleepy = awake === 'lost' || awake === 'refused' || awake === 'absent'
  const fault = silent
    ? sleepy
      ? w.bench.silentResting
      : w.bench.silent
    : sleepy
      ? w.bench.resting
      : undefined
  const two = table.value.settings.potters === 2
  return (
    <div class={two ? 'strip strip-potters' : 'strip'}>
      {pan ? (
        <BackStrip
          to="pan"
          label={w.bench.panStrip(formats.value.span(pan.onMs))}
          onPress={hit({ do: 'wax-pan', is: 'watched' })}
        />
      ) : offersRing(extras.value, table.value, card.value, now.value) ? (
        <RingAsk />
      ) : back && now.value - back.at < HIT_TOLD_MS ? (
        <BackStrip
          to="put-back"
          label={w.bench.putBack(hitText(w, table.value, back))}
          onPress={hit({ do: 'put-back' })}
        />
      ) : last && now.value - last.at < HIT_TOLD_MS && w.hits[last.kind] !== undefined ? (
        <BackStrip
          to="take-back"
          label={down ? w.bench.downTakeBack(placeOf(down)) : w.bench.takeBack(hitText(w, table.value, last))}
          onPress={hit({ do: 'take-back' })}
        />
      ) : (
        <LowLines faults={fault === undefined ? [] : [fault]} />
      )}
      {two ? <OtherPotter /> : null}
    </div>
  )
}

/** The way to the other pair of hands, and what they have on their card. */
function OtherPotter() {
  const { table, words, potter } = useApp()
  const turn = () => {
    potter.value = potter.peek() === 1 ? 0 : 1
  }
  return (
    <PressButton class="back-strip potter-strip" onPress={turn}>
      <span>{words.value.bench.potter(table.value.potter === 1 ? 1 : 2)}</span>
      <small class="figures">
        <OtherPotterDoes />
      </small>
    </PressButton>
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
