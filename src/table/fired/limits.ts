import type { BucketFacts } from '../../../shared/nouns.ts'
import { leadsTo } from '../../engine/fired/proven.ts'
import { type CrawlSeen, type ThicknessLimit, thicknessLimit } from '../../engine/fired/thickness-limit.ts'
import { LIMITS } from '../model/limits.ts'
import { coatsOn } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { limitOf } from '../model/taken.ts'
import { firedZones } from './fired-coats.ts'
import { type JudgedPot, judgedPots } from './results.ts'

/** What fired pots say of how thick a glaze may go on before it crawls. Lengths mm, dry. */
export interface LimitTold {
  readonly bucketId: string
  readonly limit: ThicknessLimit
  /** What would be taken, within what a bucket's own limit can be. */
  readonly limitMm: number
  /** What is reckoned with now. */
  readonly usedMm: number
  readonly pots: readonly PotState[]
  /** Those of them that crawled, the earliest judged first. */
  readonly crawled: readonly PotState[]
  /** A thinner limit is a danger and shows at once; a thicker one waits for a hand. */
  readonly leads: 'danger' | 'relief' | 'same'
  readonly answered: boolean
}

/** Judged pots that say something of coats: their coats and firing are known, and nobody left them out. */
const telling = ({ sure, load, found }: JudgedPot): boolean =>
  sure && load !== undefined && !found.dropped && found.run !== undefined

/** Thickest dry coat of a glaze anywhere on a pot, mm. */
const thickestMm = (table: Table, pot: PotState, bucketId: string): number =>
  Math.max(
    0,
    ...firedZones(table, pot).map(({ coats }) =>
      coats.reduce((sum, { glazeId, likelyMm }) => sum + (glazeId === bucketId ? likelyMm : 0), 0),
    ),
  )

/** A crawl of two glazes is either's, and counts for neither; a pot that held says so of all of its glazes. */
function seenOf(table: Table, { pot, found }: JudgedPot, bucketId: string): readonly CrawlSeen[] {
  const glazes = new Set(coatsOn(pot).map((dip) => dip.bucketId))
  const crawled = found.faults.includes('crawled')
  if (!glazes.has(bucketId) || (crawled && glazes.size > 1)) return []
  const mm = thickestMm(table, pot, bucketId)
  return mm > 0 ? [{ id: found.id, mm: Math.min(20, mm), crawled }] : []
}

function limitTold(table: Table, { bucketId, limitMm: statedMm }: BucketFacts): LimitTold | undefined {
  const all = judgedPots(table)
    .filter(telling)
    .map((one) => ({ one, seen: seenOf(table, one, bucketId) }))
  const mine = all.filter(({ seen }) => seen.length > 0)
  const seen = mine.flatMap((each) => each.seen)
  const crawled = mine.filter((each) => each.seen.some((one) => one.crawled))
  const [first] = crawled
  if (!first) return undefined
  const limit = thicknessLimit(statedMm, seen)
  const limitMm = Math.min(LIMITS.limitMm.most, Math.max(LIMITS.limitMm.least, limit.offeredMm))
  const usedMm = limitOf(table, bucketId) ?? statedMm
  const last = Math.max(...mine.map(({ one }) => one.found.at))
  const since = table.taken?.findLast(
    ({ event }) => event.kind === 'limit-taken' && event.bucketId === bucketId,
  )
  return {
    bucketId,
    limit,
    limitMm,
    usedMm,
    pots: mine.map(({ one }) => one.pot),
    crawled: crawled.map(({ one }) => one.pot),
    // Thinner is the danger: the logarithms change sides.
    leads: leadsTo(Math.log(limitMm), Math.log(usedMm)),
    answered: since !== undefined && since.at >= last,
  }
}

/**
 * What fired pots say of each glaze's limit, those of which one crawled: pots that held alone prove no more than that they
 * held.
 */
export const limitsTold = (table: Table): readonly LimitTold[] =>
  Object.values(table.buckets).flatMap(({ facts }) => limitTold(table, facts) ?? [])

/** A thinner limit of one glaze that nobody answered, for its armed card: nothing is computed before a pot of it crawled. */
export function crawlDanger(table: Table, bucketId: string): LimitTold | undefined {
  const facts = table.buckets[bucketId]?.facts
  const crawled = judgedPots(table).some(
    ({ pot, found }) => found.faults.includes('crawled') && pot.dips.some((dip) => dip.bucketId === bucketId),
  )
  const told = facts && crawled ? limitTold(table, facts) : undefined
  return told?.leads === 'danger' && !told.answered ? told : undefined
}

/** What a hand would take by USE IT, as the action says it. */
export const takesLimit = ({ bucketId, limitMm, pots }: LimitTold) => ({
  do: 'take-limit' as const,
  bucketId,
  limitMm: Math.round(limitMm * 100) / 100,
  of: pots.length,
})
