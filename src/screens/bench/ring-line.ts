import type { Card } from '../../table/card/card.ts'
import { HIT_TOLD_MS } from '../../table/card/last-hit.ts'
import type { Table } from '../../table/model/state.ts'
import type { Extras } from '../extras.ts'

/** The first wait as long as this is the moment to offer ringing. */
const OFFER_MS = 5 * 60_000

/** Whether ringing with the screen off shall be offered now: once, since it stops the person's music. */
export function offersRing(extras: Extras | undefined, table: Table, card: Card, now: number): boolean {
  // No call is made for a foot.
  if (!extras || card.kind !== 'wait' || !card.next || card.next.what === 'foot-check') return false
  const { on, offered } = extras.ring.value
  // For so long the strip, which asks, takes the last hit back; with two potters it has no room.
  const lately = now - (table.hits.at(-1)?.at ?? 0) < HIT_TOLD_MS
  if (lately || table.takenBack || table.settings.potters === 2) return false
  return !on && !offered && Number.isFinite(card.next.at) && card.next.at - now > OFFER_MS
}
