import type { Potter } from '../model/potters.ts'
import { viewOf } from '../model/potters.ts'
import type { Table } from '../model/state.ts'
import { type Schedule, tasksOf } from './schedule.ts'

/** A pair of hands with something due: what they had done by then, and when the next should have been done. */
export interface Owing {
  readonly done: string
  /** Table time, ms. */
  readonly dueAt: number
}

/** Of two pairs of hands; undefined where nothing is due. */
export type Owings = readonly (Owing | undefined)[]

/** Slower than this may be gone: the other hands needn't wait for their bucket. Assumption. */
const PATIENCE_MS = 5 * 60_000

/** What a pair of hands has done, as far as it tells one moment from another. */
function doneBy(table: Table, potter: Potter): string {
  const { openBucket } = viewOf(table, potter)
  const stirredAt = openBucket === undefined ? '' : table.buckets[openBucket]?.stirredAt
  const dips = Object.values(table.pots).flatMap((pot) =>
    pot.dips.filter((dip) => (dip.hands ?? 0) === potter),
  )
  return `${openBucket} ${stirredAt} ${dips.length}`
}

/** Who has something due by what was told, and from when; `before` as it was found the last time. */
export function owingOf(table: Table, schedule: Schedule | undefined, now: number, before: Owings): Owings {
  if (!schedule || table.settings.potters < 2) return []
  return ([0, 1] as const).map((potter) => {
    const [task] = tasksOf(viewOf(table, potter), schedule)
    if (!task || task.startAt - (schedule.awayMs[potter] ?? 0) > now) return undefined
    const done = doneBy(table, potter)
    const was = before[potter]
    return was?.done === done ? was : { done, dueAt: now + task.endAt - task.startAt }
  })
}

/**
 * How much longer each pair of hands will be away, ms: as long as they have been by now, so that what they leave
 * undone goes to the others sooner or later, and comes back with their next hit.
 */
export const awayOf = (owings: Owings, now: number): readonly number[] =>
  owings.map((owing) => (owing && now - owing.dueAt > PATIENCE_MS ? now - owing.dueAt : 0))
