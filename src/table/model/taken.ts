import type { SubjectFacts } from '../../../shared/opening.ts'
import type { Table } from './state.ts'

/** A lesson that the person took: the melt runs so many times as told, 10th to 90th percentile. */
export interface TakenLesson {
  readonly factor: number
  readonly low: number
  readonly high: number
  /** From so many results. */
  readonly of: number
  /** Its longest drip so many times as far as the front; left out where tiles alone tell it. */
  readonly drip?: number
  readonly at: number
}

/** The lesson that stands of a glaze, or of it over another; undefined where none was taken, or it is as told again. */
export function lessonOf({ taken }: Table, { bucketId, underId }: SubjectFacts): TakenLesson | undefined {
  const last = taken?.findLast(
    ({ event }) => event.kind === 'lesson-taken' && event.bucketId === bucketId && event.underId === underId,
  )
  if (last?.event.kind !== 'lesson-taken' || last.event.of === 0) return undefined
  const { factor, low, high, of, drip } = last.event
  return { factor, low, high, of, at: last.at, ...(drip === undefined ? {} : { drip }) }
}

/**
 * The dry coat from which a glaze crawls, or where it lies on another both together, as the person took it, mm; undefined
 * where the limit that was set stands.
 */
export function limitOf({ taken }: Table, { bucketId, underId }: SubjectFacts): number | undefined {
  const last = taken?.findLast(
    ({ event }) => event.kind === 'limit-taken' && event.bucketId === bucketId && event.underId === underId,
  )
  return last?.event.kind === 'limit-taken' && last.event.of > 0 ? last.event.limitMm : undefined
}

/** Pairs of which a limit was taken, and stands. */
export const pairLimits = (table: Table): readonly { over: string; under: string; limitMm: number }[] => {
  const pairs = new Map<string, { over: string; under: string; limitMm: number }>()
  for (const { event } of table.taken ?? [])
    if (event.kind === 'limit-taken' && event.underId !== undefined) {
      const limitMm = limitOf(table, event)
      const key = JSON.stringify([event.bucketId, event.underId])
      if (limitMm === undefined) pairs.delete(key)
      else pairs.set(key, { over: event.bucketId, under: event.underId, limitMm })
    }
  return [...pairs.values()]
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
