/** Which one card the bench shows: what is under way first, then the order of work, then the nearest pot that is ready. */

import { lastDip } from '../model/plan.ts'
import { otherView } from '../model/potters.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import type { isAnyLeft, Schedule } from '../order/schedule.ts'
import { dipStepMs, potInHand, whereYouWere } from '../steps/pot-in-hand.ts'
import { HAND_STEPS, isHandStep } from '../steps/step-rows.ts'
import { mayBeDipped, nextBucket } from '../steps/steps.ts'
import { isWaxDone, panAsk } from '../steps/wax-pan.ts'
import { type AtStep, footCheck, leftAt, nextWork, stepsOf, type Work } from '../steps/work.ts'
import { CARD_ROWS, type Card, potsOnCard, type StuckWhy } from './card.ts'
import { dipCard } from './dip-card.ts'
import { endOfSitting } from './end.ts'
import type { follow } from './follow.ts'
import { idleCard } from './idle.ts'

/** The OUT card stands this long, and no call comes before; a hit ends its tone. */
export const OUT_MS = 3000

/** From taking a pot of one's own choice to its START. Assumption. */
const REACH_MS = 60_000

/** A schedule with what follows it: that code comes with the planner, and the first cards do without both. */
export interface FollowedSchedule extends Schedule {
  readonly follow: typeof follow
  readonly isAnyLeft: typeof isAnyLeft
}

/**
 * The one card to show at table time `now`, with what a hit on its bar means: by the `schedule` of the order of work,
 * by a simple rule where there is none. Pots that are `taken` are on the card of the other hands.
 */
export function cardOf(
  table: Table,
  now: number,
  schedule?: FollowedSchedule,
  taken: readonly string[] = [],
): Card {
  const steps = stepsOf(table, now)
  if (steps.length === 0) return { kind: 'empty' }
  const counting = steps.find(({ step }) => step.is === 'count')
  if (counting?.step.is === 'count') return countCard(counting.pot, counting.step.dip, now)
  for (const { pot } of steps) {
    const dip = lastDip(pot)
    if (dip?.unsure)
      return {
        kind: 'ask-dose',
        potId: pot.facts.potId,
        dip,
        big: { do: 'settle-dose', dipId: dip.dipId },
      }
  }
  if (table.heldSince !== undefined) {
    const { heldSince: _, ...goingOn } = table
    const left = cardOf(goingOn, now, schedule, taken)
    const lines = whereYouWere(table, steps, potsOnCard(left))
    return { kind: 'held', since: table.heldSince, left, lines, big: { do: 'resume' } }
  }
  const elsewhere = potInHand(otherView(table), steps)
  if (elsewhere && isOut(elsewhere.dip, now)) return outCard(elsewhere)
  // Nor the pot that the other hands have chosen.
  const off = [...taken, table.others?.picked?.potId]
  const offered = steps.filter(({ pot }) => !off.includes(pot.facts.potId))
  return handsCard(table, offered, now, schedule)
}

function countCard(pot: PotState, dip: DipState, now: number): Card {
  const isLowered = now >= dip.underAt - dip.lowerS * 1000
  const big = { do: isLowered ? 'stop' : 'cancel-count', dipId: dip.dipId } as const
  return { kind: 'count', potId: pot.facts.potId, dip, big }
}

const isOut = (dip: DipState, now: number): boolean => now < dip.outAt + OUT_MS && dip.how === 'planned'

const outCard = ({ pot, dip }: { readonly pot: PotState; readonly dip: DipState }): Card => ({
  kind: 'out',
  potId: pot.facts.potId,
  dip,
})

function handsCard(
  table: Table,
  steps: readonly AtStep[],
  now: number,
  schedule: FollowedSchedule | undefined,
): Card {
  const hand = potInHand(table, steps)
  if (hand && isOut(hand.dip, now)) return outCard(hand)
  const dripUntil = hand ? hand.dip.outAt + table.settings.dripS * 1000 : 0
  const held: Card | undefined = hand && {
    kind: 'drip',
    potId: hand.pot.facts.potId,
    dip: hand.dip,
    until: dripUntil,
    done: now >= dripUntil,
    big: { do: 'sponged', potId: hand.pot.facts.potId },
  }
  if (held && now < dripUntil) return held

  const next = (table.picked && pickedCard(table, steps, now)) ?? scheduledCard(table, steps, now, schedule)
  if (!hand || !held) return withPan(table, next ?? idleCard(table, steps, now), now)
  // One hit a coat: START for the next pot, or the stir before it, implies this one's foot.
  const inHand = hand.pot.facts.potId
  if (next?.kind === 'armed') return { ...next, inHand }
  if (!schedule) return held
  // What the order stirs once this foot is clean shows now: it would come under a knuckle that means the foot.
  const cleanAt = Math.ceil((hand.dip.tappedAt + dipStepMs(table, hand.dip)) / 1000) * 1000
  const then = next?.kind === 'stir' ? next : scheduledCard(table, steps, Math.max(now, cleanAt), schedule)
  return then?.kind === 'stir' ? { ...then, inHand } : held
}

/** What the order of work says, or the simple rule where it says nothing. */
function scheduledCard(
  table: Table,
  steps: readonly AtStep[],
  now: number,
  schedule: FollowedSchedule | undefined,
): Card | undefined {
  const stuck = steps.find(({ step }) => step.is === 'stuck')
  if (stuck?.step.is === 'stuck') return stuckCard(stuck.pot, stuck.step.why)
  const sitting = steps.filter(({ pot }) => !pot.later)
  const ending = endOfSitting()?.endSteps(table, now)
  const order = ending?.length ? undefined : schedule?.follow(table, sitting, schedule, now)
  if (order) return 'card' in order ? order.card : workCard(table, sitting, order.work, now)
  // The other hands have what is left: feet can be checked, nothing of theirs is offered.
  const theirs = schedule?.isAnyLeft(otherView(table), schedule)
  const work = theirs
    ? footCheck(sitting)
    : (nextWork(table, sitting, now) ?? (ending ? undefined : nextWork(table, steps, now)))
  return work && workCard(table, steps, work, now)
}

/** The pan comes before what hands that hold no pot would do next: nobody walks away from it, and it is not left on. */
function withPan(table: Table, card: Card, now: number): Card {
  if (!table.pan || card.kind === 'wax-pan') return card
  const { onAt } = table.pan
  const off = { do: 'wax-pan', is: 'off' } as const
  const stays = { do: 'wax-pan', is: 'watched' } as const
  // A pot that was taken up, or is about to go in, is put down first.
  if (table.picked || card.kind === 'armed') return card
  if (isWaxDone(table) && !CARD_ROWS[card.kind]?.ends)
    return { kind: 'wax-pan', onAt, why: 'waxed', big: off, small: stays }
  return panAsk(table, now) ? { kind: 'wax-pan', onAt, why: 'beside', big: stays, small: off } : card
}

/** The hands took a pot of their own choice: its own step, or the bucket they chose for it. */
function pickedCard(table: Table, steps: readonly AtStep[], now: number): Card | undefined {
  const { picked } = table
  const here = steps.find(({ pot }) => pot.facts.potId === picked?.potId)
  if (!picked || !here) return undefined
  const { pot, step } = here
  // A stir that would be too old before the hands get to START is asked for at once: START does not turn into it.
  const dip = (into: string) => {
    const isStirred = (table.buckets[into]?.stirredAt ?? Number.NEGATIVE_INFINITY) >= picked.at
    const freshAt = isStirred ? now : Math.max(now, picked.at + REACH_MS)
    return dipCard(table, steps, pot, into, now, undefined, freshAt)
  }
  if (picked.bucketId !== undefined) return dip(picked.bucketId)
  if (isHandStep(step.is))
    return workCard(table, steps, { is: step.is, pot, left: leftAt(steps, step.is) }, now)
  switch (step.is) {
    case 'stuck':
      return stuckCard(pot, step.why)
    case 'dip':
      return dip(step.plan.bucketId)
    case 'damp-dries': {
      const into = nextBucket(table, pot)
      return into === undefined ? undefined : dip(into)
    }
    case 'wait':
    case 'touch': {
      const into = nextBucket(table, pot)
      if (into !== undefined && !picked.touch && mayBeDipped(step, now)) return dip(into)
      // All its coats are on: what is left is its foot, which need not wait.
      return into === undefined
        ? workCard(table, steps, { is: 'foot-check', pot, left: 1 + leftAt(steps, 'foot-check') }, now)
        : workCard(table, steps, { is: 'touch', bucketId: into, pots: [pot] }, now)
    }
    default:
      return undefined
  }
}

function workCard(table: Table, steps: readonly AtStep[], work: Work, now: number): Card {
  switch (work.is) {
    case 'touch': {
      const potIds = work.pots.map((pot) => pot.facts.potId)
      return {
        kind: 'ready',
        potIds,
        bucketId: work.bucketId,
        big: { do: 'touched', potIds, dry: true },
        small: { do: 'touched', potIds, dry: false },
      }
    }
    case 'dip':
      return (
        dipCard(table, steps, work.pot, work.bucketId, now) ?? {
          kind: 'stuck',
          potId: work.pot.facts.potId,
          why: 'no-bucket',
        }
      )
    default: {
      const { potId } = work.pot.facts
      const isCold = work.is === 'wax' && table.settings.wax === 'hot' && !table.pan
      return {
        kind: work.is,
        potId,
        left: work.left,
        big: { do: HAND_STEPS[work.is].done, potId },
        // Its clock starts when it is switched on; waxing says as well that it is on.
        small: isCold ? { do: 'wax-pan', is: 'on' } : undefined,
      }
    }
  }
}

/** A pot that needs a decision; after a stray coat the bar goes on with the rest of its plan. */
function stuckCard(pot: PotState, why: StuckWhy): Card {
  const { potId } = pot.facts
  return { kind: 'stuck', potId, why, big: why === 'strayed' ? { do: 'keep-going', potId } : undefined }
}
