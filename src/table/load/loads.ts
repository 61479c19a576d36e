import type { Column } from '../../../shared/load.ts'
import type { FiringFacts } from '../../../shared/nouns.ts'
import { WARMING_MIN } from '../../engine/kiln/nouns.ts'
import { conesOf, USUAL_CONES } from '../../engine/melt/cones.ts'
import {
  type ConeSeen,
  type HeatReading,
  type LevelState,
  type LoadState,
  levelKey,
  type Standing,
} from '../model/load-state.ts'
import type { PotState, Table } from '../model/state.ts'

/** Loads, the latest begun first. */
export const loadsOf = (table: Table): readonly LoadState[] =>
  Object.values(table.loads ?? {}).toSorted((a, b) => b.begunAt - a.begunAt)

/** The load that a pot stands in, the latest where it is in several. */
export const loadOf = (table: Table, potId: string): LoadState | undefined =>
  loadsOf(table).find(({ things }) => things[potId] !== undefined)

/** A load whose fire is on, or that cools with its lid shut. */
export const isHot = ({ litAt, openedAt }: LoadState): boolean =>
  litAt !== undefined && openedAt === undefined

/** Levels that something stands on or that are loaded, and those below them, from below. */
export function levelsOf(load: LoadState): readonly LevelState[] {
  const used = new Set(Object.values(load.things).map(levelKey))
  const top = (column: Column): number =>
    Math.max(
      0,
      ...Object.values(load.levels)
        .filter(
          (level) => level.column === column && (level.loadedAt !== undefined || used.has(levelKey(level))),
        )
        .map(({ storey }) => storey),
    )
  return Object.values(load.levels)
    .filter((level) => level.storey <= top(level.column))
    .sort((a, b) => a.number - b.number)
}

/** Whether a level and all below it in its column are loaded. */
export const isBuilt = (load: LoadState, { column, storey }: LevelState): boolean =>
  Array.from({ length: storey }, (_, i) => load.levels[levelKey({ column, storey: i + 1 })]).every(
    (level) => level?.loadedAt !== undefined,
  )

/** What stands on a level, with its key. */
export const thingsOn = (
  load: LoadState,
  level: { readonly column: Column; readonly storey: number },
): readonly (readonly [string, Standing])[] =>
  Object.entries(load.things).filter(([, thing]) => levelKey(thing) === levelKey(level))

/** Pots of a load that are still on the table. */
export const potsIn = (table: Table, load: LoadState): readonly PotState[] =>
  Object.values(load.things).flatMap(({ potId }) => {
    const pot = potId === undefined ? undefined : table.pots[potId]
    return pot && !pot.gone ? [pot] : []
  })

/** Degrees at which the lid may be lifted, and pots taken out. Common practice, no source; the manual comes first. */
export const LID_C = 120
export const UNLOAD_C = 60

/** Water boils: a kiln that candles stays below, degC. */
export const CANDLED_C = 100
/** A glass that stays clear so often, so far apart, means dry. Common practice, no source. */
export const CLEAR_TWICE_MS = 20 * 60_000

/** When the kiln is warm enough to steam and the glass begins to tell, table time, ms; undefined before it is on. */
export const glassTellsFrom = ({ litAt }: LoadState): number | undefined =>
  litAt === undefined ? undefined : litAt + WARMING_MIN * 60_000

/**
 * The cold glass at the spy hole stayed clear first at this moment, and has not fogged since; undefined where it has, or
 * was looked at before the kiln was warm alone.
 */
export function clearSince(load: LoadState): number | undefined {
  const { glass } = load
  const from = glassTellsFrom(load)
  const since = glass.slice(glass.findLastIndex(({ fogged }) => fogged) + 1)
  return from === undefined ? undefined : since.find(({ at }) => at >= from)?.at
}

/** It stayed clear twice, 20 minutes apart. */
export function isCandled(load: LoadState): boolean {
  const [first, last] = [clearSince(load), load.glass.at(-1)]
  return first !== undefined && last !== undefined && last.at - first >= CLEAR_TWICE_MS
}

/** Whether a load is candled first: as was said of it, of older records as the table has it. */
export const candled = (table: Table, { candle }: LoadState): boolean => candle ?? table.settings.candle

/** So long after the glass was looked at last the kiln has climbed, read or not. Assumption. */
export const CLIMBED_MS = 2 * 3_600_000

/**
 * Whether the glass still tells something: the kiln is on to candle, last read below boiling, and its glass not given up.
 * Who sees it fog after it was clear twice candles on.
 */
export function glassTells(table: Table, load: LoadState, now: number): boolean {
  const isLow = (load.readings.at(-1)?.tempC ?? 0) < CANDLED_C
  return candled(table, load) && isLow && !(isCandled(load) && now - lastLook(load) > CLIMBED_MS)
}
/** When anybody looked at the cold glass last, table time, ms; 0 for never. */
export const lastLook = ({ glass }: LoadState): number => glass.at(-1)?.at ?? 0

/** The last that was read since the kiln is off; a reading of the fire, or from before it, tells nothing of the cooling. */
export const lastCooling = ({ offAt, readings }: LoadState): HeatReading | undefined => {
  const last = readings.at(-1)
  return offAt !== undefined && last && last.at > offAt ? last : undefined
}

/** A kiln whose lid is up for so long is cold, read or not. Assumption. */
const OPEN_COLD_MS = 24 * 3_600_000

/** Once a lid was lifted off a hot kiln its pots are hotter than its thermometer: looks that far apart say it is cold. Our choice. */
const COLD_TWICE_MS = 20 * 60_000

/**
 * A load whose lid is up can be unloaded: its last reading says so, and where the lid was lifted hot another before it.
 * `again`: when that second look is due, table time, ms.
 */
export function coldness(load: LoadState): { readonly cold: boolean; readonly again?: number } {
  const { offAt, openedAt, readings } = load
  const last = lastCooling(load)
  if (openedAt === undefined || offAt === undefined || !last || last.tempC > UNLOAD_C) return { cold: false }
  // Nothing read before the lid was up: it may have been lifted hot.
  const atLid = readings.findLast(({ at }) => at > offAt && at <= openedAt)
  if (atLid && atLid.tempC <= LID_C) return { cold: true }
  const first = readings.slice(readings.findLastIndex(({ tempC }) => tempC > UNLOAD_C) + 1)[0] ?? last
  const again = first.at + COLD_TWICE_MS
  return last.at >= again ? { cold: true } : { cold: false, again }
}

/** A load that is hot, or open and not cold enough to unload: it is still to be read. `now`: table time, ms. */
export const isWarm = (load: LoadState, now: number): boolean =>
  isHot(load) || (load.openedAt !== undefined && now - load.openedAt < OPEN_COLD_MS && !coldness(load).cold)

/** Why a lid is not to be lifted yet: the kiln is too hot by its last reading, or nothing was read since it is off. */
export function lidWarning(load: LoadState): 'hot' | 'unread' | undefined {
  const last = load.readings.at(-1)
  if (last && last.tempC > LID_C) return 'hot'
  return lastCooling(load) ? undefined : 'unread'
}

/** The first look at a cone that lay, of those since it stood or bent last; undefined where it still does. */
export function fallOf({ cones }: LoadState, cone: string): ConeSeen | undefined {
  const looks = cones.filter((look) => look.cone === cone)
  return looks[looks.findLastIndex(({ is }) => is !== 'down' && is !== 'flat') + 1]
}

/** Labels of the series that a firing's cones are of, coolest first. */
export const seriesOf = ({ make }: FiringFacts): readonly string[] =>
  conesOf(make, make === 'american' ? USUAL_CONES.mounting : 'unstated')

/**
 * The cone by which the wanted heat was reached, and when, table time, ms: the wanted one lies by its last looks, or one
 * that falls after it does, unless the wanted one was seen to stand or bend since. `over`: one that falls after it lies.
 */
export function coneDown(
  load: LoadState,
): { readonly cone: string; readonly at: number; readonly over: boolean } | undefined {
  const { cone: wanted } = load.firing
  const series = seriesOf(load.firing)
  const own = fallOf(load, wanted)
  const looked = load.cones.findLast(({ cone }) => cone === wanted)
  const upAt = own || !looked ? -Infinity : looked.at
  const hotter = new Set(
    load.cones.map(({ cone }) => cone).filter((cone) => series.indexOf(cone) > series.indexOf(wanted)),
  )
  const since = { ...load, cones: load.cones.filter(({ at }) => at > upAt) }
  const falls = series.includes(wanted) ? [...hotter].flatMap((cone) => fallOf(since, cone) ?? []) : []
  const [beyond] = falls.sort((one, other) => one.at - other.at)
  const by = own ?? beyond
  return by && { cone: by.cone, at: by.at, over: beyond !== undefined }
}

/** When the load was seen to have reached its cone, table time, ms; undefined where it was not. */
export const coneDownAt = (load: LoadState): number | undefined => coneDown(load)?.at

/** The last look at the wanted cone, where it stood. */
export function standsOf({ cones, firing }: LoadState): ConeSeen | undefined {
  const last = cones.findLast(({ cone }) => cone === firing.cone)
  return last?.is === 'standing' ? last : undefined
}

/** The first look at which the wanted cone bent, with the last before at which it stood; undefined unless it bends still. */
export function bendOf({
  cones,
  firing,
}: LoadState): { at: number; stoodAt: number | undefined } | undefined {
  const looks = cones.filter(({ cone }) => cone === firing.cone)
  const from = looks.findLastIndex(({ is }) => is !== 'bending') + 1
  const [before, first] = [looks[from - 1], looks[from]]
  return first && { at: first.at, stoodAt: before?.is === 'standing' ? before.at : undefined }
}

/** Where a load stands, which is what its bar does next. Times are table time, ms. */
export type LoadStage =
  | { readonly is: 'propose' }
  | { readonly is: 'shelf'; readonly level: LevelState }
  | { readonly is: 'lid' }
  | { readonly is: 'light' }
  | { readonly is: 'candle' }
  | { readonly is: 'fire' }
  /** The cone may fall from now on. */
  | { readonly is: 'cone' }
  | { readonly is: 'hold'; readonly untilAt: number }
  | { readonly is: 'off' }
  | { readonly is: 'cool' }
  | { readonly is: 'open' }
  /** The lid is up; it cools to where pots can be taken out. */
  | { readonly is: 'unload'; readonly cold: boolean }

const MIN_MS = 60_000

/** The stage of a load at a moment; `coneFrom` is when its cone may fall at the earliest, where that can be told. */
export function stageOf(table: Table, load: LoadState, now: number, coneFrom?: number): LoadStage {
  if (load.litAt === undefined) {
    const levels = levelsOf(load)
    if (levels.length === 0) return { is: 'propose' }
    const level = levels.find(({ loadedAt }) => loadedAt === undefined)
    if (level) return { is: 'shelf', level }
    return load.shutAt === undefined ? { is: 'lid' } : { is: 'light' }
  }
  const last = lastCooling(load)
  if (load.openedAt !== undefined) return { is: 'unload', cold: coldness(load).cold }
  if (load.offAt !== undefined) return { is: last !== undefined && last.tempC <= LID_C ? 'open' : 'cool' }
  const down = coneDown(load)
  // Held on, it would go further still.
  if (down?.over) return { is: 'off' }
  if (down !== undefined) {
    const untilAt = down.at + load.firing.holdMin * MIN_MS
    return now < untilAt ? { is: 'hold', untilAt } : { is: 'off' }
  }
  if (bendOf(load)) return { is: 'cone' }
  if (!isCandled(load) && glassTells(table, load, now)) return { is: 'candle' }
  return { is: coneFrom !== undefined && now >= coneFrom ? 'cone' : 'fire' }
}
