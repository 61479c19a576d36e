import type { TableEvent } from '../../../shared/events.ts'
import { likelyGrams } from '../forecast/learning.ts'
import type { Action, Refusal } from '../model/action.ts'
import { densityAt } from '../model/density.ts'
import { LIMITS, outOfRange } from '../model/limits.ts'
import { withPieces } from '../model/pieces.ts'
import { nextCoat, planOf, stackPlan } from '../model/plan.ts'
import { coatsByPot, planWithout } from '../model/plan-with.ts'
import { viewOf } from '../model/potters.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { stepOf } from '../steps/steps.ts'
import { asDipped } from './decide-card.ts'
import { type Decision, type HitStamp, onDip, onPot } from './decision.ts'
import { feetImplied } from './feet.ts'

/** A pot gets another stack: the coats that are on stay, those to come are that one's. */
export function restacked(table: Table, potId: string, stackId: string): Decision {
  if (!table.stacks[stackId]) return { refusal: { code: 'unknown-stack', field: 'stack' } }
  return onPot(table, potId, (pot) => {
    const on = nextCoat(pot)
    const facts = { ...pot.facts, stackId }
    const coats = [...asDipped(table, potId).slice(0, on), ...stackPlan(table, facts).slice(on)]
    return {
      events: [
        { kind: 'pot-set', pot: facts },
        { kind: 'plan-changed', potId, coats },
      ],
    }
  })
}

/** Repairs of slips: events that mend what the journal says, never erase it. */
export function decideCorrections(table: Table, action: Action, stamp: HitStamp): Decision {
  switch (action.do) {
    case 'put-off':
      return action.potIds.length === 0
        ? { refusal: { code: 'nothing-to-do' } }
        : { events: [{ kind: 'put-off', potIds: withPieces(table, action.potIds), later: action.later }] }
    case 'leave-out':
      return leaveOut(table, action.coats)
    case 'logged':
      return logged(table, action, stamp)
    case 'held-longer':
      return onDip(table, action.dipId, (dip) => holdOf(action.dipId, dip.holdS + action.byS))
    case 'held-exactly':
      return onDip(table, action.dipId, () => holdOf(action.dipId, action.holdS))
    case 'was-earlier':
      return onDip(table, action.dipId, (dip, pot) => wasEarlier(table, pot, dip, action.byMin))
    case 'was-other-pot':
      return onDip(table, action.dipId, (dip, pot) =>
        onPot(table, action.potId, (target) =>
          target === pot
            ? { refusal: { code: 'nothing-to-do' } }
            : {
                events: [
                  {
                    kind: 'dip-corrected',
                    dipId: action.dipId,
                    potId: action.potId,
                    ...(impliedDry(table, target, dip) ? { dry: true as const } : {}),
                  },
                ],
              },
        ),
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
    case 'restack':
      return restacked(table, action.potId, action.stackId)
    case 'pour-inside':
      return onPot(table, action.potId, (pot) =>
        nextCoat(pot) > 0 || pot.facts.pourInsideFirst
          ? { refusal: { code: 'not-its-step' } }
          : { events: [{ kind: 'pot-set', pot: { ...pot.facts, pourInsideFirst: true } }] },
      )
    case 'touched-up':
      return onPot(table, action.potId, () => ({ events: [{ kind: 'touched-up', potId: action.potId }] }))
    case 'weigh': {
      const wrong = outOfRange('grams', action.grams)
      if (wrong) return { refusal: wrong }
      return onPot(table, action.potId, (pot) => {
        const { bisqueG } = pot
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
        const likely = as === 'now' && !action.sure && likelyGrams(table, pot, stamp.at - table.skewMs)
        if (likely && (grams < likely.least || grams > likely.most))
          return { refusal: { code: 'odd-weight', field: 'grams', facts: { value: grams, ...likely } } }
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
  const events = [...coatsByPot(coats)].flatMap(([potId, of]): TableEvent[] => {
    const pot = table.pots[potId]
    if (!pot) return []
    const toCome = of.filter((coat) => coat >= nextCoat(pot) && coat < planOf(table, pot).length)
    if (toCome.length === 0) return []
    return [{ kind: 'plan-changed', potId, coats: planWithout(table, pot, toCome) }]
  })
  return events.length > 0 ? { events } : { refusal: { code: 'nothing-to-do' } }
}

function holdOf(dipId: string, holdS: number): Decision {
  const wrong = outOfRange('heldS', holdS)
  return wrong ? { refusal: wrong } : { events: [{ kind: 'dip-corrected', dipId, holdS }] }
}

/** A dip that ended earlier, though not before the coat below it went on. */
function wasEarlier(table: Table, pot: PotState, dip: DipState, byMin: number): Decision {
  const before = { ...pot, dips: pot.dips.slice(0, pot.dips.indexOf(dip)) }
  const wrong = agoRefusal(before, byMin, dip.outAt)
  if (wrong) return { refusal: wrong }
  const outAt = dip.outAt + table.skewMs - byMin * 60_000
  return { events: [{ kind: 'dip-corrected', dipId: dip.dipId, outAt }] }
}

/** Why a coat can't have come out so long before `at`, table time ms: it lies on the one below, and on a washed wall. */
function agoRefusal(pot: PotState, agoMin: number, at: number): Refusal | undefined {
  const below = Math.max(pot.dips.at(-1)?.outAt ?? 0, pot.washedAt ?? 0)
  const most = Math.min(LIMITS.agoMin.most, Math.max(0, Math.ceil((at - below) / 60_000) - 1))
  const { least } = LIMITS.agoMin
  return agoMin >= least && agoMin <= most
    ? undefined
    : { code: 'out-of-range', field: 'agoMin', facts: { value: agoMin, least, most } }
}

/** Whether START on this pot, at the moment of that dip, would have said that the coat below was dry. */
function impliedDry(table: Table, pot: PotState, { tappedAt, how }: DipState): boolean {
  const then: PotState = {
    ...pot,
    dips: pot.dips.filter((dip) => dip.outAt <= tappedAt),
    touches: pot.touches.filter((touch) => touch.at < tappedAt),
  }
  const step = stepOf(table, then, tappedAt)
  return how !== 'logged' && step.is === 'touch' && !step.notYet
}

/** "It's dipped already": the next coat as planned, its OUT so many minutes ago. */
function logged(table: Table, action: Extract<Action, { do: 'logged' }>, stamp: HitStamp): Decision {
  return onPot(table, action.potId, (pot) => {
    const coat = nextCoat(pot)
    const plan = planOf(table, pot)[coat]
    const bucket = plan && table.buckets[plan.bucketId]
    const wrong = agoRefusal(pot, action.agoMin, stamp.at - table.skewMs)
    if (wrong) return { refusal: wrong }
    if (!plan || !bucket) return { refusal: { code: 'not-its-step' } }
    const potId = action.potId
    const now = stamp.at - table.skewMs
    const theirs = action.by === undefined ? table : viewOf(table, action.by)
    const events: TableEvent[] = feetImplied(theirs, now, now - action.agoMin * 60_000)
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
        gramsPerMl: densityAt(bucket, stamp.at - table.skewMs - action.agoMin * 60_000),
        leadS: 0,
        lowerS: 0,
        holdS: plan.holdS,
        outAt: stamp.at - action.agoMin * 60_000,
        unstirred: false,
        told: true,
      },
      { kind: 'sponged', potId, dipId: stamp.hit, implied: true },
      { kind: 'set-down', potId, dipId: stamp.hit, implied: true },
    )
    return {
      events: action.by === undefined ? events : events.map((event) => ({ ...event, hands: action.by })),
    }
  })
}
