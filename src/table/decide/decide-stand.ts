import type { TableEvent } from '../../../shared/events.ts'
import type { LoadHappening } from '../../../shared/load-events.ts'
import { liesMm, onShelf } from '../load/level-view.ts'
import { loadsOf } from '../load/loads.ts'
import { sizeOf } from '../load/to-load.ts'
import type { Refusal } from '../model/action.ts'
import { type InKiln, type LoadState, levelKey, type Standing } from '../model/load-state.ts'
import { stored, thingOf } from '../model/load-things.ts'
import type { Table } from '../model/state.ts'
import type { Decision } from './decision.ts'

/** Nothing happens at the kiln, for this reason; `facts` fill its words. */
export const atKilnRefusal = (field: string, facts?: Refusal['facts']): Refusal => ({
  code: 'at-kiln',
  field,
  ...(facts ? { facts } : {}),
})
const not = (field: string, facts?: Refusal['facts']): Decision => ({ refusal: atKilnRefusal(field, facts) })

/** Things go to these spots, each as near as its shelf reaches. Gaps are told and never refused; what cannot be is. */
export function stand(
  table: Table,
  load: LoadState,
  moves: readonly (readonly [string, InKiln])[],
): Decision {
  const events: TableEvent[] = []
  for (const [key, at] of moves) {
    const level = load.levels[levelKey(at)]
    const shelf = level && load.kiln.shelves.find(({ id }) => id === level.shelfId)
    if (!level || !shelf) return not('no-shelf')
    const before = load.things[key]
    const from = before && load.levels[levelKey(before)]
    if (level.loadedAt !== undefined) return not('loaded', { number: level.number })
    if (from?.loadedAt !== undefined) return not('loaded', { number: from.number })
    const { potId } = thingOf(key)
    const wrong = goneOrElsewhere(table, load, potId) ?? tooLarge(table, load, potId, shelf)
    if (wrong) return { refusal: wrong }
    const pot = potId === undefined ? undefined : table.pots[potId]
    if (!Number.isFinite(at.xMm + at.yMm)) return not('no-place')
    const slab = before?.slab ?? pot?.slab === true
    const spot = onShelf(shelf, level.column, liesMm(table, key, slab), at)
    events.push(standing(load, key, { slab }, { ...level, ...spot }, { pinned: true }))
  }
  return { events }
}

/** A thing as it stands from now on. */
export function standing(
  { loadId }: LoadState,
  key: string,
  { slab }: Pick<Standing, 'slab'>,
  { column, storey, xMm, yMm }: InKiln,
  how: { readonly pinned?: true; readonly settled?: true },
): LoadHappening {
  return {
    kind: 'placed',
    loadId,
    ...thingOf(key),
    column,
    storey,
    xMm: stored(xMm),
    yMm: stored(yMm),
    slab,
    ...how,
  }
}

/** A pot that is no more, or that another load has; one that was fired stands in a load that was lit. */
export function goneOrElsewhere(
  table: Table,
  load: LoadState,
  potId: string | undefined,
): Refusal | undefined {
  if (potId === undefined) return undefined
  const pot = table.pots[potId]
  if (!pot || pot.gone) return { code: 'unknown-pot' }
  const other = loadsOf(table).find(
    ({ loadId, things }) => loadId !== load.loadId && things[potId] !== undefined,
  )
  if (!other) return undefined
  return atKilnRefusal(other.openedAt === undefined ? 'on-other-load' : 'already-fired', {
    number: pot.facts.number,
  })
}

/** Taller than the chamber leaves over its lowest shelf, or wider at the foot than the shelf. */
function tooLarge(
  table: Table,
  load: LoadState,
  potId: string | undefined,
  shelf: LoadState['kiln']['shelves'][number],
): Refusal | undefined {
  const pot = potId === undefined ? undefined : table.pots[potId]
  if (!pot) return undefined
  const { number } = pot.facts
  const { heightMm, footRadiusMm } = sizeOf(table, pot)
  const highMm = load.kiln.chamber.heightMm - shelf.thickMm
  if (heightMm > highMm)
    return atKilnRefusal('too-tall', { number, value: Math.round(heightMm), most: Math.floor(highMm) })
  const wideMm = Math.min(shelf.widthMm, shelf.depthMm)
  if (2 * footRadiusMm > wideMm)
    return atKilnRefusal('too-wide', {
      number,
      value: Math.round(2 * footRadiusMm),
      most: Math.floor(wideMm),
    })
  return undefined
}
