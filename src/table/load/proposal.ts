import type { LoadInput, LoadPlan, Special } from '../../engine/kiln/contract.ts'
import { rideAlong } from '../advice/ticket.ts'
import { type LoadState, levelKey } from '../model/load-state.ts'
import type { Table } from '../model/state.ts'
import { engineKiln } from './kiln-space.ts'
import { isBuilt, levelsOf, thingsOn } from './loads.ts'
import { CONES, TILE } from './specials.ts'
import { potsForLoad, toLoad } from './to-load.ts'

export type { LoadInput, LoadPlan }

const PROPOSED_AHEAD = 1000

/** What is asked to learn why pots are in no place: all that stands stays where it is. */
export function leftOutInput(table: Table, load: LoadState, now: number): LoadInput {
  const things = Object.entries(load.things).map(([key, thing]) => [key, { ...thing, pinned: true as const }])
  return loadInput(table, { ...load, things: Object.fromEntries(things) }, now)
}

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
    pots: pots.map((pot) => toLoad(table, load, pot, now)),
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
