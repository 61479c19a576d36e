import { useSignal } from '@preact/signals'
import type { Action } from '../../table/model/action.ts'
import { coatsOn } from '../../table/model/plan.ts'
import type { PotState } from '../../table/model/state.ts'
import { PressButton } from '../../ui/press.tsx'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import { nameOf } from '../text/pot-text.ts'

const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '⌫', '0'] as const
const MOST_DIGITS = 5

/**
 * Five seconds at the scale: grams on a keypad that a knuckle can hit. Before the first coat it is the bisque weight;
 * later the weight as it is, from which the water in the wall follows.
 */
export function WeighPage({
  pot,
  act,
}: {
  readonly pot: PotState
  readonly act: (action: Action) => (atMs: number) => void
}) {
  const words = useApp().words.value
  const w = useLateWords().other
  const typed = useSignal('')
  /** What was to be kept before: an odd weight that is kept once more is meant. */
  const asked = useSignal('')
  const dry = coatsOn(pot).length === 0 && pot.washedAt === undefined && pot.damp === undefined
  const as = pot.bisqueG === undefined || dry ? 'bisque' : 'now'
  const { potId } = pot.facts
  const name = nameOf(words, pot)
  const press = (key: (typeof KEYS)[number]) => () => {
    typed.value =
      key === '⌫' ? typed.value.slice(0, -1) : (typed.value + key).replace(/^0+/, '').slice(0, MOST_DIGITS)
  }
  return (
    <div class="weigh">
      <p class="strong">{as === 'bisque' ? w.weighBisque(name) : w.weighNow(name)}</p>
      <p class="weigh-figure figures" aria-live="polite">
        {w.weighed(typed.value === '' ? '0' : typed.value)}
      </p>
      <div class="weigh-keys figures">
        {KEYS.map((key) => (
          <PressButton key={key} class="other-chip" onPress={press(key)}>
            {key}
          </PressButton>
        ))}
        <PressButton
          class="other-chip weigh-keep"
          onPress={(atMs) => {
            const sure = asked.value === typed.value
            asked.value = typed.value
            act({ do: 'weigh', potId, grams: Number(typed.value), as, sure })(atMs)
          }}
        >
          {w.weighKeep}
        </PressButton>
      </div>
    </div>
  )
}
