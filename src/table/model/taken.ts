import type { SubjectFacts } from '../../../shared/opening.ts'
import type { Table } from './state.ts'

/** A lesson that the person took: the melt runs so many times as told, 10th to 90th percentile. */
export interface TakenLesson {
  readonly factor: number
  readonly low: number
  readonly high: number
  /** From so many results. */
  readonly of: number
  readonly at: number
}

/** The lesson that stands of a glaze, or of it over another; undefined where none was taken, or it is as told again. */
export function lessonOf({ taken }: Table, { bucketId, underId }: SubjectFacts): TakenLesson | undefined {
  const last = taken?.findLast(
    ({ event }) => event.kind === 'lesson-taken' && event.bucketId === bucketId && event.underId === underId,
  )
  if (last?.event.kind !== 'lesson-taken' || last.event.of === 0) return undefined
  const { factor, low, high, of } = last.event
  return { factor, low, high, of, at: last.at }
}

/** The dry coat from which a glaze crawls, as the person took it, mm; undefined where the bucket's own limit stands. */
export function limitOf({ taken }: Table, bucketId: string): number | undefined {
  const last = taken?.findLast(({ event }) => event.kind === 'limit-taken' && event.bucketId === bucketId)
  return last?.event.kind === 'limit-taken' && last.event.of > 0 ? last.event.limitMm : undefined
}

/** When the room changed last, table time, ms; undefined where it never did, or each change was taken as none. */
export function roomChangedAt({ taken = [] }: Table): number | undefined {
  const changes: number[] = []
  for (const { event, at } of taken)
    if (event.kind === 'room-changed') {
      if (event.changed) changes.push(at)
      else changes.pop()
    }
  return changes.at(-1)
}
