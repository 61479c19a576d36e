import type { SubjectFacts } from '../../../shared/opening.ts'
import type { Table } from '../model/state.ts'

type Kind = 'lesson-taken' | 'limit-taken'

const sameSubject = (a: SubjectFacts, b: SubjectFacts): boolean =>
  a.bucketId === b.bucketId && a.underId === b.underId

/** What a hand answered last of a subject, held to the results that speak of it now. */
export interface Answer {
  /** It was of these very results. */
  readonly holds: boolean
  /** Results that it knew nothing of. */
  readonly fresh: readonly string[]
  /** Some that it was taken from count no more. */
  readonly withdrawn: boolean
}

/** A result as it can be answered: its name, and when it was said, table time, ms. */
interface Result {
  readonly id: string
  readonly at: number
}

/** What was answered of a glaze, or of it over another, against what speaks of it now. */
export function answerOf(
  { taken }: Table,
  kind: Kind,
  subject: SubjectFacts,
  results: readonly Result[],
): Answer {
  const last = taken?.findLast(({ event }) => event.kind === kind && sameSubject(event, subject))
  const ids = results.map(({ id }) => id)
  if (last?.event.kind !== kind) return { holds: false, fresh: ids, withdrawn: false }
  const { of, results: named } = last.event
  // Earlier records name none: whatever was judged by then was known.
  const known = named ?? results.flatMap(({ id, at }) => (at <= last.at ? [id] : []))
  const fresh = ids.filter((id) => !known.includes(id))
  const withdrawn = named ? named.some((id) => !ids.includes(id)) : of > known.length
  return { holds: fresh.length === 0 && !withdrawn, fresh, withdrawn }
}

/** Whose run, or thickness, was ever answered, each once. */
export const answeredOf = ({ taken = [] }: Table, kind: Kind): readonly SubjectFacts[] => [
  ...new Map(
    taken.flatMap(({ event }) =>
      event.kind === kind ? [[JSON.stringify([event.bucketId, event.underId]), event] as const] : [],
    ),
  ).values(),
]
