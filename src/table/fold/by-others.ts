/** What another phone does on this one's table: fetched with what sees it, see `seen.ts`. */

import { change, withPot } from '../model/change.ts'
import type { LoadState } from '../model/load-state.ts'
import { isBegun } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { cleared } from './cleared.ts'
import type { Left } from './clears.ts'
import { doOfOthers, happened } from './reduce.ts'

/** What is of the hands at a phone alone. */
const OF_HANDS = ['openBucket', 'openedAt', 'usedAt', 'collar', 'picked', 'others', 'pan'] as const

doOfOthers((table, { event, from = '', left }, then) => {
  if (event.kind === 'table-cleared')
    return from || !left ? clearedBy(from, table, left) : clearedHere(table, left)
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
const clearedBy = (phone: string, table: Table, left?: Left): Table =>
  Object.values(table.pots)
    .filter(
      (pot) =>
        pot.from === phone &&
        !left?.things.has(pot.facts.potId) &&
        !isBegun(pot) &&
        !pot.waxedAt &&
        !pot.wipedAt,
    )
    .reduce((next, { facts }) => change(next, facts.potId, { gone: true }), table)

/** The table after it was cleared at this phone: what others said unread stays, with all that it stands on. */
function clearedHere(table: Table, { things, before }: Left): Table {
  const { pots, stacks, buckets, removed, kilns, loads, offsets, air, waiting } = table
  const stay = new Set<string>()
  const keep = (id: string) => {
    if (stay.has(id)) return
    stay.add(id)
    const { facts, dips = [], ownPlan = [], begunPlan = [] } = pots[id] ?? {}
    for (const { bucketId } of [...dips, ...ownPlan, ...begunPlan, ...(stacks[id]?.coats ?? [])])
      keep(bucketId)
    if (facts) keep(facts.stackId)
    if (facts?.lidOf !== undefined) keep(facts.lidOf)
    // A fire is that of all that stands in it.
    const load = loads?.[id] ?? (pots[id] && loadOf(table, id))
    if (load) for (const each of [load.loadId, load.kiln.kilnId, ...potsIn(load)]) keep(each)
  }
  for (const of of [pots, stacks, buckets, removed, kilns, loads])
    for (const id of Object.keys(of ?? {})) if (things.has(id)) keep(id)
  const kept = <T>(of: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(of).filter(([id]) => stay.has(id)))
  const { ...bare }: { -readonly [K in keyof Table]: Table[K] } = cleared(table)
  // The air that dried what stays.
  if (stay.size > 0 || before.length > 0) bare.air = air
  bare.stacks = kept(stacks)
  bare.buckets = kept(buckets)
  if (removed) bare.removed = kept(removed)
  if (kilns) bare.kilns = kept(kilns)
  if (loads) bare.loads = kept(loads)
  if (offsets) bare.offsets = kept(offsets)
  const awaited = Object.entries(waiting ?? {}).flatMap(([key, all]) => {
    const theirs = all.filter(({ from }) => from !== undefined)
    return theirs.length > 0 ? [[key, theirs] as const] : []
  })
  if (awaited.length > 0) bare.waiting = { ...Object.fromEntries(awaited), ...bare.waiting }
  const then = Object.values(kept(pots)).reduce(withPot, bare as Table)
  return before.reduce((next, said) => (said.event.kind === 'air-set' ? next : happened(next, said)), then)
}

const potsIn = (load: LoadState): readonly string[] =>
  Object.values(load.things).flatMap(({ potId }) => (potId === undefined ? [] : [potId]))

const loadOf = (table: Table, potId: string): LoadState | undefined =>
  Object.values(table.loads ?? {}).find((load) => potsIn(load).includes(potId))
