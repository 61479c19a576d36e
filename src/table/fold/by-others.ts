/** What another phone does on this one's table: fetched with what sees it, see `seen.ts`. */

import { change } from '../model/change.ts'
import { isBegun } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { doOfOthers } from './reduce.ts'

/** What is of the hands at a phone alone. */
const OF_HANDS = ['openBucket', 'openedAt', 'usedAt', 'collar', 'picked', 'others', 'pan'] as const

doOfOthers((table, { event, from = '' }, then) => {
  if (event.kind === 'table-cleared') return clearedBy(from, table)
  // Under its lid a bucket is open to nobody.
  if (event.kind === 'lid-on') return then(table)
  const { ...theirs }: { -readonly [K in keyof Table]: Table[K] } = table
  for (const key of OF_HANDS) delete theirs[key]
  // What they dip into is open to them.
  if ('bucketId' in event && event.bucketId !== undefined) theirs.openBucket = event.bucketId
  const { ...after }: { -readonly [K in keyof Table]: Table[K] } = then(theirs)
  for (const key of OF_HANDS) delete after[key]
  const own = Object.fromEntries(
    OF_HANDS.flatMap((key) => (table[key] === undefined ? [] : [[key, table[key]]])),
  )
  return { ...after, ...own }
})

/** The table after another phone cleared its own: that one's pots go, but those that anything was done to. */
const clearedBy = (phone: string, table: Table): Table =>
  Object.values(table.pots)
    .filter((pot) => pot.from === phone && !isBegun(pot) && !pot.waxedAt && !pot.wipedAt)
    .reduce((next, { facts }) => change(next, facts.potId, { gone: true }), table)
