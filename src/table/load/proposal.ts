import type { KilnFacts } from '../../../shared/load.ts'
import type { LoadHappening } from '../../../shared/load-events.ts'
import {
  CLEARANCES,
  type Kiln,
  type LoadInput,
  type LoadPlan,
  type Special,
} from '../../engine/kiln/contract.ts'
import { rideAlong } from '../advice/ticket.ts'
import { type LoadState, levelKey, stored, thingOf } from '../model/load-state.ts'
import type { Table } from '../model/state.ts'
import { isBuilt, levelsOf, thingsOn } from './loads.ts'
import { potsForLoad, toLoad } from './to-load.ts'

export type { LoadInput, LoadPlan }

/** A flow tile upright on its dish, mm. Assumption, as is the next. */
export const TILE = { radiusMm: 40, heightMm: 110 }
/** The same of a cone set. */
export const CONES = { radiusMm: 35, heightMm: 75 }
const PROPOSED_AHEAD = 1000

/** A kiln as the engine has it. */
export const engineKiln = ({ kilnId, chamber, shelves, posts, couple, spyHoles }: KilnFacts): Kiln => ({
  id: kilnId,
  chamber,
  shelves,
  posts,
  thermocouple: couple ?? null,
  spyHoles,
  clearances: CLEARANCES,
})

/** What a load is proposed from: its pots, what was put by hand, what stands already. */
export function loadInput(table: Table, load: LoadState, now: number): LoadInput {
  const pots = potsForLoad(table, load.loadId).slice(0, PROPOSED_AHEAD)
  const specials: Special[] = [
    ...(rideAlong(table) || load.things['~tile'] ? [{ id: '~tile', kind: 'tile' as const, ...TILE }] : []),
    { id: '~cones', kind: 'cones', ...CONES },
  ]
  const known = new Set([...pots.map(({ facts }) => facts.potId), ...specials.map(({ id }) => id)])
  // A kiln is built from below; a level that two phones loaded over a hole counts as put by hand.
  const standing = levelsOf(load).filter((level) => isBuilt(load, level))
  const isFixed = new Set(standing.map(levelKey))
  return {
    loadId: load.loadId,
    kiln: engineKiln(load.kiln),
    pots: pots.map((pot) => toLoad(table, pot, now)),
    specials,
    pinned: Object.entries(load.things).flatMap(([id, thing]) => {
      const { column, storey, xMm, yMm, pinned } = thing
      const stays = pinned || load.levels[levelKey(thing)]?.loadedAt !== undefined
      return stays && known.has(id) && !isFixed.has(levelKey(thing)) ? [{ id, column, storey, xMm, yMm }] : []
    }),
    loaded: standing.map((level) => {
      const { column, storey, number, shelfId, postMm } = level
      const items = thingsOn(load, level)
        .filter(([id]) => known.has(id))
        .map(([id, { xMm, yMm }]) => ({ id, xMm, yMm }))
      return { column, storey, number, shelfId, postMm, items }
    }),
  }
}

/** The events that make a load what a plan has it, where it is not yet; levels that are loaded stay as they are. */
export function planEvents(load: LoadState, plan: LoadPlan): readonly LoadHappening[] {
  const { loadId } = load
  const events: LoadHappening[] = []
  const placed = new Set(plan.levels.flatMap(({ items }) => items.map(({ id }) => id)))
  for (const key of Object.keys(load.things))
    if (!placed.has(key)) events.push({ kind: 'lifted-out', loadId, ...thingOf(key) })
  for (const level of plan.levels) {
    if (level.loaded) continue
    const { column, storey } = level
    for (const { id, onSlab, ...at } of level.items) {
      const [xMm, yMm] = [stored(at.xMm), stored(at.yMm)]
      const before = load.things[id]
      const same = before && levelKey(before) === levelKey(level) && before.xMm === xMm && before.yMm === yMm
      if (same && before.slab === onSlab) continue
      const where = { column, storey, xMm, yMm, slab: onSlab }
      const pinned = before?.pinned ? { pinned: true as const } : {}
      events.push({ kind: 'placed', loadId, ...thingOf(id), ...where, ...pinned })
    }
  }
  // Last, as the hit is named by it.
  for (const level of plan.levels) {
    if (level.loaded) continue
    const { column, storey, number, shelfId, postMm, posts } = level
    events.push({
      kind: 'shelf-set',
      loadId,
      column,
      storey,
      number,
      shelfId,
      postMm,
      posts: posts.map(({ xMm, yMm }) => ({ xMm: stored(xMm), yMm: stored(yMm) })),
    })
  }
  return events
}
