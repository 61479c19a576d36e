/** Stirs that the order of work has earlier than these hands need them: glaze settles from its stir on. */

import { isFresh } from '../model/fresh.ts'
import type { Table } from '../model/state.ts'
import { paceOf } from '../order/pace.ts'
import type { Task } from '../order/schedule.ts'
import { dueAt, mayBeDipped, WIPE_DRIES_MS } from '../steps/steps.ts'
import type { AtStep } from '../steps/work.ts'
import { REACH_MS, stepIn } from './kept.ts'

/** Part of the time a stir is good for in which no other is asked for. Our choice. */
const YOUNG_PART = 0.5
/** A pot is wiped in less. Assumption. */
export const WIPE_MS = 30_000

type Stir = Task & { readonly is: 'open' | 'restir' }

const isPrep = ({ is }: Task): boolean => is === 'wax' || is === 'wipe'

/** What is left of the order, but for a first stir that can wait, or that the last one makes needless. */
export function withoutHaste(
  table: Table,
  steps: readonly AtStep[],
  line: readonly Task[],
  now: number,
): readonly Task[] {
  const [task, ...after] = line
  if (task?.is !== 'open' && task?.is !== 'restir') return line
  // An opening that was told before the bucket was open is a stir by now.
  if (!task.decant && isNeedless(table, steps, task, after, now)) return after
  return afterPrep(task, after, now)
}

/**
 * Whether the last stir does: right before a dip that it is good for, right after it, or while it is good for the next
 * dip and none was made on it. Whoever was quick at a stir is asked again when the dip is near, and once.
 */
function isNeedless(
  table: Table,
  steps: readonly AtStep[],
  { bucketId }: Stir,
  after: readonly Task[],
  now: number,
): boolean {
  if (!isFresh(table, bucketId, now)) return false
  const stirredAt = table.buckets[bucketId]?.stirredAt ?? Number.NEGATIVE_INFINITY
  if (now - stirredAt < table.settings.staleMin * 60_000 * YOUNG_PART) return true
  const [next] = after
  const here = next?.is === 'dip' && next.bucketId === bucketId ? stepIn(steps, next.potId) : undefined
  if (here && mayBeDipped(here.step, now)) return isFresh(table, bucketId, now + REACH_MS)
  const isUsed = (table.usedAt ?? Number.NEGATIVE_INFINITY) > stirredAt
  const dipAt = isUsed ? undefined : dipsAt(steps, after, bucketId, now)
  return dipAt !== undefined && isFresh(table, bucketId, dipAt + Math.max(0, paceOf(table).laterS) * 1000)
}

/** When the next dip into a bucket can come without a stir before it, wax and wipes first; undefined where unknown. */
function dipsAt(
  steps: readonly AtStep[],
  line: readonly Task[],
  bucketId: string,
  now: number,
): number | undefined {
  const place = line.findIndex((task) => task.is === 'dip')
  const dip = line[place]
  if (dip?.is !== 'dip' || dip.bucketId !== bucketId) return undefined
  const step = stepIn(steps, dip.potId)?.step
  if (!step || step.is === 'wax') return undefined
  const prepMs = line.slice(0, place).filter(isPrep).length * WIPE_MS
  const dueMs = Number.isFinite(dueAt(step)) ? dueAt(step) : now
  const wipedMs = step.is === 'wax-sets' || step.is === 'wipe' ? WIPE_DRIES_MS + WIPE_MS : 0
  return Math.max(now + prepMs, dueMs + wipedMs)
}

/**
 * Waxing and wiping that come before the dip of a stir go before the stir as well, until it is due by that dip: hands that
 * are quicker than the order thought would else have a stir that is old by their first dip.
 */
function afterPrep(stir: Stir, after: readonly Task[], now: number): readonly Task[] {
  const place = after.findIndex((task) => !isPrep(task))
  const dip = after[place]
  if (place < 1 || dip?.is !== 'dip' || dip.bucketId !== stir.bucketId) return [stir, ...after]
  const startAt = Math.max(stir.startAt, dip.startAt - (stir.endAt - stir.startAt))
  const late: Task = { ...stir, startAt, endAt: dip.startAt, reason: 'inWait' }
  return now < startAt ? [...after.slice(0, place), late, ...after.slice(place)] : [late, ...after]
}
