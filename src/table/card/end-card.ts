/** The cards of the end of a sitting, and the one that closes it. */

import { kilnOf } from '../advice/lid.ts'
import { otherPiece } from '../model/pieces.ts'
import { lastDip, potsOnTable } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { type EndStep, latestSitting, leftAtEnd } from '../steps/close-down.ts'
import type { Card, PotDry } from './card.ts'
import { returnCard } from './dip-card.ts'

/** The card of one step of the end. How much is in a bucket comes with `judged`. */
export function endCard(table: Table, step: EndStep, now: number): Card {
  switch (step.is) {
    case 'return':
      return returnCard(step.collar)
    case 'lid': {
      const { bucketId, more, levelRead } = step
      return { kind: 'lid', bucketId, more, levelRead, big: { do: 'lid-on', bucketId } }
    }
    case 'pan':
      return {
        kind: 'wax-pan',
        onAt: table.pan?.onAt ?? now,
        why: 'closing',
        big: { do: 'wax-pan', is: 'off' },
      }
    case 'tools':
      return { kind: 'tools', big: { do: 'tools-washed' } }
    case 'floor':
      return { kind: 'floor', big: { do: 'floor-mopped' } }
  }
}

/** All is put away: what the sitting came to, and what dries. */
export function closedCard(table: Table): Card {
  const { pots = 0, coats = 0 } = latestSitting(table) ?? {}
  return { kind: 'closed', pots, coats, dry: potsThatDry(table), left: leftAtEnd(table) }
}

/** Pots with all their coats on, in the order of places, and when each may go into the kiln; a lid goes with its jar. */
export const potsThatDry = (table: Table): readonly PotDry[] =>
  potsOnTable(table).flatMap((pot): PotDry[] => {
    const { potId, lidOf } = pot.facts
    if (pot.later || !lastDip(pot) || (lidOf !== undefined && otherPiece(table, pot.facts))) return []
    const dry = kilnOf(table, pot, table.settings.candle ? 'ready' : 'kiln')
    return dry ? [{ potId, dry }] : []
  })
