/** What the hands wait for on a free card: pots that are kept on purpose, and what comes due. */

import { isFresh, isStale } from '../model/fresh.ts'
import type { Table } from '../model/state.ts'
import type { Task } from '../order/schedule.ts'
import { dueWhat, mayBeDipped, nextBucket } from '../steps/steps.ts'
import type { AtStep } from '../steps/work.ts'
import type { CardReason, Due, Kept } from './card.ts'

/** From the card to START, with room. Assumption. */
export const REACH_MS = 60_000
/** What comes after the next, on a card with time to read. */
export const DUES_SHOWN = 2

/** A pot with its step; undefined of one that is not on offer. */
export const stepIn = (steps: readonly AtStep[], potId: string): AtStep | undefined =>
  steps.find(({ pot }) => pot.facts.potId === potId)

/** The open bucket, where its stir is good for a dip from here. */
export const goodAtHand = (table: Table, now: number): string | undefined =>
  isFresh(table, table.openBucket ?? '', now + REACH_MS) ? table.openBucket : undefined

/**
 * Pots that could go now and are kept for their bucket, and when it is their turn; the soonest first. Nothing is kept
 * for a bucket that stands open and is good: its pots are next.
 */
export function keptFor(
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
export function keptWhy(
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
 * What will want the hands, soonest first: touches as they come due, what was told, and a `fill`, a dip that is taken
 * before all that was told. A pot that is kept has the hour that it is kept for, and no other.
 */
export function duesOf(
  table: Table,
  steps: readonly AtStep[],
  line: readonly Task[],
  kept: readonly Kept[],
  fill: Due | undefined,
): readonly Due[] {
  const touches = steps.flatMap(({ pot, step }): Due[] => {
    const what = step.is === 'wait' ? dueWhat(table, pot, step) : undefined
    return step.is === 'wait' && what
      ? [{ potId: pot.facts.potId, at: step.askAt, what, band: step.dry }]
      : []
  })
  const clocked = fill ? [...touches, fill] : touches
  const ofClock = new Set(clocked.map((due) => due.potId))
  const isOfKept = (task: Task & { is: 'dip' }) =>
    kept.some(({ potIds, at }) => potIds.includes(task.potId) && at !== task.startAt)
  const tasks = line.flatMap((task): Due[] => {
    switch (task.is) {
      case 'open':
      case 'restir':
        return [{ bucketId: task.bucketId, at: task.startAt, what: 'stir' }]
      case 'dip':
        return ofClock.has(task.potId) || isOfKept(task)
          ? []
          : [{ potId: task.potId, at: task.startAt, what: 'dip' }]
      default: {
        const step = stepIn(steps, task.potId)?.step
        const waits = step && 'until' in step && step.is !== 'drip' ? step : undefined
        return waits ? [{ potId: task.potId, at: waits.until, what: waits.is }] : []
      }
    }
  })
  // Wax sets in the order it was put on, whatever the order has first.
  const first = tasks.sort((a, b) => a.at - b.at).slice(0, 1 + DUES_SHOWN)
  return [...clocked, ...first].sort((a, b) => a.at - b.at)
}
