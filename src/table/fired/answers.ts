import type { SubjectFacts } from '../../../shared/opening.ts'
import type { Table } from '../model/state.ts'
import type { Said } from './fired-pot.ts'

type Kind = 'lesson-taken' | 'limit-taken'

const sameSubject = (a: SubjectFacts, b: SubjectFacts): boolean =>
  a.bucketId === b.bucketId && a.underId === b.underId

/** What a hand answered last of a subject, held to the results that speak of it now. */
export interface Answer {
  /** It was of these very results. */
  readonly holds: boolean
  /** Results that it knew nothing of. */
  readonly fresh: ReadonlySet<Said>
  /** Some that it was taken from count no more. */
  readonly withdrawn: boolean
}

/** Results that count, of whatever subject and firing: by name, and how many of this subject are not asked here. */
export interface Standing {
  readonly ids: ReadonlySet<string>
  readonly more: number
}

/**
 * What was answered of a glaze, or of it over another, against what speaks of it now. A result that stands, though it is not
 * reckoned with here, as it is of another firing or of long ago, was not withdrawn.
 */
export function answerOf(
  { taken }: Table,
  kind: Kind,
  subject: SubjectFacts,
  results: readonly Said[],
  standing: Standing,
): Answer {
  const last = taken?.findLast(({ event }) => event.kind === kind && sameSubject(event, subject))
  if (last?.event.kind !== kind) return { holds: false, fresh: new Set(results), withdrawn: false }
  const { of, results: named } = last.event
  // Earlier records name none: whatever was judged by then was known.
  const known = ({ ids, at }: Said) => (named ? ids.some((id) => named.includes(id)) : at <= last.at)
  const fresh = new Set(results.filter((one) => !known(one)))
  const withdrawn = named
    ? named.some((id) => !standing.ids.has(id))
    : of > results.length - fresh.size + standing.more
  return { holds: fresh.size === 0 && !withdrawn, fresh, withdrawn }
}

/** Whose run, or thickness, was ever answered, each once. */
export const answeredOf = ({ taken = [] }: Table, kind: Kind): readonly SubjectFacts[] => [
  ...new Map(
    taken.flatMap(({ event }) =>
      event.kind === kind ? [[JSON.stringify([event.bucketId, event.underId]), event] as const] : [],
    ),
  ).values(),
]

/** Names of all results of which a hand answered something. */
export const namedIn = ({ taken = [] }: Table, kind: Kind): ReadonlySet<string> =>
  new Set(taken.flatMap(({ event }) => (event.kind === kind ? (event.results ?? []) : [])))
