import type { Card } from './card.ts'
import type { PotState, Table } from './state.ts'
import type { Warning } from './warnings.ts'

/** What is to be said before a pot goes into a bucket, worst first. */
export type Judge = (table: Table, pot: PotState, bucketId: string, now: number) => readonly Warning[]

/** A card with its warnings. Their code comes after the first card: until it is here, no dip starts. */
export function judged(table: Table, card: Card, now: number, judge: Judge | undefined): Card {
  if (card.kind !== 'armed') return card
  const { armed } = card
  const pot = table.pots[armed.potId]
  if (!judge || !pot) return { ...card, big: undefined, heldBar: undefined }
  return { ...card, armed: { ...armed, warnings: judge(table, pot, armed.bucketId, now) } }
}
