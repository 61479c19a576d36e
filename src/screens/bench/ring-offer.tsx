import type { Card } from '../../table/card/card.ts'
import { AnswerBars } from '../../ui/bar.tsx'
import type { Words } from '../../words/bench.ts'
import { useApp } from '../app.ts'
import type { Extras } from '../extras.ts'

/** The offer to ring, where the last hit is taken back otherwise. */
export const RingAsk = () => <p class="ring-line">{useApp().words.value.ring.offer}</p>

/** The two answers to the offer, in place of the bar that rests; the strip above asks. */
export function RingOffer({ extras }: { readonly extras: Extras }) {
  const { table, words } = useApp()
  const w = words.value.ring
  return (
    <AnswerBars
      big={w.yes}
      small={{ label: w.no, onPress: () => extras.setRing(false) }}
      hand={table.value.settings.hand}
    />
  )
}

/** Whether it will ring, in a few words, where a wait shows. */
export function ringLine(extras: Extras | undefined, card: Card, words: Words): string | undefined {
  const ring = extras?.ring.value
  if (!ring?.on) return undefined
  if (ring.track === 'interrupted' || ring.track === 'failed') return words.ring.stopped
  return card.kind === 'wait' ? words.ring.line[ring.proof] : undefined
}
