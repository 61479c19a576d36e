/** How the card follows the order of work that the planner told, pot by pot, and when it departs from it. */

import { isFresh, isStale } from '../model/fresh.ts'
import type { Table } from '../model/state.ts'
import { isAnyLeft, type Schedule, type Task, tasksOf } from '../order/schedule.ts'
import { UNPLANNED } from '../steps/step-rows.ts'
import { dueWhat, mayBeDipped, nextBucket } from '../steps/steps.ts'
import { type AtStep, at, dueFor, leftAt, type Work } from '../steps/work.ts'
import type { Card, CardReason, Due, Kept, Visit } from './card.ts'
import type { FollowedSchedule } from './card-now.ts'
import { dipCard, returnCard, stirCard } from './dip-card.ts'

/** A gap shorter than this is too short to take another pot up. Assumption. */
const FOOT_CHECK_GAP_MS = 20_000
/** What comes after the next, on a card with time to read. */
const DUES_SHOWN = 2

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
  const [task] = line
  if (!task) return undefined
  const prep = prepNow(steps, line)
  if (prep) return { work: prep }
  // Hands that were thought to be away and are back go on at once.
  const due = { ...task, startAt: task.startAt - (schedule.awayMs[task.potter] ?? 0) }
  return taken(table, steps, line, due, now) ?? meanwhile(table, steps, schedule, line, task, now)
}

/** Part of the time a stir is good for in which no other is asked for. Our choice. */
const YOUNG_PART = 0.5
/** From the card to START, with room; and a dip with all that comes with it. Assumptions. */
const REACH_MS = 60_000
const DIP_MS = 60_000
/** A pot is wiped in less. Assumption. */
const WIPE_MS = 30_000

/**
 * What is left of the order, but for a stir that can wait: one right before a dip that the last is good for, and one
 * right after another. Whoever was quick at a stir is asked again when the dip is near, and once.
 */
function withoutHaste(
  table: Table,
  steps: readonly AtStep[],
  line: readonly Task[],
  now: number,
): readonly Task[] {
  const [task, next] = line
  if (task?.is !== 'restir' || task.decant || !isFresh(table, task.bucketId, now)) return line
  const here = next?.is === 'dip' && next.bucketId === task.bucketId ? stepIn(steps, next.potId) : undefined
  const goes = here && mayBeDipped(here.step, now) && isFresh(table, task.bucketId, now + REACH_MS)
  const ageMs = now - (table.buckets[task.bucketId]?.stirredAt ?? Number.NEGATIVE_INFINITY)
  const isYoung = ageMs < table.settings.staleMin * 60_000 * YOUNG_PART
  return goes || isYoung ? line.slice(1) : line
}

const stepIn = (steps: readonly AtStep[], potId: string): AtStep | undefined =>
  steps.find(({ pot }) => pot.facts.potId === potId)

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
      if (now < task.startAt) return undefined
      const next = line.find((each) => each.is === 'dip' && each.bucketId === task.bucketId)
      const here = next?.is === 'dip' ? stepIn(steps, next.potId) : undefined
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
  // Past its upper bound a pot counts as dry already: touching it would bring nothing forward.
  const damp = steps.filter(({ step }) => step.is !== 'touch' || now < step.dry.upper)
  const touch = (into && dueFor(table, damp, into, now)) ?? dueFor(table, damp, undefined, now)
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
  const dues = duesOf(table, steps, line, kept)
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
  const early = dues
    .slice(0, next?.potId ? 1 : 1 + DUES_SHOWN)
    .find(({ what }) => what === 'touch' || what === 'foot-check')
  const potId = kept[0]?.potIds[0] ?? probe?.pot.facts.potId ?? early?.potId
  return {
    card: {
      kind: 'wait',
      next,
      after: after.slice(0, DUES_SHOWN),
      reason: next?.what === 'foot-check' ? undefined : keptWhy(table, line, kept, now),
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

/** The open bucket, where its stir is good for a dip from here. */
const goodAtHand = (table: Table, now: number): string | undefined =>
  isFresh(table, table.openBucket ?? '', now + REACH_MS) ? table.openBucket : undefined

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

/**
 * Pots that could go now and are kept for their bucket, and when it is their turn; the soonest first. Nothing is kept
 * for a bucket that stands open and is good: its pots are next.
 */
function keptFor(
  table: Table,
  steps: readonly AtStep[],
  line: readonly Task[],
  now: number,
): readonly Kept[] {
  const atHand = goodAtHand(table, now)
  const kept: { bucketId: string; at: number; later: boolean; potIds: string[] }[] = []
  for (const { pot, step } of steps) {
    const task = line.find((each) => each.is === 'dip' && each.potId === pot.facts.potId)
    if (task?.is !== 'dip' || !mayBeDipped(step, now)) continue
    // The coat before that one may be the other potter's.
    if (nextBucket(table, pot) !== task.bucketId || task.bucketId === atHand) continue
    const at = visitAt(line, task)
    const group = kept.find(({ bucketId }) => bucketId === task.bucketId)
    if (!group) kept.push({ bucketId: task.bucketId, at, later: false, potIds: [pot.facts.potId] })
    else {
      group.potIds.push(pot.facts.potId)
      group.at = Math.min(group.at, at)
    }
  }
  const isStirred = ({ bucketId, at }: (typeof kept)[number]) =>
    line.some(
      (task) => task.is !== 'dip' && 'bucketId' in task && task.bucketId === bucketId && task.startAt < at,
    )
  for (const group of kept) group.later = isStirred(group)
  return kept.sort((a, b) => a.at - b.at)
}

/** When the hands turn to the bucket of a dip: its stir, which the free card names as well, or the dip itself. */
function visitAt(line: readonly Task[], dip: Task & { readonly bucketId: string }): number {
  const before = line.slice(0, line.indexOf(dip)).filter((task) => 'bucketId' in task)
  const own = before.slice(before.findLastIndex((task) => task.bucketId !== dip.bucketId) + 1)
  return (own[0] ?? dip).startAt
}

/** Why pots that could go are kept: for a stir that is saved, or for the one opening that all of a bucket get. */
function keptWhy(
  table: Table,
  line: readonly Task[],
  kept: readonly Kept[],
  now: number,
): CardReason | undefined {
  if (isHeld(line) || needsStir(table, kept, now)) return 'heldSavesStir'
  return kept.some(({ bucketId }) => bucketId !== table.openBucket) ? 'keptSavesOpening' : undefined
}

/** Whether pots are kept beside their open bucket, which would have to be stirred for them alone. */
const needsStir = (table: Table, kept: readonly Kept[], now: number): boolean =>
  kept.some(({ bucketId }) => bucketId === table.openBucket && isStale(table, bucketId, now))

/** Whether the next dip is held back though its pot could go. */
function isHeld(line: readonly Task[]): boolean {
  const dip = line.find((task) => task.is === 'dip')
  return dip?.is === 'dip' && dip.heldMs > 0
}

/**
 * What will want the hands, soonest first: touches as they come due, and what was told. A pot that is kept has the hour
 * that it is kept for, and no other.
 */
function duesOf(
  table: Table,
  steps: readonly AtStep[],
  line: readonly Task[],
  kept: readonly Kept[],
): readonly Due[] {
  const touches = steps.flatMap(({ pot, step }): Due[] => {
    const what = step.is === 'wait' ? dueWhat(table, pot, step) : undefined
    return step.is === 'wait' && what
      ? [{ potId: pot.facts.potId, at: step.askAt, what, band: step.dry }]
      : []
  })
  const touched = new Set(touches.map((due) => due.potId))
  const isOfKept = (task: Task & { is: 'dip' }) =>
    kept.some(({ potIds, at }) => potIds.includes(task.potId) && at !== task.startAt)
  const tasks = line.flatMap((task): Due[] => {
    switch (task.is) {
      case 'open':
      case 'restir':
        return [{ bucketId: task.bucketId, at: task.startAt, what: 'stir' }]
      case 'dip':
        return touched.has(task.potId) || isOfKept(task)
          ? []
          : [{ potId: task.potId, at: task.startAt, what: 'dip' }]
      default: {
        const step = stepIn(steps, task.potId)?.step
        const waits = step && 'until' in step && step.is !== 'drip' ? step : undefined
        return waits ? [{ potId: task.potId, at: waits.until, what: waits.is }] : []
      }
    }
  })
  const first = tasks.slice(0, 1 + DUES_SHOWN)
  return [...touches, ...first].sort((a, b) => a.at - b.at)
}
