import type { Kept } from '../../table/card/card.ts'
import type { Table } from '../../table/model/state.ts'
import type { Words } from '../../words/bench.ts'
import { nameOf } from '../text/pot-text.ts'

/** Pots of one group that are named. */
const KEPT_NAMED = 5

/**
 * Pots that are kept on purpose, a line a group and at most `lines` of them: the last counts those that have none. An
 * hour that is past is not told: the hands are late for it. `now` is table time, ms.
 */
export function keptLines(
  words: Words,
  clock: (at: number) => string,
  table: Table,
  kept: readonly Kept[],
  now: number,
  lines: number,
): readonly string[] {
  const w = words.bench
  const unnamed = kept.slice(lines).reduce((sum, { potIds }) => sum + potIds.length, 0)
  return kept.slice(0, lines).map(({ potIds, bucketId, at, later }, i) => {
    const name = table.buckets[bucketId]?.facts.name ?? ''
    const hour = at > now ? clock(at + table.skewMs) : ''
    const line = w.kept(namesOf(words, table, potIds), potIds.length, name, hour, later)
    return unnamed > 0 && i === lines - 1 ? `${line} ${w.keptMore(unnamed)}` : line
  })
}

function namesOf(words: Words, table: Table, potIds: readonly string[]): string {
  const names = potIds.slice(0, KEPT_NAMED).map((potId) => nameOf(words, table.pots[potId]))
  return [...names, ...(potIds.length > KEPT_NAMED ? [`+${potIds.length - KEPT_NAMED}`] : [])].join(', ')
}
