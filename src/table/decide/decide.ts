import type { TableEvent } from '../../../shared/events.ts'
import { lowerS } from '../forecast/shape-inputs.ts'
import type { Action } from '../model/action.ts'
import { coatFrom } from '../model/coat-from.ts'
import { isFresh } from '../model/fresh.ts'
import { lastDip, nextCoat, planOf } from '../model/plan.ts'
import { otherView, potterOf, viewOf } from '../model/potters.ts'
import { HELD_S, outOf } from '../model/range.ts'
import type { Table } from '../model/state.ts'
import { potInHand } from '../steps/pot-in-hand.ts'
import { stepsOf } from '../steps/work.ts'
import { decideCard } from './decide-card.ts'
import { type Decision, type HitStamp, type More, NOTHING, onDip, onPot, refuse } from './decision.ts'
import { feetImplied } from './feet.ts'

/**
 * What follows from an action on this table at this moment. Pure: nothing is stored here. Setting up and putting
 * right are left to `more`, whose code the bench doesn't wait for.
 */
export function decide(table: Table, action: Action, stamp: HitStamp, more?: More): Decision {
  const hands = stamp.hands ?? 0
  const decision = decided(viewOf(table, hands), action, stamp, more)
  if (hands === 0 || 'refusal' in decision) return decision
  return { events: decision.events.map((event) => ({ hands, ...event })) }
}

function decided(table: Table, action: Action, stamp: HitStamp, more?: More): Decision {
  const now = stamp.at - table.skewMs
  switch (action.do) {
    case 'waxed':
    case 'wiped':
      return onPot(table, action.potId, () => ({
        events: [{ kind: action.do, potId: action.potId, implied: false }],
      }))
    case 'stirred':
      if (!table.buckets[action.bucketId]) return refuse('unknown-bucket')
      return {
        events: [
          ...feetImplied(table, now),
          { kind: 'stirred', bucketId: action.bucketId },
          ...(action.decantLitres === undefined
            ? []
            : [{ kind: 'decanted' as const, bucketId: action.bucketId, litres: action.decantLitres }]),
        ],
      }
    case 'start':
      return start(table, action, stamp, now)
    case 'cancel-count':
      return onDip(table, action.dipId, (dip) =>
        now >= dip.underAt - dip.lowerS * 1000
          ? refuse('not-counting')
          : { events: [{ kind: 'count-cancelled', dipId: action.dipId }] },
      )
    case 'stop':
      return onDip(table, action.dipId, (dip) => {
        if (now >= dip.outAt) return refuse('not-counting')
        const holdS = Math.max(0, Math.round((now - dip.underAt) / 100) / 10)
        const outAt = now + table.skewMs
        return { events: [{ kind: 'count-stopped', dipId: action.dipId, holdS, outAt }] }
      })
    case 'sponged':
      return onPot(table, action.potId, (pot) => {
        const dipId = lastDip(pot)?.dipId
        return dipId === undefined
          ? refuse('not-its-step')
          : { events: [{ kind: 'sponged', potId: action.potId, dipId, implied: false }] }
      })
    case 'touched':
      return touched(table, action.potIds, action.dry, now)
    case 'foot-signed':
      return onPot(table, action.potId, (pot) =>
        nextCoat(pot) < planOf(table, pot).length
          ? refuse('not-its-step')
          : { events: [...feetImplied(table, now), { kind: 'foot-signed', potId: action.potId }] },
      )
    case 'returned':
      if (table.collar?.bucketId === action.bucketId)
        return { events: [{ kind: 'returned', bucketId: action.bucketId }] }
      // At the end it does not matter who poured it off.
      return table.others?.collar?.bucketId === action.bucketId
        ? {
            events: [{ kind: 'returned', bucketId: action.bucketId, hands: potterOf(table) === 1 ? 0 : 1 }],
          }
        : NOTHING
    case 'hold':
      return table.heldSince === undefined ? { events: [{ kind: 'held' }] } : NOTHING
    case 'resume':
      // Going on says as well that somebody is beside the pan: a hold asks.
      return table.heldSince === undefined
        ? NOTHING
        : {
            events: [
              ...(table.pan ? [{ kind: 'wax-pan' as const, is: 'watched' as const }] : []),
              { kind: 'resumed' },
            ],
          }
    default:
      return decideCard(table, action, now) ?? more?.(table, action, stamp) ?? NOTHING
  }
}

function start(
  table: Table,
  action: Extract<Action, { do: 'start' }>,
  stamp: HitStamp,
  now: number,
): Decision {
  return onPot(table, action.potId, (pot) => {
    if (table.heldSince !== undefined) return refuse('held')
    const steps = stepsOf(table, now)
    if (steps.some(({ step }) => step.is === 'count')) return refuse('counting')
    const step = steps.find((at) => at.pot === pot)?.step
    const elsewhere = potInHand(otherView(table), steps)
    if (elsewhere?.pot === pot) return refuse('other-hands', { number: pot.facts.number })
    const bucketId =
      table.picked?.potId === action.potId && table.picked.bucketId !== undefined
        ? table.picked.bucketId
        : planOf(table, pot)[nextCoat(pot)]?.bucketId
    const bucket = bucketId === undefined ? undefined : table.buckets[bucketId]
    const from = bucketId === undefined ? undefined : coatFrom(table, pot, bucketId)
    if (!bucketId || !bucket || !from) return refuse('unknown-bucket')
    if (elsewhere?.dip.bucketId === bucketId && now < elsewhere.dip.outAt + table.settings.dripS * 1000)
      return refuse('bucket-busy', { by: bucket.facts.name })
    if (step?.is === 'stuck') return refuse('not-its-step')
    if (from.hasIt && !action.again) return refuse('has-it-already', { number: pot.facts.number })
    if (from.insteadOf !== undefined && !action.again)
      return refuse('other-bucket', { by: table.buckets[from.insteadOf]?.facts.name ?? '' })
    if (!action.unstirred && !isFresh(table, bucketId, now)) return refuse('stir-first')
    const wrong = outOf(HELD_S, 'heldS', from.plan.holdS)
    if (wrong) return { refusal: wrong }
    const { leadInS } = table.settings
    const lower = lowerS(table, pot.facts, from.plan.cover)
    const events: TableEvent[] = feetImplied(table, now)
    // A hit on START of a coat that nobody touched says that it was dry; after NOT YET only a touch says so.
    if (step?.is === 'touch' && !step.notYet)
      events.push({ kind: 'touched', potIds: [action.potId], dipIds: [step.dip.dipId], dry: true })
    events.push({
      kind: 'dipped',
      dipId: stamp.hit,
      potId: action.potId,
      coat: from.coat,
      bucketId,
      cover: from.plan.cover,
      gramsPerMl: bucket.gramsPerMl,
      leadS: leadInS,
      lowerS: lower,
      holdS: from.plan.holdS,
      outAt: stamp.at + (leadInS + lower + from.plan.holdS) * 1000,
      unstirred: !isFresh(table, bucketId, now),
      told: false,
    })
    return { events }
  })
}

function touched(table: Table, potIds: readonly string[], dry: boolean, now: number): Decision {
  const coats = potIds.flatMap((potId) => {
    const pot = table.pots[potId]
    const dip = pot && !pot.gone ? lastDip(pot) : undefined
    return dip ? [{ potId, dipId: dip.dipId }] : []
  })
  if (coats.length === 0) return NOTHING
  const known = coats.map(({ potId }) => potId)
  const dipIds = coats.map(({ dipId }) => dipId)
  return { events: [...feetImplied(table, now), { kind: 'touched', potIds: known, dipIds, dry }] }
}
