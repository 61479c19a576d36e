import type { TableEvent } from '../../../shared/events.ts'
import type { Action } from '../model/action.ts'
import { LIMITS, outOfRange } from '../model/limits.ts'
import { withPieces } from '../model/pieces.ts'
import { nextCoat, planOf } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { asDipped } from './decide-card.ts'
import { type Decision, type HitStamp, onDip, onPot } from './decision.ts'

/** Repairs of slips: events that mend what the journal says, never erase it. */
export function decideCorrections(table: Table, action: Action, stamp: HitStamp): Decision {
  switch (action.do) {
    case 'put-off':
      return action.potIds.length === 0
        ? { refusal: { code: 'nothing-to-do' } }
        : { events: [{ kind: 'put-off', potIds: withPieces(table, action.potIds), later: action.later }] }
    case 'leave-out':
      return leaveOut(table, action.coats)
    case 'told':
      return told(table, action, stamp)
    case 'held-longer':
      return onDip(table, action.dipId, (dip) => holdOf(action.dipId, dip.holdS + action.byS))
    case 'held-exactly':
      return onDip(table, action.dipId, () => holdOf(action.dipId, action.holdS))
    case 'was-earlier': {
      const wrong = outOfRange('agoMin', action.byMin)
      if (wrong) return { refusal: wrong }
      return onDip(table, action.dipId, (dip) => ({
        events: [
          {
            kind: 'dip-corrected',
            dipId: action.dipId,
            outAt: dip.outAt + table.skewMs - action.byMin * 60_000,
          },
        ],
      }))
    }
    case 'was-other-pot':
      return onDip(table, action.dipId, () =>
        onPot(table, action.potId, () => ({
          events: [{ kind: 'dip-corrected', dipId: action.dipId, potId: action.potId }],
        })),
      )
    case 'was-other-hands':
      return onDip(table, action.dipId, (dip) => ({
        events: [{ kind: 'dip-corrected', dipId: action.dipId, by: dip.hands === 1 ? 0 : 1 }],
      }))
    case 'was-other-bucket':
      return onDip(table, action.dipId, () =>
        table.buckets[action.bucketId]
          ? { events: [{ kind: 'dip-corrected', dipId: action.dipId, bucketId: action.bucketId }] }
          : { refusal: { code: 'unknown-bucket' } },
      )
    case 'wash-off':
      return onPot(table, action.potId, () => ({ events: [{ kind: 'washed-off', potId: action.potId }] }))
    case 'restack': {
      const stack = table.stacks[action.stackId]
      if (!stack) return { refusal: { code: 'unknown-stack', field: 'stack' } }
      return onPot(table, action.potId, (pot) => {
        const { potId } = pot.facts
        const on = nextCoat(pot)
        const coats = [...asDipped(table, potId).slice(0, on), ...stack.coats.slice(on)]
        return {
          events: [
            { kind: 'pot-set', pot: { ...pot.facts, stackId: action.stackId } },
            { kind: 'plan-changed', potId, coats },
          ],
        }
      })
    }
    case 'pour-inside':
      return onPot(table, action.potId, (pot) =>
        nextCoat(pot) > 0
          ? { refusal: { code: 'not-its-step' } }
          : { events: [{ kind: 'pot-set', pot: { ...pot.facts, pourInsideFirst: true } }] },
      )
    case 'touched-up':
      return onPot(table, action.potId, () => ({ events: [{ kind: 'touched-up', potId: action.potId }] }))
    case 'weigh': {
      const wrong = outOfRange('grams', action.grams)
      if (wrong) return { refusal: wrong }
      return onPot(table, action.potId, ({ bisqueG }) => {
        const { potId, grams, as } = action
        if (as === 'now' && bisqueG === undefined) return { refusal: { code: 'missing', field: 'bisque' } }
        if (as === 'now' && bisqueG !== undefined && grams < bisqueG)
          return {
            refusal: {
              code: 'out-of-range',
              field: 'grams',
              facts: { value: grams, least: bisqueG, most: LIMITS.grams.most },
            },
          }
        return { events: [{ kind: 'weighed', potId, grams, as }] }
      })
    }
    case 'gone':
      return onPot(table, action.potId, () => ({ events: [{ kind: 'pot-gone', potId: action.potId }] }))
    default:
      return { refusal: { code: 'nothing-to-do' } }
  }
}

function leaveOut(table: Table, coats: Extract<Action, { do: 'leave-out' }>['coats']): Decision {
  const events = coats.flatMap(({ potId, coat }): TableEvent[] => {
    const pot = table.pots[potId]
    if (!pot || coat < nextCoat(pot) || coat >= planOf(table, pot).length) return []
    return [{ kind: 'plan-changed', potId, coats: planOf(table, pot).filter((_, i) => i !== coat) }]
  })
  return events.length > 0 ? { events } : { refusal: { code: 'nothing-to-do' } }
}

function holdOf(dipId: string, holdS: number): Decision {
  const wrong = outOfRange('holdS', holdS)
  return wrong ? { refusal: wrong } : { events: [{ kind: 'dip-corrected', dipId, holdS }] }
}

/** "It's dipped already": the next coat as planned, its OUT so many minutes ago. */
function told(table: Table, action: Extract<Action, { do: 'told' }>, stamp: HitStamp): Decision {
  const wrong = outOfRange('agoMin', action.agoMin)
  if (wrong) return { refusal: wrong }
  return onPot(table, action.potId, (pot) => {
    const coat = nextCoat(pot)
    const plan = planOf(table, pot)[coat]
    const bucket = plan && table.buckets[plan.bucketId]
    if (!plan || !bucket) return { refusal: { code: 'not-its-step' } }
    const potId = action.potId
    const events: TableEvent[] = []
    if (pot.waxedAt === undefined) events.push({ kind: 'waxed', potId, implied: true })
    if (pot.wipedAt === undefined) events.push({ kind: 'wiped', potId, implied: true })
    events.push(
      {
        kind: 'dipped',
        dipId: stamp.hit,
        potId,
        coat,
        bucketId: plan.bucketId,
        cover: plan.cover,
        gramsPerMl: bucket.gramsPerMl,
        leadS: 0,
        lowerS: 0,
        holdS: plan.holdS,
        outAt: stamp.at - action.agoMin * 60_000,
        unstirred: false,
        told: true,
      },
      { kind: 'sponged', potId, implied: true },
      { kind: 'set-down', potId, implied: true },
    )
    return {
      events: action.by === undefined ? events : events.map((event) => ({ ...event, hands: action.by })),
    }
  })
}
