import type { FiringFacts } from '../../../shared/nouns.ts'
import type { SubjectLesson } from '../../engine/fired/flow-lesson.ts'
import { type Subject, subjectKey } from '../../engine/fired/subjects.ts'
import { endOf } from '../firing/firing.ts'
import type { Table } from '../model/state.ts'
import { countsIn, isOneCone, type PotResult } from './results.ts'
import { type Taught, taughtIn } from './taught-in.ts'

/** Where the cone of a firing falls, at the rise of another, degC; of no series -Infinity. */
const endC = (firing: FiringFacts, { riseCPerH }: FiringFacts): number =>
  endOf({ ...firing, riseCPerH })?.tempC ?? Number.NEGATIVE_INFINITY

/** Whether a firing is to a hotter cone than another; one of no series is to none. */
export const isHotter = (firing: FiringFacts, than: FiringFacts | undefined): boolean =>
  than !== undefined && endC(firing, than) > endC(than, than)

/** What results of a firing to another cone say of a subject. */
export interface SpokenElsewhere {
  readonly of: FiringFacts
  readonly taught: Taught
  readonly told: SubjectLesson
}

const ran = ({ seen }: PotResult): boolean =>
  seen !== undefined && seen.kind !== 'none' && seen.kind !== 'within'

/**
 * Subjects of which nothing is known at the planned cone, each by the results of another: the hottest that is no hotter, else
 * the coolest. Of those alone of which something was taken, or that ran where it was no hotter.
 */
export function spokenElsewhere(
  table: Table,
  results: readonly PotResult[],
  firing: FiringFacts | undefined,
  here: Taught,
  taken: readonly Subject[],
): readonly SpokenElsewhere[] {
  const known = new Set(
    here.lesson.subjects.flatMap(({ subject, results: own }) => (own.length > 0 ? [subject] : [])),
  )
  const wanted = new Set(taken.map(subjectKey))
  const others = new Map<string, PotResult[]>()
  for (const result of results) {
    const { subject, silent } = result
    if (!subject || silent || countsIn(result, firing)) continue
    const key = subjectKey(subject)
    if (!known.has(key)) others.set(key, [...(others.get(key) ?? []), result])
  }
  const taught: { readonly of: FiringFacts; readonly taught: Taught }[] = []
  return [...others].flatMap(([key, mine]): SpokenElsewhere[] => {
    const firings = mine.flatMap(({ load }) => load?.firing ?? [])
    const by = firing ?? firings[0]
    if (!by) return []
    const sorted = firings.toSorted((a, b) => endC(a, by) - endC(b, by))
    const cooler = sorted.findLast((one) => !isHotter(one, firing))
    const of = cooler ?? sorted[0]
    if (!of) return []
    const warns = cooler !== undefined && mine.some((one) => ran(one) && countsIn(one, of))
    if (!warns && !wanted.has(key)) return []
    let so = taught.find((one) => isOneCone(one.of, of))
    if (!so) {
      so = { of, taught: taughtIn(table, results, of, []) }
      taught.push(so)
    }
    const told = so.taught.lesson.subjects.find(({ subject }) => subject === key)
    return told ? [{ ...so, told }] : []
  })
}
