import type { PotFacts } from '../../../shared/nouns.ts'
import { MOST_APART_MS } from '../../../shared/record.ts'
import { freeLetter, freePattern } from '../entry/offer.ts'
import type { Action } from '../model/action.ts'
import type { Answer } from '../model/ask.ts'
import { otherPiece } from '../model/pieces.ts'
import { freePlace, nextNumber } from '../model/places.ts'
import { potsOnTable } from '../model/plan.ts'
import { outOf, type Range } from '../model/range.ts'
import type { Table } from '../model/state.ts'
import { needsBucket, needsStack } from '../model/uses.ts'
import { restacked } from './decide-corrections.ts'
import { type Decision, NOTHING, onDip, onPot, refuse } from './decision.ts'

/** How far the clock of a phone that is met may be from this one's, ms. */
const AHEAD_MS: Range = { least: -MOST_APART_MS, most: MOST_APART_MS }

/** Decides on what comes of a meeting of two phones. Refuses clocks that are more than a day apart. */
export function decideMeeting(table: Table, action: Action): Decision {
  switch (action.do) {
    case 'meet': {
      const { phone, upTo, aheadMs } = action
      const wrong = aheadMs === undefined ? undefined : outOf(AHEAD_MS, 'aheadMs', aheadMs)
      if (wrong) return { refusal: wrong }
      return { events: [{ kind: 'met', phone, upTo, ...(aheadMs === undefined ? {} : { aheadMs }) }] }
    }
    case 'settle':
      return settled(table, action.answer)
    default:
      return NOTHING
  }
}

function settled(table: Table, answer: Answer): Decision {
  switch (answer.is) {
    case 'both':
      return { events: [{ kind: 'both-dipped', dipIds: answer.dipIds }] }
    case 'never':
      return onDip(table, answer.dipId, ({ hit }) => ({
        events: [{ kind: 'taken-back', hit, wentOn: answer.wentOn }],
      }))
    case 'so': {
      const { is, facts } = answer.thing
      if (is === 'pot') return { events: [{ kind: 'pot-set', pot: facts }] }
      if (is === 'restacked') return restacked(table, facts.potId, facts.stackId)
      if (is === 'dip') {
        const { outAt } = facts
        const when = outAt === undefined ? {} : { outAt: outAt + table.skewMs }
        return onDip(table, facts.dipId, () => ({ events: [{ kind: 'dip-corrected', ...facts, ...when }] }))
      }
      if (is === 'stack') return { events: [{ kind: 'stack-set', stack: facts }] }
      if (is === 'bucket') return { events: [{ kind: 'bucket-set', bucket: facts }] }
      if (is === 'plan') return { events: [{ kind: 'plan-changed', ...facts }] }
      if (is === 'settings') return { events: [{ kind: 'settings-set', settings: facts }] }
      if (is === 'firing') return { events: [{ kind: 'firing-planned', firing: facts }] }
      if (is === 'kiln') return { events: [{ kind: 'kiln-set', kiln: facts }] }
      if (is === 'pair') return { events: [{ kind: 'pair-set', pair: facts }] }
      return { events: [{ kind: 'board-set', board: facts }] }
    }
    case 'off':
      return table.pots[answer.potId]
        ? { events: [{ kind: 'pot-gone', potId: answer.potId }] }
        : refuse('unknown-pot')
    case 'there':
      return table.pots[answer.potId]
        ? { events: answer.hits.map((hit) => ({ kind: 'taken-back', hit, there: answer.potId })) }
        : refuse('unknown-pot')
    case 'away':
      return away(table, answer.thing, answer.id)
    case 'number':
      return onPot(table, answer.potId, ({ facts }) => {
        const number = nextNumber(potsOnTable(table).map((pot) => pot.facts.number))
        const piece = otherPiece(table, facts)?.facts
        const set = (pot: PotFacts) => ({ kind: 'pot-set', pot: { ...pot, number } }) as const
        return { events: [set(facts), ...(piece ? [set(piece)] : [])] }
      })
    case 'place':
      return onPot(table, answer.potId, ({ facts }) => {
        const place = freePlace(potsOnTable(table).map((pot) => pot.facts.place))
        return { events: [{ kind: 'pot-set', pot: { ...facts, place } }] }
      })
    case 'letter': {
      const facts = table.buckets[answer.bucketId]?.facts
      if (!facts) return refuse('unknown-bucket')
      const letter = freeLetter(table, facts.name, undefined)
      const twin = Object.values(table.buckets).some(
        (other) => other.facts.bucketId !== facts.bucketId && other.facts.pattern === facts.pattern,
      )
      const pattern = twin ? freePattern(table) : facts.pattern
      return { events: [{ kind: 'bucket-set', bucket: { ...facts, letter, pattern } }] }
    }
  }
}

/** Takes a bucket or a stack off the table; one that is needed there stays. */
function away(table: Table, thing: 'bucket' | 'stack', id: string): Decision {
  const by = thing === 'bucket' ? needsBucket(table, id) : needsStack(table, id)
  if (by !== undefined) return { refusal: { code: 'in-use', field: thing, facts: { by } } }
  if (thing === 'bucket')
    return table.buckets[id] ? { events: [{ kind: 'bucket-gone', bucketId: id }] } : refuse('unknown-bucket')
  return table.stacks[id] ? { events: [{ kind: 'stack-gone', stackId: id }] } : refuse('unknown-stack')
}
