import type { Collar, Decant } from '../advice/collar.ts'
import type { Advice } from '../advice/warnings.ts'
import type { PotState, Table } from '../model/state.ts'
import type { Card, Level } from './card.ts'

/** What the first card does without: its code is fetched after it. */
export interface Judge {
  /** What is to be said before a pot goes into a bucket. */
  advice(table: Table, pot: PotState, bucketId: string, now: number): Advice
  /** What to pour off a bucket so that it does for each of these collars. */
  decant(table: Table, bucketId: string, collars: readonly Collar[]): Decant | undefined
  /** How much is in a bucket now, by the dips since its level was read. */
  level(table: Table, bucketId: string): Level | undefined
}

/** A card with its warnings, and with what is to be poured. Until their judge is here no dip starts. */
export function judged(table: Table, card: Card, now: number, judge: Judge | undefined): Card {
  if (card.kind === 'stir' && card.collars) return poured(table, { ...card, collars: card.collars }, judge)
  if (card.kind === 'lid') return levelled(table, card, judge)
  if (card.kind !== 'armed') return card
  const { armed } = card
  const pot = table.pots[armed.potId]
  if (!judge || !pot) return { ...card, big: undefined, heldBar: undefined }
  const { warnings, line, foot } = judge.advice(table, pot, armed.bucketId, now)
  return { ...card, armed: { ...armed, warnings, line, foot } }
}

type Pouring = Extract<Card, { kind: 'stir' }> & { readonly collars: readonly Collar[] }

function poured(table: Table, card: Pouring, judge: Judge | undefined): Card {
  if (!judge) return { ...card, big: undefined, heldBar: undefined }
  const { bucketId } = card
  const decant = judge.decant(table, bucketId, card.collars)
  return { ...card, decant, big: { do: 'stirred', bucketId, decantLitres: decant?.litres } }
}

/** A lid goes on with what is in the bucket: as computed, where nobody has read it since the last dip. */
function levelled(table: Table, card: Extract<Card, { kind: 'lid' }>, judge: Judge | undefined): Card {
  const level = judge?.level(table, card.bucketId)
  if (!level) return { ...card, big: undefined }
  const { bucketId, levelRead } = card
  return {
    ...card,
    level,
    big: { do: 'lid-on', bucketId, ...(levelRead ? {} : { litres: level.litres }) },
  }
}
