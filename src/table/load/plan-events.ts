import type { LoadHappening } from '../../../shared/load-events.ts'
import type { LoadPlan } from '../../engine/kiln/contract.ts'
import { atKiln } from '../fold/reduce-load.ts'
import { type LoadState, levelKey } from '../model/load-state.ts'
import { stored, thingOf } from '../model/load-things.ts'
import type { Table } from '../model/state.ts'

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

/** A load as it would stand by a plan. */
export const laidOut = (table: Table, load: LoadState, plan: LoadPlan): LoadState =>
  planEvents(load, plan).reduce((then, event) => atKiln(then, event, 0, { id: '', hit: '', from: '' }), table)
    .loads?.[load.loadId] ?? load
