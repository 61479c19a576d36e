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
import { likelihood } from '../../engine/fired/lesson-solver.ts'
import { leadsTo } from '../../engine/fired/proven.ts'
import { type Subject, subjectKey } from '../../engine/fired/subjects.ts'
import { UNTRIED_PAIR } from '../../engine/fired/tile-value.ts'
import { Z90 } from '../../engine/numeric/spread.ts'
import { firingOf } from '../firing/firing.ts'
import { flowOf, hasTile, toldFlowOf } from '../firing/glaze-flow.ts'
import { coatsOn } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { lessonOf } from '../model/taken.ts'
import { answeredOf, answerOf } from './answers.ts'
import { countsIn, onShelf, type PotResult, resultsOf } from './results.ts'

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
  /** What is reckoned with now: 1 and the tiles' own band, or as it was taken. */
  readonly used: number
  readonly usedLow: number
  readonly usedHigh: number
  /** A hand took something of it that stands. */
  readonly taken: boolean
  /** The longest drip of these results, so many times as far as its front, and what is reckoned with. */
  readonly drip: number | undefined
  readonly usedDrip: number
  /** What the tiles say of it; undefined without one. */
  readonly tileDrip: number | undefined
  /**
   * Where it leads from what is reckoned with: told by results of its own that nobody answered, or as those it was taken
   * from count no more. Danger shows at once; relief waits for a hand.
   */
  readonly leads: 'danger' | 'relief' | 'same'
  /** Where it leads whatever was answered, while results of its own say so: an answer can be changed into the other. */
  readonly still: 'danger' | 'relief' | 'same'
  /** Where its front leads, whatever its drips do. */
  readonly way: 'danger' | 'relief' | 'same'
  /** Those that say more than is reckoned with, and whose drips came farther, whatever was answered. */
  readonly against: readonly PotResult[]
  readonly drips: readonly PotResult[]
  /** Those that nobody answered and that say more than is reckoned with. */
  readonly more: readonly PotResult[]
  /** Those that nobody answered and whose drips came farther than is reckoned with. */
  readonly dripped: readonly PotResult[]
  /** Those that nobody answered and that reached the shelf, whatever the others say. */
  readonly shelved: readonly PotResult[]
  /** Results that it was taken from count no more. */
  readonly withdrawn: boolean
  /** A hand is to say whether it is used. */
  readonly asks: boolean
  /** Fills of its bucket differ too much: a scratch through a fresh coat comes first. */
  readonly scratchFirst: boolean
}

/** A drip longer by so much than is reckoned with is news. Our choice, as for the front. */
const MORE_DRIP = 1.2

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

/** How much likelier a result is with one ln factor than with another: below this it says nothing. Our choice. */
const SAYS = 1.05
const says = ({ lnK, heat }: PotResult, ln: number, than: number): boolean =>
  lnK !== undefined &&
  heat !== undefined &&
  likelihood(lnK, ln + heat.mean) > SAYS * likelihood(lnK, than + heat.mean)

/** What results say of a subject; nothing where none speaks of it and nothing of it was ever taken. */
function toldOf(
  table: Table,
  firing: FiringFacts | undefined,
  { results, subjects }: Taught,
  told: SubjectLesson,
): FactorTold[] {
  const subject = subjects.get(told.subject)
  if (!subject) return []
  const facts = factsOf(subject)
  const lesson = lessonOf(table, facts)
  if (told.results.length === 0 && !lesson) return []
  const mine = results.filter(({ shares }) => shares.some((one) => subjectKey(one.subject) === told.subject))
  const ids = new Set(told.results)
  const behind = mine.filter(({ found }) => ids.has(found.id))
  const flow = toldFlowOf(table, subject.over, subject.under, firing)
  // As it is planned: a pair without a tile goes by its upper glaze, and by more where that alone runs farther.
  const now = flowOf(table, subject.over, subject.under) ?? flow
  const used = lesson?.factor ?? (now && flow ? now.likelyPerMm / flow.likelyPerMm : 1)
  const { likely, low, high } = told.factor
  const [lnUsed, ln] = [Math.log(used), Math.log(likely)]
  const { fresh, withdrawn, holds } = answerOf(
    table,
    'lesson-taken',
    facts,
    behind.map(({ found: { id, saidAt } }) => ({ id, at: saidAt })),
  )
  const anew = behind.filter(({ found }) => fresh.includes(found.id))
  const way = leadsTo(lnUsed, { low: Math.log(low), likely: ln, high: Math.log(high) })
  // What other glazes of the studio ran is no word against this one: one of its own has to say it.
  const say = behind.filter((one) => says(one, ln, lnUsed))
  const moved = say.filter((one) => anew.includes(one))
  const drip = Math.max(0, ...behind.flatMap((one) => one.drip ?? []))
  const usedDrip = lesson?.drip ?? now?.dripFactor ?? drip
  const drips = behind.filter((one) => (one.drip ?? 0) > MORE_DRIP * usedDrip)
  const dripped = drips.filter((one) => anew.includes(one))
  const against = way === 'danger' ? say : []
  const more = way === 'danger' ? moved : []
  const shelved = anew.filter(({ found }) => onShelf(found.run))
  const gone = withdrawn && lesson !== undefined
  const front = say.length > 0 || gone ? way : 'same'
  const leads = dripped.length > 0 ? 'danger' : way !== 'same' && (moved.length > 0 || gone) ? way : 'same'
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
      usedLow: lesson?.low ?? (now && flow ? now.lowPerMm / flow.likelyPerMm : low),
      usedHigh: lesson?.high ?? (now && flow ? now.highPerMm / flow.likelyPerMm : high),
      taken: lesson !== undefined,
      drip: drip > 0 ? drip : undefined,
      usedDrip,
      tileDrip: flow?.dripFactor,
      leads,
      way: front,
      still: drips.length > 0 ? 'danger' : front,
      against,
      drips,
      more,
      dripped,
      shelved,
      withdrawn: gone,
      asks: !holds && (leads !== 'same' || shelved.length > 0),
      scratchFirst: told.fillsDiffer,
    },
  ]
}

/** Subjects of which a hand took something: what is reckoned with can be seen and undone, whatever speaks of it now. */
const takenOf = (table: Table): readonly Subject[] =>
  answeredOf(table, 'lesson-taken').map(({ bucketId, underId }) => ({
    under: underId ?? null,
    over: bucketId,
  }))

/** What the results so far say of each glaze and pair in the firing to come, of those with results or with a lesson taken. */
export function factorsOf(table: Table): readonly FactorTold[] {
  const firing = firingOf(table)
  const results = resultsOf(table)
  const fills = Object.values(table.buckets).map(
    ({ log }) => log.findLast(({ what }) => what === 'filled')?.at,
  )
  const of = [firing, table.taken, ...fills, ...results]
  const before = kept.get(table.tiles)
  if (before?.of.length === of.length && before.of.every((one, i) => one === of[i])) return before.factors
  const taught = taughtIn(table, results, firing, takenOf(table))
  const factors = taught.lesson.subjects.flatMap((told) => toldOf(table, firing, taught, told))
  kept.set(table.tiles, { of, factors })
  return factors
}

/**
 * The lesson of one subject in a firing from what was judged before a moment (table time, ms), its tiles alone where no
 * result speaks of it; undefined without a tile.
 */
export function lessonIn(
  table: Table,
  subject: Subject,
  firing: FiringFacts | undefined,
  before = Number.POSITIVE_INFINITY,
): SubjectLesson | undefined {
  const results = resultsOf(table).filter(({ found }) => found.saidAt < before)
  const { lesson } = taughtIn(table, results, firing, [subject])
  return lesson.subjects.find((one) => one.subject === subjectKey(subject))
}
