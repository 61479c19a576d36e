import type { Action } from '../model/action.ts'
import type { Potter } from '../model/potters.ts'
import type { Card } from './card.ts'

/** Another card is another key: a hit meant for the old one does not count for the new one. */
export function cardKey(card: Card, potter: Potter): string {
  const pot = 'potId' in card ? card.potId : card.kind === 'armed' ? card.armed.potId : ''
  const bucket = 'bucketId' in card ? card.bucketId : ''
  const pots = card.kind === 'ready' ? card.potIds.join() : ''
  return `${potter} ${card.kind} ${pot} ${bucket} ${pots}`
}

/**
 * What the bar of a card does when it is hit, or `held` for its other meaning; undefined where it rests. `leftOut`: pots
 * that were tapped to be left out of the answer.
 */
export const barAction = (card: Card, held: boolean, leftOut: ReadonlySet<string>): Action | undefined =>
  without((held ? card.heldBar : undefined) ?? card.big ?? card.offer, leftOut)

/** What the smaller answer of a card does. */
export const smallAction = (card: Card, leftOut: ReadonlySet<string>): Action | undefined =>
  without(card.small, leftOut)

const without = (action: Action | undefined, leftOut: ReadonlySet<string>): Action | undefined =>
  action?.do === 'touched'
    ? { ...action, potIds: action.potIds.filter((potId) => !leftOut.has(potId)) }
    : action
