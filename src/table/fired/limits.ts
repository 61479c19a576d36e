import type { SubjectFacts } from '../../../shared/opening.ts'
import type { ZoneForecast } from '../../engine/contract.ts'
import { leadsTo } from '../../engine/fired/proven.ts'
import { type CrawlSeen, type ThicknessLimit, thicknessLimit } from '../../engine/fired/thickness-limit.ts'
import { liesOn } from '../../engine/wait/grade.ts'
import { LIMITS } from '../model/limits.ts'
import { coatsOn } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { limitOf } from '../model/taken.ts'
import { answeredOf, answerOf } from './answers.ts'
import { firedZones, pairsOn } from './fired-coats.ts'
import { type JudgedPot, judgedPots, maySpeak } from './results.ts'

/**
 * What fired pots say of how thick a glaze may go on before it crawls, by itself, or where it lies on another: then both
 * together. Lengths mm, dry.
 */
export interface LimitTold extends SubjectFacts {
  readonly limit: ThicknessLimit
  /** What would be taken, within what a limit can be. */
  readonly limitMm: number
  /** What is reckoned with now, and what was set: the bucket's own, of a pair that of all coats. */
  readonly usedMm: number
  readonly statedMm: number
  /** The pots behind it, the earliest judged first. */
  readonly pots: readonly JudgedPot[]
  /** Those of them that crawled. */
  readonly crawled: readonly JudgedPot[]
  /** A thinner limit is a danger and shows at once; a thicker one waits for a hand, and of a pair none is offered. */
  readonly leads: 'danger' | 'relief' | 'same'
  /** The same whatever was answered: an answer can be changed into the other. */
  readonly still: 'danger' | 'relief' | 'same'
  readonly asks: boolean
}

/** Judged pots that say something of coats: one that held in a kiln that stayed far below its cone says nothing. */
const telling = (one: JudgedPot): boolean =>
  maySpeak(one) &&
  one.found.run !== undefined &&
  !(one.heat?.unreached && !one.found.faults.includes('crawled'))

/**
 * Whose thickness a pot speaks of, whether it crawled or held: its one glaze, or its one pair. Of two pairs or of glazes
 * side by side either may have crawled, and then what held says no more.
 */
function subjectOn({ pot }: JudgedPot): SubjectFacts | undefined {
  const [only, ...others] = new Set(coatsOn(pot).map((dip) => dip.bucketId))
  if (only !== undefined && others.length === 0) return { bucketId: only }
  const [pair, ...more] = pairsOn(pot)
  return pair && more.length === 0 && others.length === 1
    ? { bucketId: pair.over, underId: pair.under }
    : undefined
}

/** Thickest dry coat of a glaze in any of these zones, of a pair of both where it lies on the other, mm. */
export const thickestMm = (zones: readonly ZoneForecast[], { bucketId, underId }: SubjectFacts): number =>
  Math.max(
    0,
    ...zones.map(({ coats }) =>
      underId === undefined || liesOn(coats, bucketId, underId)
        ? coats.reduce(
            (sum, { glazeId, likelyMm }) =>
              sum + (glazeId === bucketId || glazeId === underId ? likelyMm : 0),
            0,
          )
        : 0,
    ),
  )

interface Lessons {
  readonly subject: SubjectFacts
  readonly pots: readonly JudgedPot[]
}

/** The pots that speak of each subject. */
function bySubject(table: Table): readonly Lessons[] {
  const all = new Map<string, Lessons>()
  const of = (subject: SubjectFacts) => JSON.stringify([subject.bucketId, subject.underId])
  for (const subject of answeredOf(table, 'limit-taken')) all.set(of(subject), { subject, pots: [] })
  for (const one of judgedPots(table)) {
    const subject = telling(one) ? subjectOn(one) : undefined
    if (!subject) continue
    const known = all.get(of(subject))
    all.set(of(subject), { subject, pots: [...(known?.pots ?? []), one] })
  }
  return [...all.values()].filter(
    ({ subject: { bucketId, underId } }) =>
      table.buckets[bucketId] && (underId === undefined || table.buckets[underId]),
  )
}

function limitTold(table: Table, { subject, pots }: Lessons): LimitTold | undefined {
  const seen = pots.flatMap(({ pot, found }): CrawlSeen[] => {
    const mm = thickestMm(firedZones(table, pot), subject)
    return mm > 0 ? [{ id: found.id, mm: Math.min(20, mm), crawled: found.faults.includes('crawled') }] : []
  })
  const crawled = pots.filter(({ found }) => found.faults.includes('crawled'))
  const taken = limitOf(table, subject)
  if (crawled.length === 0 && taken === undefined) return undefined
  const statedMm =
    subject.underId === undefined
      ? (table.buckets[subject.bucketId]?.facts.limitMm ?? table.settings.stackLimitMm)
      : table.settings.stackLimitMm
  const usedMm = taken ?? statedMm
  const limit = thicknessLimit(statedMm, seen)
  const limitMm = Math.min(LIMITS.limitMm.most, Math.max(LIMITS.limitMm.least, limit.offeredMm))
  const { holds, fresh, withdrawn } = answerOf(
    table,
    'limit-taken',
    subject,
    pots.map(({ found }) => found.crawlSaid),
    { ids: new Set(pots.flatMap(({ found }) => found.crawlSaid.ids)), more: 0 },
  )
  // Thinner is the danger: the logarithms change sides. What is offered is a bound by itself.
  const ln = Math.log(usedMm)
  const way = leadsTo(Math.log(limitMm), { low: ln, likely: ln, high: ln })
  const anew = (some: readonly JudgedPot[]) => some.some(({ found }) => fresh.has(found.crawlSaid))
  // Of a pair no thicker one is offered.
  const still = way === 'danger' ? (crawled.length > 0 ? way : 'same') : subject.underId ? 'same' : way
  const leads = still === 'danger' ? anew(crawled) : anew(pots) || withdrawn
  return {
    ...subject,
    limit,
    limitMm,
    usedMm,
    statedMm,
    pots,
    crawled,
    leads: leads ? still : 'same',
    still,
    asks: !holds && leads && still !== 'same',
  }
}

/**
 * What fired pots say of each limit, where one crawled or a limit was ever taken: pots that held alone prove no more than
 * that they held.
 */
export const limitsTold = (table: Table): readonly LimitTold[] =>
  bySubject(table).flatMap((lessons) => limitTold(table, lessons) ?? [])

/** Thinner limits that nobody took, of a coat of this glaze: nothing is computed before a pot of it crawled. */
export function crawlDangers(table: Table, bucketId: string): readonly LimitTold[] {
  const crawled = judgedPots(table).some(
    ({ pot, found }) => found.faults.includes('crawled') && pot.dips.some((dip) => dip.bucketId === bucketId),
  )
  if (!crawled) return []
  return bySubject(table)
    .filter(({ subject }) => subject.bucketId === bucketId)
    .flatMap((lessons) => limitTold(table, lessons) ?? [])
    .filter(({ still }) => still === 'danger')
}

/** What a hand would take by USE IT, as the action says it. */
export const takesLimit = ({ bucketId, underId, limitMm, pots }: LimitTold) => ({
  do: 'take-limit' as const,
  bucketId,
  ...(underId === undefined ? {} : { underId }),
  limitMm: Math.round(limitMm * 100) / 100,
  of: pots.length,
  results: pots.map(({ found }) => found.id),
})

/** What a hand would say by KEEP. */
export const keepsLimit = (told: LimitTold): ReturnType<typeof takesLimit> =>
  told.usedMm === told.statedMm
    ? asSet(told)
    : { ...takesLimit(told), limitMm: told.usedMm, of: Math.max(1, told.pots.length) }

/** What a hand would say to have the limit as it was set again. */
export const asSet = (told: LimitTold): ReturnType<typeof takesLimit> => ({ ...takesLimit(told), of: 0 })
