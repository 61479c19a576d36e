import type { FiringFacts } from '../../../shared/nouns.ts'
import type { SubjectFacts } from '../../../shared/opening.ts'
import type { Factor, SubjectLesson } from '../../engine/fired/flow-lesson.ts'
import { likelihood } from '../../engine/fired/lesson-solver.ts'
import { leadsTo } from '../../engine/fired/proven.ts'
import { type Subject, subjectKey } from '../../engine/fired/subjects.ts'
import type { FlowDose } from '../../engine/melt/flow-tile.ts'
import { firingOf } from '../firing/firing.ts'
import { flowOf, hasTile, toldFlowOf } from '../firing/glaze-flow.ts'
import { coatsOn } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { lessonOf } from '../model/taken.ts'
import { answeredOf, answerOf, namedIn } from './answers.ts'
import { isHotter, spokenElsewhere } from './other-cones.ts'
import {
  countsIn,
  type JudgedPot,
  maySpeak,
  onShelf,
  type PotResult,
  reckonedOf,
  resultOf,
  resultsOf,
} from './results.ts'
import { type Taught, taughtIn } from './taught-in.ts'

/** What results say of one glaze, or of it over another: "3 results: B over G runs 1.3 times told (1.0 to 1.6)". */
export interface FactorTold extends SubjectFacts {
  readonly key: string
  readonly factor: Factor
  readonly lnMean: number
  readonly lnSd: number
  /** The cone that these results were fired to, where nothing speaks of the planned one: its dangers hold for hotter ones. */
  readonly cone: string | undefined
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
  /**
   * Those that nobody answered and that reached the shelf, whatever the others say: long ago as well, and to cones no hotter
   * than the planned one.
   */
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

/** What is known besides the results of one firing. */
interface Beside {
  /** The firing to come. */
  readonly firing: FiringFacts | undefined
  /** That which the results are of, where it is to another cone. */
  readonly of: FiringFacts | undefined
  /** Names of all results that stand. */
  readonly standing: ReadonlySet<string>
  /** Pots on the shelf that nobody answered, of long ago or to other cones. */
  readonly shelved: readonly PotResult[]
  /** How many pots with a glaze are no longer reckoned with. */
  readonly olderWith: (bucketId: string) => number
}

/** What is reckoned with of a subject. */
interface Reckoned {
  /** So many times what its tiles say. */
  readonly used: number
  /** Whose band that is. */
  readonly dose: FlowDose | null
  /** No lesson brings it below this. */
  readonly least: number
}

/**
 * As it is planned, where tiles say `flow` and a hand took a factor. A melt runs by the runniest coat of a stretch: of a pair
 * without a tile the glaze below is the least, whatever its own lesson says.
 */
function reckonedBy(table: Table, { over, under }: Subject, flow: FlowDose | null, taken?: number): Reckoned {
  const dose = flowOf(table, over, under) ?? flow
  const times = (one: FlowDose | null): number => (one && flow ? one.likelyPerMm / flow.likelyPerMm : 1)
  const used = taken ?? times(dose)
  const below = under === null || hasTile(table, over, under) ? null : flowOf(table, under, null)
  const least = below && flow ? times(below) : 0
  return least > used ? { used: least, dose: below, least } : { used, dose, least }
}

/** What results say of a subject; nothing where none speaks of it and nothing of it was ever taken. */
function toldOf(
  table: Table,
  { results, subjects }: Taught,
  told: SubjectLesson,
  { firing, of, standing, shelved: others, olderWith }: Beside,
): FactorTold[] {
  const subject = subjects.get(told.subject)
  if (!subject) return []
  const facts = factsOf(subject)
  const lesson = lessonOf(table, facts)
  const mine = results.filter(({ shares }) => shares.some((one) => subjectKey(one.subject) === told.subject))
  const ids = new Set(told.results)
  const behind = mine.filter(({ found }) => ids.has(found.id))
  // What ran less to another cone, or more to a hotter one, says nothing sure of this one.
  const here = of === undefined
  const warns = here || !isHotter(of, firing)
  const beside = others.filter(
    (one) => one.subject !== undefined && subjectKey(one.subject) === told.subject && !behind.includes(one),
  )
  if (behind.length + beside.length === 0 && !lesson) return []
  const flow = toldFlowOf(table, subject.over, subject.under, firing)
  const { used, dose: now, least } = reckonedBy(table, subject, flow, lesson?.factor)
  const own = lesson?.factor === used ? lesson : undefined
  const atLeast = (ln: number): number => Math.max(Math.log(least), ln)
  const { likely, low, high } = told.factor
  const [lnUsed, ln] = [Math.log(used), atLeast(Math.log(likely))]
  const { fresh, withdrawn, holds } = answerOf(
    table,
    'lesson-taken',
    facts,
    [...behind, ...beside].map(({ found }) => found.runSaid),
    {
      ids: standing,
      more: olderWith(subject.over) + mine.filter((one) => !one.silent && !ids.has(one.found.id)).length,
    },
  )
  const isAnew = ({ found }: PotResult): boolean => fresh.has(found.runSaid)
  const led = leadsTo(lnUsed, { low: atLeast(Math.log(low)), likely: ln, high: atLeast(Math.log(high)) })
  const way = here || (led === 'danger' && warns) ? led : 'same'
  // What other glazes of the studio ran is no word against this one: one of its own has to say it.
  const say = behind.filter((one) => says(one, ln, lnUsed))
  const moved = say.filter(isAnew)
  const drip = Math.max(0, ...behind.flatMap((one) => one.drip ?? []))
  const usedDrip = lesson?.drip ?? now?.dripFactor ?? drip
  const drips = warns ? behind.filter((one) => (one.drip ?? 0) > MORE_DRIP * usedDrip) : []
  const dripped = drips.filter(isAnew)
  const against = way === 'danger' ? say : []
  const more = way === 'danger' ? moved : []
  const shelved = [...(warns ? behind : []), ...beside].filter((one) => isAnew(one) && onShelf(one.found.run))
  const gone = withdrawn && lesson !== undefined
  const front = say.length > 0 || gone ? way : 'same'
  const leads = dripped.length > 0 ? 'danger' : way !== 'same' && (moved.length > 0 || gone) ? way : 'same'
  const still = drips.length > 0 ? 'danger' : front
  if (!here && !lesson && still === 'same' && shelved.length === 0) return []
  return [
    {
      ...facts,
      key: told.subject,
      factor: told.factor,
      lnMean: told.lnMean,
      lnSd: told.lnSd,
      cone: of?.cone,
      results: behind,
      others: mine.filter((result) => !ids.has(result.found.id) || !countsIn(result, of ?? firing)),
      used,
      usedLow: own?.low ?? (now && flow ? now.lowPerMm / flow.likelyPerMm : low),
      usedHigh: own?.high ?? (now && flow ? now.highPerMm / flow.likelyPerMm : high),
      taken: lesson !== undefined,
      drip: drip > 0 ? drip : undefined,
      usedDrip,
      tileDrip: flow?.dripFactor,
      leads,
      way: front,
      still,
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

/**
 * What the results so far say of each glaze and pair in the firing to come, of those with results or with a lesson taken. Where
 * none is to its cone those to the next cooler one warn, and those to any other stand behind what was taken.
 */
export function factorsOf(table: Table): readonly FactorTold[] {
  const firing = firingOf(table)
  const { results, older } = reckonedOf(table)
  const fills = Object.values(table.buckets).map(
    ({ log }) => log.findLast(({ what }) => what === 'filled')?.at,
  )
  const of = [firing, table.taken, ...fills, ...results, null, ...older]
  const before = kept.get(table.tiles)
  if (before?.of.length === of.length && before.of.every((one, i) => one === of[i])) return before.factors
  const answered = namedIn(table, 'lesson-taken')
  const isSaid = ({ found }: JudgedPot): boolean =>
    onShelf(found.run) && !found.runSaid.ids.some((id) => answered.has(id))
  const shelved = [
    ...older.filter(isSaid).map((one) => resultOf(table, one)),
    ...results.filter((one) => isSaid(one) && !countsIn(one, firing)),
  ].filter(({ silent, load }) => silent === undefined && load && !isHotter(load.firing, firing))
  const beside = {
    firing,
    of: undefined,
    standing: new Set([...results, ...older].flatMap((one) => (maySpeak(one) ? one.found.runSaid.ids : []))),
    shelved,
    olderWith: (bucketId: string) =>
      older.filter(({ pot }) => coatsOn(pot).some((coat) => coat.bucketId === bucketId)).length,
  }
  const asked = [...takenOf(table), ...shelved.flatMap(({ subject }) => subject ?? [])]
  const here = taughtIn(table, results, firing, asked)
  const elsewhere = spokenElsewhere(table, results, firing, here, takenOf(table))
  const keys = new Set(elsewhere.map(({ told }) => told.subject))
  const factors = [
    ...here.lesson.subjects
      .filter(({ subject }) => !keys.has(subject))
      .flatMap((told) => toldOf(table, here, told, beside)),
    ...elsewhere.flatMap(({ taught, told, of }) => toldOf(table, taught, told, { ...beside, of })),
  ]
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
  const results = resultsOf(table).filter(({ found }) => found.runSaid.at < before)
  const { lesson } = taughtIn(table, results, firing, [subject])
  return lesson.subjects.find((one) => one.subject === subjectKey(subject))
}
