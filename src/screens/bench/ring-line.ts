import type { Card } from '../../table/card.ts'
import type { Words } from '../../words/index.ts'
import type { Extras } from '../extras.ts'

/** The first wait as long as this is the moment to offer ringing. */
const OFFER_MS = 5 * 60_000

/** Whether ringing with the screen off shall be offered now: once, since it stops the person's music. */
export function offersRing(extras: Extras | undefined, card: Card, now: number): boolean {
  if (!extras || card.kind !== 'wait' || !card.next) return false
  const { on, offered } = extras.ring.value
  return !on && !offered && Number.isFinite(card.next.at) && card.next.at - now > OFFER_MS
}

/** Whether it will ring, in a few words, where a wait shows. */
export function ringLine(extras: Extras | undefined, card: Card, words: Words): string | undefined {
  const ring = extras?.ring.value
  if (!ring?.on) return undefined
  if (ring.track === 'interrupted' || ring.track === 'failed') return words.ring.stopped
  return card.kind === 'wait' ? words.ring.line[ring.proof] : undefined
}
