import type { LoadHappening } from '../../../shared/load-events.ts'
import { type InKiln, type LoadState, levelKey, type Standing, thingKey } from '../model/load-state.ts'
import type { Table } from '../model/state.ts'

const MIN_MS = 60_000

/** When it was, which may have been said later. */
const since = (event: { readonly agoMin?: number }, at: number): number => at - (event.agoMin ?? 0) * MIN_MS

/** The list with one more, in the order of time: whenever it was said, it is the same list. */
const inTime = <T extends { readonly at: number }>(list: readonly T[], one: T): readonly T[] =>
  [...list, one].sort((a, b) => a.at - b.at)

/** The table after something at the kiln. `at`: table time, ms; `id` the record's own, `from` the other phone that wrote it. */
export function atKiln(table: Table, event: LoadHappening, at: number, id: string, from?: string): Table {
  switch (event.kind) {
    case 'kiln-set':
      return { ...table, kilns: { ...table.kilns, [event.kiln.kilnId]: event.kiln } }
    case 'offset-taken': {
      const { kilnId, offsetC, of } = event
      return { ...table, offsets: { ...table.offsets, [kilnId]: { offsetC, of, at } } }
    }
    case 'load-begun': {
      const { loadId, firing, candle } = event
      const kiln = table.kilns?.[event.kilnId]
      if (!kiln || table.loads?.[loadId]) return table
      const begun = {
        loadId,
        kiln,
        firing,
        ...(candle === undefined ? {} : { candle }),
        begunAt: at,
        levels: {},
        things: {},
        glass: [],
        readings: [],
        cones: [],
      }
      return { ...table, loads: { ...table.loads, [loadId]: begun } }
    }
    default: {
      const load = table.loads?.[event.loadId]
      if (!load) return table
      return { ...table, loads: { ...table.loads, [event.loadId]: ofLoad(load, event, at, id, from) } }
    }
  }
}

type OfLoad = Exclude<LoadHappening, { kind: 'kiln-set' | 'offset-taken' | 'load-begun' }>

function ofLoad(load: LoadState, event: OfLoad, at: number, id: string, from?: string): LoadState {
  switch (event.kind) {
    case 'shelf-set': {
      const key = levelKey(event)
      const before = load.levels[key]
      if (before?.loadedAt !== undefined) return load
      const { column, storey, number, shelfId, postMm, posts } = event
      return {
        ...load,
        levels: { ...load.levels, [key]: { column, storey, number, shelfId, postMm, posts } },
      }
    }
    case 'placed': {
      const key = thingKey(event)
      return { ...load, things: { ...load.things, [key]: stood(load, event, from, load.things[key]) } }
    }
    case 'lifted-out': {
      const { [thingKey(event)]: _out, ...things } = load.things
      return { ...load, things }
    }
    case 'shelf-loaded': {
      const key = levelKey(event)
      const level = load.levels[key]
      if (!level || level.loadedAt !== undefined) return load
      const things = { ...load.things }
      for (const [i, name] of event.order.entries()) {
        const thing = things[name]
        if (thing) things[name] = { ...thing, place: `${level.number}.${i + 1}` }
      }
      return { ...load, things, levels: { ...load.levels, [key]: { ...level, loadedAt: at } } }
    }
    case 'candling-set':
      return { ...load, candle: event.candle }
    case 'lid-shut':
      return { ...load, shutAt: at }
    case 'kiln-lit':
      return { ...load, litAt: since(event, at) }
    case 'glass-held':
      return { ...load, glass: inTime(load.glass, { at: since(event, at), fogged: event.fogged }) }
    case 'heat-read':
      return { ...load, readings: inTime(load.readings, { id, at: since(event, at), tempC: event.tempC }) }
    case 'reading-dropped':
      return { ...load, readings: load.readings.filter((reading) => reading.id !== event.readId) }
    case 'cone-seen': {
      const { cone, is, storey } = event
      const seen = { at: since(event, at), cone, is, ...(storey === undefined ? {} : { storey }) }
      return { ...load, cones: inTime(load.cones, seen) }
    }
    case 'bung-pulled':
      return { ...load, bungAt: since(event, at) }
    case 'kiln-off':
      return { ...load, offAt: since(event, at) }
    case 'matched': {
      const { kind: _kind, loadId: _load, potId, ...seen } = event
      return { ...load, matched: { ...load.matched, [potId]: { at, ...seen } } }
    }
    case 'lid-opened': {
      const openedAt = since(event, at)
      const { tempC } = event
      const readings =
        tempC === undefined ? load.readings : inTime(load.readings, { id, at: openedAt, tempC })
      return { ...load, openedAt, readings }
    }
  }
}

/** Where a thing is to stand. What one phone has loaded and another puts elsewhere stands in both, until it is said. */
function stood(
  load: LoadState,
  event: Extract<OfLoad, { kind: 'placed' }>,
  from: string | undefined,
  before: Standing | undefined,
): Standing {
  const { column, storey, xMm, yMm, what, potId, slab, pinned } = event
  const here: InKiln = { column, storey, xMm, yMm }
  const fixed = before?.place !== undefined && load.levels[levelKey(before)]?.loadedAt !== undefined
  if (fixed && !event.settled) {
    return before.from === from ? before : { ...before, orHere: here }
  }
  return {
    ...here,
    what,
    slab,
    ...(potId === undefined ? {} : { potId }),
    ...(pinned ? { pinned } : {}),
    ...(from === undefined ? {} : { from }),
    ...(fixed && before.place !== undefined && levelKey(before) === levelKey(here)
      ? { place: before.place }
      : {}),
  }
}
