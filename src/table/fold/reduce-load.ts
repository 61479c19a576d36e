import type { Stamped } from '../../../shared/events.ts'
import type { LoadHappening } from '../../../shared/load-events.ts'
import { without } from '../model/change.ts'
import {
  type Deed,
  type InKiln,
  type LoadState,
  levelKey,
  type Standing,
  thingKey,
} from '../model/load-state.ts'
import type { Table } from '../model/state.ts'

const MIN_MS = 60_000

/** The list with one more, in the order of time: whenever it was said, it is the same list. */
const inTime = <T extends { readonly at: number }>(list: readonly T[], one: T): readonly T[] =>
  [...list, one].sort((a, b) => a.at - b.at)

/** The record of an event: its own name, its hit's, and the other phone that wrote it. */
type Of = Pick<Stamped, 'id' | 'hit' | 'from'>

/** When it was that each of these was done. */
const DONE = {
  'lid-shut': 'shutAt',
  'kiln-lit': 'litAt',
  'bung-pulled': 'bungAt',
  'kiln-off': 'offAt',
  'lid-opened': 'openedAt',
} as const

/** The table after something at the kiln. `at`: table time, ms. */
export function atKiln(table: Table, event: LoadHappening, at: number, by: Of): Table {
  switch (event.kind) {
    case 'kiln-set': {
      // The one that was set last stands last.
      const { kilnId } = event.kiln
      return { ...table, kilns: { ...without(table.kilns ?? {}, kilnId), [kilnId]: event.kiln } }
    }
    case 'offset-taken': {
      const { kilnId, offsetC, of } = event
      return { ...table, offsets: { ...table.offsets, [kilnId]: { offsetC, of, at, hit: by.hit } } }
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
      return { ...table, loads: { ...table.loads, [event.loadId]: ofLoad(load, event, at, by, table) } }
    }
  }
}

/** What every bucket is known by now, one that was taken off the table too. */
export const fillsOf = ({ buckets, removed }: Table): NonNullable<LoadState['fills']> =>
  Object.fromEntries(
    Object.entries({ ...removed, ...buckets }).map(([id, { facts, past = [] }]) => [id, { facts, past }]),
  )

type OfLoad = Exclude<LoadHappening, { kind: 'kiln-set' | 'offset-taken' | 'load-begun' }>

function ofLoad(load: LoadState, event: OfLoad, at: number, { id, hit, from }: Of, table: Table): LoadState {
  /** When it was, which may have been said later. */
  const when = at - (('agoMin' in event && event.agoMin) || 0) * MIN_MS
  const tempC = 'tempC' in event ? event.tempC : undefined
  const readings = tempC === undefined ? load.readings : inTime(load.readings, { id, at: when, tempC })
  /** One deed more that can be taken back by its hit. */
  const deeds = (kind: Deed['kind']) => [...(load.deeds ?? []), { kind, hit }]
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
      return { ...load, things: { ...load.things, [key]: stood(event, from, load.things[key]) } }
    }
    case 'load-changed': {
      const { kiln = load.kiln, firing = load.firing, anew } = event
      if (load.litAt !== undefined) return { ...load, firing }
      return { ...load, firing, kiln, ...(anew ? { levels: {}, things: {} } : {}) }
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
      const levels = { ...load.levels, [key]: { ...level, loadedAt: at } }
      return { ...load, things, levels, deeds: deeds(event.kind) }
    }
    case 'candling-set':
      return { ...load, candle: event.candle }
    case 'glass-held':
      return { ...load, glass: inTime(load.glass, { at: when, hit, fogged: event.fogged }) }
    case 'heat-read':
      return { ...load, readings }
    case 'reading-dropped':
      return { ...load, readings: load.readings.filter((reading) => reading.id !== event.readId) }
    case 'cone-seen': {
      const { cone, is, storey } = event
      const seen = { at: when, hit, cone, is, ...(storey === undefined ? {} : { storey }) }
      return { ...load, cones: inTime(load.cones, seen) }
    }
    case 'matched': {
      const { kind: _kind, loadId: _load, potId, ...seen } = event
      const after = Object.values(table.pots).flatMap(({ facts, fired }): string[] => {
        const inLoad = load.things[facts.lidOf ?? facts.potId] !== undefined
        const isJudged = fired?.some((one) => one.event.kind === 'judged')
        return inLoad && isJudged && !load.matched?.[facts.potId] ? [facts.potId] : []
      })
      return { ...load, matched: { ...load.matched, [potId]: { at, ...seen, after } } }
    }
    default: {
      const { kind } = event
      const { board, fills = fillsOf(table) } = load
      return { ...load, board: board ?? table.board, fills, readings, [DONE[kind]]: when, deeds: deeds(kind) }
    }
  }
}

/** Where a thing is to stand. What one phone has loaded and another puts elsewhere stands in both, until it is said. */
function stood(
  event: Extract<OfLoad, { kind: 'placed' }>,
  from: string | undefined,
  before: Standing | undefined,
): Standing {
  const { column, storey, xMm, yMm, what, potId, slab, pinned } = event
  const here: InKiln = { column, storey, xMm, yMm }
  const place = before?.place
  if (before && place !== undefined && !event.settled)
    return before.from === from ? before : { ...before, orHere: here }
  return {
    ...here,
    what,
    slab,
    ...(potId === undefined ? {} : { potId }),
    ...(pinned ? { pinned } : {}),
    ...(from === undefined ? {} : { from }),
    ...(before && place !== undefined && levelKey(before) === levelKey(here) ? { place } : {}),
  }
}
