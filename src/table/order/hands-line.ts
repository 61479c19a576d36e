import type { Band, Foresight } from '../../planner/types.ts'
import { potterOf } from '../model/potters.ts'
import type { Table } from '../model/state.ts'
import { type Schedule, type Task, tasksOf } from './schedule.ts'

/** What comes after the card in hand, and how the sitting ends. Times are table time, ms. */
export interface HandsLine {
  /** The next other bucket and when it is to be opened; not while hands do something else than was told. */
  readonly follows?: { readonly bucketId: string; readonly at: number }
  /** Idle time before it that is worth a word, ms. */
  readonly freeMs: number
  /** End of the last dip if all goes as likely. */
  readonly finishAt: number
  /** The same as a range: one in ten sittings ends before it, one in ten after; once it was foreseen. */
  readonly finish?: Range
  /** When the last pot is kiln-dry, as a range. */
  readonly kilnDry?: Range
  /** Room before the kiln is loaded, negative when late; undefined without an hour of the kiln. */
  readonly slackMs?: number
  /** Part of the ways this can go, 0 to 1, in which the kiln's hour is missed; once it was foreseen. */
  readonly lateOdds?: number
  /** What ten minutes more than the hands are free would cost at the end, ms; once it was foreseen. */
  readonly interruptionMs?: number
  /** When all of it would have had to start to be in time. */
  readonly latestStartAt?: number
}

/** From an early to a late moment, table time, ms. */
export interface Range {
  readonly early: number
  readonly late: number
}

/**
 * The hands line of the hands that see the table; undefined while no order of work is told. `stirs`: the bucket that the
 * card has stirred, null where it has none and the first bucket of the order is still to come.
 */
export function handsLine(
  table: Table,
  schedule: Schedule | undefined,
  now: number,
  stirs?: string | null,
): HandsLine | undefined {
  if (!schedule || schedule.plan.actions.length === 0) return undefined
  const line = tasksOf(table, schedule)
  const isAhead = (task: Task, i: number): boolean =>
    task.is === 'open' && (i > 0 || (stirs !== undefined && stirs !== task.bucketId))
  const next = isFollowed(table, line) ? line.findIndex(isAhead) : -1
  const open = line[next]
  const before = line[next - 1]
  const { plan, foresight } = schedule
  const loadS = plan.slackS === null || plan.dryAtS === null ? null : plan.dryAtS + plan.slackS
  const slackS = loadS === null ? null : foresight ? loadS - foresight.dryAtS.likely : plan.slackS
  return {
    ...(open?.is === 'open' ? { follows: { bucketId: open.bucketId, at: Math.max(now, open.startAt) } } : {}),
    freeMs: open && before ? Math.max(0, open.startAt - before.endAt) : 0,
    finishAt: (foresight?.finishS.likely ?? plan.finishS) * 1000,
    ...(foresight ? foreseen(foresight, potterOf(table)) : {}),
    ...(slackS === null ? {} : { slackMs: slackS * 1000, latestStartAt: schedule.askedAt + slackS * 1000 }),
  }
}

/** Whether the hands do what was told: a pot of their own choice is followed as long as it is the next one. */
const isFollowed = ({ picked }: Table, line: readonly Task[]): boolean =>
  picked === undefined || line.find((task) => task.is === 'dip')?.potId === picked.potId

/** A band of seconds as it is told. */
export const rangeOf = ({ lower, upper }: Pick<Band, 'lower' | 'upper'>): Range => ({
  early: lower * 1000,
  late: upper * 1000,
})

const foreseen = ({ finishS, dryAtS, lateOdds, interruptionS }: Foresight, potter: number) => ({
  finish: rangeOf(finishS),
  kilnDry: rangeOf(dryAtS),
  ...(lateOdds === null ? {} : { lateOdds }),
  interruptionMs: (interruptionS[potter] ?? 0) * 1000,
})

/** Late by so much, ms, where that is more likely than not; a minute's half is rounded away. */
export const lateness = (line: HandsLine | undefined): number =>
  line?.slackMs !== undefined && line.slackMs <= -30_000 ? -line.slackMs : 0

/** More often than this late is worth a word before it is likely: one in ten. */
const MAY_BE_LATE = 0.1

/** In how many of ten ways it is late, 1 to 5, where it is in time as likely as not; 0 where that is seldom. */
export const mayBeLate = (line: HandsLine | undefined): number =>
  line?.lateOdds !== undefined && lateness(line) === 0 && line.lateOdds > MAY_BE_LATE
    ? outOfTen(line.lateOdds)
    : 0

/** A part of all, 0 to 1, as so many in ten. */
export const outOfTen = (part: number): number => Math.round(part * 10)
