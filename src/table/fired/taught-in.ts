import type { FiringFacts } from '../../../shared/nouns.ts'
import {
  type FlowLesson,
  flowLesson,
  type HeatSeen,
  type SubjectStart,
  type TaughtResult,
} from '../../engine/fired/flow-lesson.ts'
import { type Subject, subjectKey } from '../../engine/fired/subjects.ts'
import { UNTRIED_PAIR } from '../../engine/fired/tile-value.ts'
import { Z90 } from '../../engine/numeric/spread.ts'
import { hasTile, toldFlowOf } from '../firing/glaze-flow.ts'
import { coatsOn } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { countsIn, type PotResult } from './results.ts'

/** What is known of a subject before any result: its tiles' own band. */
function startOf(table: Table, subject: Subject, firing: FiringFacts | undefined): SubjectStart | undefined {
  const key = subjectKey(subject)
  const told = toldFlowOf(table, subject.over, subject.under, firing)
  if (!told) return undefined
  if (subject.under !== null && !hasTile(table, subject.over, subject.under))
    return { subject: key, ...UNTRIED_PAIR }
  return { subject: key, mean: 0, sd: Math.max(0.05, Math.log(told.highPerMm / told.lowPerMm) / (2 * Z90)) }
}

/** Before or after the bucket was filled anew: earlier fills are not kept apart. */
function fillOf(table: Table, { pot }: PotResult, bucketId: string): string {
  const since = table.buckets[bucketId]?.log.findLast(({ what }) => what === 'filled')?.at ?? 0
  const dip = coatsOn(pot).find((one) => one.bucketId === bucketId)
  return dip !== undefined && dip.outAt >= since ? 'this' : 'before'
}

/** What results teach in a firing, of each subject that any of them speaks of. */
export interface Taught {
  readonly results: readonly PotResult[]
  readonly subjects: ReadonlyMap<string, Subject>
  readonly lesson: FlowLesson
}

/** What results say together of a firing: those of that cone count, and the subjects in `more` are told of as well. */
export function taughtIn(
  table: Table,
  results: readonly PotResult[],
  firing: FiringFacts | undefined,
  more: readonly Subject[],
): Taught {
  const counted = results.filter((result) => countsIn(result, firing))
  const subjects = new Map<string, Subject>()
  for (const subject of [...counted.flatMap((result) => result.subject ?? []), ...more])
    subjects.set(subjectKey(subject), subject)
  const starts = [...subjects.values()].flatMap((subject) => startOf(table, subject, firing) ?? [])
  const heats = new Map<string, HeatSeen>()
  const taught = counted.flatMap((result): TaughtResult[] => {
    const { found, heat, subject, lnK } = result
    const key = subject && subjectKey(subject)
    if (!heat || !subject || !lnK || !starts.some((start) => start.subject === key)) return []
    heats.set(heat.key, { heat: heat.key, mean: heat.mean, sd: heat.sd })
    return [
      {
        id: found.id,
        subject: subjectKey(subject),
        heat: heat.key,
        fill: fillOf(table, result, subject.over),
        lnK,
      },
    ]
  })
  return { results, subjects, lesson: flowLesson(taught, starts, [...heats.values()]) }
}
