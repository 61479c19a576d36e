import type { PotState, Table } from '../model/state.ts'
import { type Card, potsOnCard } from './card.ts'

/**
 * The pot that slips are put right of beside a card: the one it names, else the one that was picked for its bucket, else,
 * with nothing for the hands, the next that is due. A card of a bucket or of the room is about no pot of its own.
 */
export const potToMend = (table: Table, card: Card): PotState | undefined =>
  table.pots[
    potsOnCard(card.kind === 'held' ? card.left : card)[0] ??
      table.picked?.potId ??
      (card.kind === 'wait' ? card.next?.potId : undefined) ??
      ''
  ]
