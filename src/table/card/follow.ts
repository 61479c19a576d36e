/** How the card follows the order of work that the planner told, pot by pot, and when it departs from it. */

import { isStale } from '../model/fresh.ts'
import { potterOf } from '../model/potters.ts'
import type { Table } from '../model/state.ts'
import { isAnyLeft, type Schedule, type Task, tasksOf } from '../order/schedule.ts'
import { UNPLANNED } from '../steps/step-rows.ts'
import { mayBeDipped, nextBucket, stepOf } from '../steps/steps.ts'
import { type AtStep, at, dueFor, leftAt, type Work } from '../steps/work.ts'
import type { Card, CardReason, Due, Kept, Visit } from './card.ts'
import type { FollowedSchedule } from './card-now.ts'
import { dipCard, returnCard, stirCard } from './dip-card.ts'
import { WIPE_MS, withoutHaste } from './haste.ts'
import { DUES_SHOWN, duesOf, goodAtHand, keptFor, keptWhy, stepIn } from './kept.ts'

/** A gap shorter than this is too short to take another pot up. Assumption. */
const FOOT_CHECK_GAP_MS = 20_000

type Follow = { readonly card: Card } | { readonly work: Work }

/** A schedule that the card can follow. */
export const followed = (schedule: Schedule): FollowedSchedule => ({ ...schedule, follow, isAnyLeft })

/** The order told, as the card to show or the work to show one of; undefined when it has nothing for these hands. */
export function follow(
  table: Table,
  steps: readonly AtStep[],
  schedule: Schedule,
  now: number,
): Follow | undefined {
  // Nobody walks away from a hot pan: waxing goes first, as a block.
  const toWax = table.settings.waxFirst ? at(steps, 'wax') : []
  if (toWax[0]) return { work: { is: 'wax', pot: toWax[0], left: leftAt(steps, 'wax') } }
  // What no order knows of is done as soon as the hands are free: its pot waits for nothing else.
  for (const is of UNPLANNED) {
    const [pot] = at(steps, is)
    if (pot) return { work: { is, pot, left: leftAt(steps, is) } }
  }
  const line = withoutHaste(table, steps, tasksOf(table, schedule), now)
  const back = takenBackCard(table, steps, line, now)
  if (back) return { card: back }
  const [task] = line
  if (!task) return undefined
  const prep = prepNow(steps, line)
  if (prep) return { work: prep }
  // Hands that were thought to be away and are back go on at once.
  const due = { ...task, startAt: task.startAt - (schedule.awayMs[task.potter] ?? 0) }
  return taken(table, steps, line, due, now) ?? meanwhile(table, steps, schedule, line, task, now)
}

/** The dip or the stir that these hands took back last, as before its hit: its pot, or the mixer, is in them. */
function takenBackCard(
  table: Table,
  steps: readonly AtStep[],
  line: readonly Task[],
  now: number,
): Card | undefined {
  const { kind, potId, bucketId, hands = 0, logged } = table.takenBack ?? {}
  if (logged || hands !== potterOf(table) || bucketId === undefined) return undefined
  if (kind === 'stirred') {
    const next = line.find((task) => task.is === 'dip' && task.bucketId === bucketId)
    const here = next?.is === 'dip' ? stepIn(steps, next.potId) : undefined
    return here && stirCard(table, steps, here.pot, bucketId, visit(line, bucketId))
  }
  const here = kind === 'dipped' ? stepIn(steps, potId ?? '') : undefined
  if (!here || !mayBeDipped(here.step, now)) return undefined
  return dipCard(table, steps, here.pot, bucketId, now, visit(line, bucketId))
}

/** A dip with all that comes with it. Assumption. */
const DIP_MS = 60_000
/** Hands with nothing else to do for so long open a bucket once more than the order would. Our choice. */
const IDLE_MS = 30 * 60_000

/**
 * Waxing and wiping that the order has before its next dip, as far as pots are at it. It goes before a stir, so that the
 * stir is as late as it can be, and in the order of places; a pot that is dipped at once is not left to the last.
 */
function prepNow(steps: readonly AtStep[], line: readonly Task[]): Work | undefined {
  const dip = line.findIndex((task) => task.is === 'dip')
  const tasks = dip < 0 ? line : line.slice(0, dip)
  const is = tasks.find((task) => task.is === 'wax' || task.is === 'wipe')?.is
  if (is !== 'wax' && is !== 'wipe') return undefined
  const asked = new Set(tasks.flatMap((task) => (task.is === is ? [task.potId] : [])))
  const pots = at(steps, is).filter(({ facts }) => asked.has(facts.potId))
  const next = line[dip]
  const soonest = pots.at(-1)
  const pot = next?.is === 'dip' && soonest?.facts.potId === next.potId ? soonest : pots[0]
  return pot && { is, pot, left: leftAt(steps, is) }
}

/** Past its upper bound a pot that nobody found damp counts as dry: touching it would bring nothing forward. */
const damp = (steps: readonly AtStep[], now: number): readonly AtStep[] =>
  steps.filter(({ step }) => step.is !== 'touch' || !mayBeDipped(step, now))

/** The first task, if the hands can take it up now; what is waxed or wiped went before. */
function taken(
  table: Table,
  steps: readonly AtStep[],
  line: readonly Task[],
  task: Task,
  now: number,
): Follow | undefined {
  switch (task.is) {
    case 'wax':
    case 'wipe':
      return undefined
    case 'open':
    case 'restir': {
      const next = line.find((each) => each.is === 'dip' && each.bucketId === task.bucketId)
      const here = next?.is === 'dip' ? stepIn(steps, next.potId) : undefined
      // What is to be touched comes before another bucket, and before a stir for itself: only then is it known which pots can go.
      const opens = table.openBucket !== task.bucketId
      const toTouch = opens ? damp(steps, now) : here ? damp([here], now) : []
      if (now < task.startAt || dueFor(table, toTouch, undefined, now)) return undefined
      // A pot that was washed off, or got another stack, no longer wants what was told.
      if (here && nextBucket(table, here.pot) !== task.bucketId) return undefined
      const card = here && stirCard(table, steps, here.pot, task.bucketId, visit(line, task.bucketId))
      return card && { card: { ...card, reason: stirReason(table, task, now) } }
    }
    case 'dip': {
      const here = stepIn(steps, task.potId)
      if (!here || nextBucket(table, here.pot) !== task.bucketId || !mayBeDipped(here.step, now))
        return undefined
      if (task.heldMs > 0 && now < task.startAt) return undefined
      const card = dipCard(table, steps, here.pot, task.bucketId, now, visit(line, task.bucketId))
      if (!card || card.kind === 'armed') return card && { card: { ...card, reason: task.reason } }
      // Its bucket has to be seen to first: what speaks for the dip is no reason for that.
      const stale = table.openBucket === task.bucketId && isStale(table, task.bucketId, now)
      return { card: { ...card, reason: stale ? 'stale' : undefined } }
    }
  }
}

/** Why a bucket is stirred now: a stir that is still good will be too old by the dip it is for. */
const stirReason = (
  table: Table,
  { reason, ...task }: Task & { bucketId: string },
  now: number,
): CardReason => (reason === 'stale' && !isStale(table, task.bucketId, now) ? 'staleByDip' : reason)

function visit(line: readonly Task[], bucketId: string): Visit {
  let dips = 0
  for (const task of line) {
    if (task.is === 'open' && task.bucketId !== bucketId) break
    if (task.is === 'dip') dips++
  }
  return { dips }
}

/** Useful work in the gap before the first task, or the gap itself. */
function meanwhile(
  table: Table,
  steps: readonly AtStep[],
  schedule: Schedule,
  line: readonly Task[],
  task: Task,
  now: number,
): Follow {
  const gapMs = task.startAt - now
  const into = 'bucketId' in task ? task.bucketId : undefined
  const toTouch = damp(steps, now)
  const touch = (into && dueFor(table, toTouch, into, now)) ?? dueFor(table, toTouch, undefined, now)
  if (touch) return { work: touch }
  const fill = gapMs >= DIP_MS ? fillOf(table, steps, line, now) : undefined
  if (fill) return { card: fill }
  const toWipe = at(steps, 'wipe')
  if (toWipe[0] && gapMs >= WIPE_MS)
    return { work: { is: 'wipe', pot: toWipe[0], left: leftAt(steps, 'wipe') } }
  const feet = at(steps, 'foot-check')
  if (feet[0] && gapMs > FOOT_CHECK_GAP_MS)
    return { work: { is: 'foot-check', pot: feet[0], left: leftAt(steps, 'foot-check') } }
  const { collar } = table
  if (collar && !line.some((each) => each.is === 'dip' && each.bucketId === collar.bucketId))
    return { card: returnCard(collar) }
  const kept = keptFor(table, steps, line, now)
  const early = gapMs >= IDLE_MS ? openedEarly(table, steps, kept) : undefined
  if (early) return { card: early }
  const fillDue = fillDueOf(table, steps, line, task)
  const dues = duesOf(table, steps, line, kept, fillDue)
  const [next, ...after] = dues
  const probe =
    schedule.touch &&
    steps.find(
      ({ pot, step }) =>
        step.is === 'wait' &&
        pot.facts.potId === schedule.touch?.potId &&
        nextBucket(table, pot) !== undefined,
    )
  // A key beside the pot that is next is for no other.
  const soon = dues
    .slice(0, next?.potId ? 1 : 1 + DUES_SHOWN)
    .find(({ what }) => what === 'touch' || what === 'foot-check')
  // Hands that wait for a clock wait for nothing else.
  const isForced =
    next?.what === 'foot-check' || (fillDue !== undefined && next === fillDue && kept.length === 0)
  const potId = kept[0]?.potIds[0] ?? probe?.pot.facts.potId ?? soon?.potId
  return {
    card: {
      kind: 'wait',
      next,
      after: after.slice(0, DUES_SHOWN),
      reason: isForced ? undefined : keptWhy(table, line, kept, now),
      kept,
      touch: kept.length > 0 ? undefined : probe && schedule.touch,
      offer:
        potId === undefined
          ? undefined
          : kept.length > 0
            ? { do: 'pick', potId }
            : { do: 'pick', potId, touch: true },
    },
  }
}

/** A dip into the open bucket that its stir is good for, by hands that would stand beside it. */
function fillOf(
  table: Table,
  steps: readonly AtStep[],
  line: readonly Task[],
  now: number,
): Card | undefined {
  const openBucket = goodAtHand(table, now)
  if (openBucket === undefined) return undefined
  for (const task of line) {
    const here = task.is === 'dip' && task.bucketId === openBucket ? stepIn(steps, task.potId) : undefined
    if (!here || nextBucket(table, here.pot) !== openBucket || !mayBeDipped(here.step, now)) continue
    const card = dipCard(table, steps, here.pot, openBucket, now, visit(line, openBucket))
    return card?.kind === 'armed' ? card : undefined
  }
  return undefined
}

/** The soonest clock of a pot that is such a dip when it runs out, well before `task`. */
function fillDueOf(
  table: Table,
  steps: readonly AtStep[],
  line: readonly Task[],
  task: Task,
): Due | undefined {
  return steps
    .flatMap(({ pot, step }): Due[] => {
      if (!('until' in step) || step.is === 'drip' || task.startAt - step.until < DIP_MS) return []
      const { is: what, until: at } = step
      const then = [{ pot, step: stepOf(table, pot, at) }]
      return fillOf(table, then, line, at) ? [{ potId: pot.facts.potId, at, what }] : []
    })
    .sort((a, b) => a.at - b.at)[0]
}

/** The bucket of pots that would else be kept, by hands that have long nothing to do: one opening more, and no idle hour. */
function openedEarly(table: Table, steps: readonly AtStep[], kept: readonly Kept[]): Card | undefined {
  const group = kept.find(({ bucketId }) => table.others?.openBucket !== bucketId)
  const here = group && stepIn(steps, group.potIds[0] ?? '')
  return here && stirCard(table, steps, here.pot, group.bucketId, { dips: group.potIds.length })
}
