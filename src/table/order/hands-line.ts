import { viewOf } from '../model/potters.ts'
import type { Table } from '../model/state.ts'
import { type Schedule, tasksOf } from './schedule.ts'

/** What comes after the card in hand, and how the sitting ends. Times are table time, ms. */
export interface HandsLine {
  /** The next other bucket and when it is to be opened. */
  readonly follows?: { readonly bucketId: string; readonly at: number }
  /** Idle time before it that is worth a word, ms. */
  readonly freeMs: number
  /** End of the last dip. */
  readonly finishAt: number
  /** Room before the kiln is loaded, negative when late; undefined without an hour of the kiln. */
  readonly slackMs?: number
  /** When all of it would have had to start to be in time. */
  readonly latestStartAt?: number
}

/** The hands line of the hands that see the table; undefined while no order of work is told. */
export function handsLine(table: Table, schedule: Schedule | undefined, now: number): HandsLine | undefined {
  if (!schedule || schedule.plan.actions.length === 0) return undefined
  const line = tasksOf(table, schedule)
  const next = line.findIndex((task, i) => i > 0 && task.is === 'open')
  const open = next > 0 ? line[next] : undefined
  const before = next > 0 ? line[next - 1] : undefined
  const { finishS, slackS } = schedule.plan
  return {
    ...(open?.is === 'open' ? { follows: { bucketId: open.bucketId, at: Math.max(now, open.startAt) } } : {}),
    freeMs: open && before ? Math.max(0, open.startAt - before.endAt) : 0,
    finishAt: finishS * 1000,
    ...(slackS === null ? {} : { slackMs: slackS * 1000, latestStartAt: schedule.askedAt + slackS * 1000 }),
  }
}

/** The table as the hands see it whose card does not show. */
export const otherPottersView = (table: Table): Table => viewOf(table, table.potter === 1 ? 0 : 1)

/** Late by so much, ms; a minute's half is rounded away. */
export const lateness = (line: HandsLine | undefined): number =>
  line?.slackMs !== undefined && line.slackMs <= -30_000 ? -line.slackMs : 0
