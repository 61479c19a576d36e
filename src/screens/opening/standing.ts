import { useRef, useState } from 'preact/hooks'
import type { SubjectFacts } from '../../../shared/opening.ts'
import { useOpening } from './opening-app.ts'

/** What a page asks in the order in which it was opened: nothing comes under a finger that answers another. New ones come last. */
export function useStanding<T>(asked: readonly T[], keyOf: (one: T) => string): readonly T[] {
  const order = useRef<readonly string[]>([])
  const known = order.current
  order.current = [...known, ...asked.map(keyOf).filter((key) => !known.includes(key))]
  return asked.toSorted((a, b) => order.current.indexOf(keyOf(a)) - order.current.indexOf(keyOf(b)))
}

/**
 * Whether a hand answered of a glaze or pair since the page was opened, and did not take that back: until it is opened again
 * its card says so, without a key.
 */
export function useAnswered(): (kind: 'lesson-taken' | 'limit-taken', of: SubjectFacts) => boolean {
  const { table } = useOpening()
  const [before] = useState(() => new Set(table.value.taken?.map(({ id }) => id)))
  return (kind, { bucketId, underId }) =>
    (table.value.taken ?? []).some(
      ({ id, event }) =>
        !before.has(id) && event.kind === kind && event.bucketId === bucketId && event.underId === underId,
    )
}
