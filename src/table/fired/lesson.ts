import type { FiringFacts } from '../../../shared/nouns.ts'
import type { SubjectFacts } from '../../../shared/opening.ts'
import {
  type Factor,
  type FlowLesson,
  flowLesson,
  type HeatSeen,
  type SubjectLesson,
  type SubjectStart,
  type TaughtResult,
} from '../../engine/fired/flow-lesson.ts'
import { leadsTo } from '../../engine/fired/proven.ts'
import { type Subject, subjectKey } from '../../engine/fired/subjects.ts'
import { UNTRIED_PAIR } from '../../engine/fired/tile-value.ts'
import { Z90 } from '../../engine/numeric/spread.ts'
import { firingOf } from '../firing/firing.ts'
import { hasTile, toldFlowOf } from '../firing/glaze-flow.ts'
import { coatsOn } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { lessonOf } from '../model/taken.ts'
import { countsIn, type PotResult, resultsOf } from './results.ts'

/** What results say of one glaze, or of it over another: "3 results: B over G runs 1.3 times told (1.0 to 1.6)". */
export interface FactorTold extends SubjectFacts {
  readonly key: string
  readonly factor: Factor
  readonly lnMean: number
  readonly lnSd: number
  /** The pots behind it, the latest last. */
  readonly results: readonly PotResult[]
  /** Pots with it that don't count: left out, another could have done it, fired to another cone. */
  readonly others: readonly PotResult[]
  /** What is reckoned with now: 1, or as it was taken. */
  readonly used: number
  /** Danger shows at once until it is answered; relief waits for a hand. Answered is what was taken, or refused, since. */
  readonly leads: 'danger' | 'relief' | 'same'
  readonly answered: boolean
  /** Fills of its bucket differ too much: a scratch through a fresh coat comes first. */
  readonly scratchFirst: boolean
}

const factsOf = ({ under, over }: Subject): SubjectFacts =>
  under === null ? { bucketId: over } : { bucketId: over, underId: under }

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

interface Taught {
  readonly results: readonly PotResult[]
  readonly subjects: ReadonlyMap<string, Subject>
  readonly lesson: FlowLesson
}

function taughtIn(
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

interface Kept {
  readonly of: readonly unknown[]
  readonly factors: readonly FactorTold[]
}
/** By the tiles: what else it hangs on is compared. Pots and buckets change with every hit, results seldom. */
const kept = new WeakMap<Table['tiles'], Kept>()

function toldOf(
  table: Table,
  firing: FiringFacts | undefined,
  { results, subjects }: Taught,
  told: SubjectLesson,
): FactorTold[] {
  const subject = subjects.get(told.subject)
  if (!subject || told.results.length === 0) return []
  const mine = results.filter(({ shares }) => shares.some((one) => subjectKey(one.subject) === told.subject))
  const ids = new Set(told.results)
  const behind = mine.filter(({ found }) => ids.has(found.id))
  const facts = factsOf(subject)
  const used = lessonOf(table, facts)?.factor ?? 1
  const last = behind.at(-1)
  const since = table.taken?.findLast(
    ({ event }) =>
      event.kind === 'lesson-taken' && event.bucketId === facts.bucketId && event.underId === facts.underId,
  )
  return [
    {
      ...facts,
      key: told.subject,
      factor: told.factor,
      lnMean: told.lnMean,
      lnSd: told.lnSd,
      results: behind,
      others: mine.filter((result) => !ids.has(result.found.id) || !countsIn(result, firing)),
      used,
      leads: leadsTo(Math.log(used), Math.log(told.factor.likely)),
      answered: since !== undefined && last !== undefined && since.at >= last.found.at,
      scratchFirst: told.fillsDiffer,
    },
  ]
}

/** What the results so far say of each glaze and pair in the firing to come, those with results alone. */
export function factorsOf(table: Table): readonly FactorTold[] {
  const firing = firingOf(table)
  const results = resultsOf(table)
  const fills = Object.values(table.buckets).map(
    ({ log }) => log.findLast(({ what }) => what === 'filled')?.at,
  )
  const of = [firing, table.taken, ...fills, ...results]
  const before = kept.get(table.tiles)
  if (before?.of.length === of.length && before.of.every((one, i) => one === of[i])) return before.factors
  const taught = taughtIn(table, results, firing, [])
  const factors = taught.lesson.subjects.flatMap((told) => toldOf(table, firing, taught, told))
  kept.set(table.tiles, { of, factors })
  return factors
}

/** The lesson of one subject in a firing, its tiles alone where no result speaks of it; undefined without a tile. */
export function lessonIn(
  table: Table,
  subject: Subject,
  firing: FiringFacts | undefined,
): SubjectLesson | undefined {
  const { lesson } = taughtIn(table, resultsOf(table), firing, [subject])
  return lesson.subjects.find((one) => one.subject === subjectKey(subject))
}

/** What a hand would take by USE IT, as the action says it. */
export const takes = ({ bucketId, underId, factor, results }: FactorTold) => ({
  do: 'take-lesson' as const,
  bucketId,
  ...(underId === undefined ? {} : { underId }),
  factor: factor.likely,
  low: factor.low,
  high: factor.high,
  of: results.length,
})
