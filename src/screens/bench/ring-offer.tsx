import type { Card } from '../../table/card/card.ts'
import { AnswerBars } from '../../ui/bar.tsx'
import type { LateWords } from '../../words/late.ts'
import { useApp } from '../app.ts'
import type { Extras } from '../extras.ts'
import { useLateWords } from '../late-words.ts'

/** The offer to ring, where the last hit is taken back otherwise. */
export const RingAsk = () => <p class="ring-line">{useLateWords().ring.offer}</p>

/** The two answers to the offer, in place of the bar that rests; the strip above asks. */
export function RingOffer({ extras }: { readonly extras: Extras }) {
  const { table } = useApp()
  const w = useLateWords().ring
  return (
    <AnswerBars
      big={w.yes}
      small={{ label: w.no, onPress: () => extras.setRing(false) }}
      hand={table.value.settings.hand}
    />
  )
}

/** Whether it will ring, in a few words, where a wait shows. */
export function ringLine(extras: Extras | undefined, card: Card, words: LateWords): string | undefined {
  const ring = extras?.ring.value
  if (!ring?.on) return undefined
  if (ring.track === 'interrupted' || ring.track === 'failed') return words.ring.stopped
  return card.kind === 'wait' ? words.ring.line[ring.proof] : undefined
}
