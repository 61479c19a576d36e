import {
  forGlaze,
  type Lesson,
  type Look,
  learn,
  likelyGainG,
  type Observation,
  type Weighing,
} from '../../engine/wait/learn.ts'
import { type Learned, UNLEARNED, unlearnedOn } from '../../engine/wait/learned.ts'
import { hasOverlap } from '../model/halves.ts'
import type { PotState, Table } from '../model/state.ts'
import { factsDipped } from '../model/uses.ts'
import { historyWith, MIN_MS } from './pot-history.ts'
import { bodyOf } from './wall-inputs.ts'

/** Observations beyond the latest so many no longer move the estimate much, and a phone must answer at once. */
const LESSONS_USED = 24

/** Something that was seen at the table and teaches its waits. */
export interface Seen {
  readonly potId: string
  /** Glaze of the coat it tells of. */
  readonly bucketId: string
  /** For `lesson-dropped`. */
  readonly lessonId: string
  /** Moment of its last look, table time ms. */
  readonly at: number
  readonly observation: Observation
}

interface Kept {
  readonly key: readonly unknown[]
  readonly seen: readonly Seen[]
}

const kept = new WeakMap<PotState, Kept>()

const alike = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, k) => one === b[k])

/** All that one pot's touches and weighings say, dropped ones too. The same objects while nothing about it changes. */
export function seenOn(table: Table, pot: PotState): readonly Seen[] {
  if (pot.touches.length === 0 && pot.weighings.length === 0) return []
  const last = Math.max(...[...pot.touches, ...pot.weighings].map(({ at }) => at))
  const air = table.air.filter((spell) => spell.at <= last)
  const key = [table.board, table.settings, ...air, ...pot.dips.map((d) => factsDipped(table, d))]
  const before = kept.get(pot)
  if (before && alike(before.key, key)) return before.seen
  const then: Table = { ...table, air: air.length > 0 ? air : table.air }
  const seen = [...looksOf(then, pot), ...weighingsOf(then, pot)]
  kept.set(pot, { key, seen })
  return seen
}

/** One dip gives one look, from its last *not yet* to its first *dry*. */
function looksOf(table: Table, pot: PotState): Seen[] {
  return pot.dips.flatMap((dip, i): Seen[] => {
    const touches = pot.touches.filter((touch) => touch.dipId === dip.dipId)
    const damp = touches.findLast((touch) => !touch.dry)
    const dry = touches.find((touch) => touch.dry)
    const last = dry ?? damp
    if (!last) return []
    const { pot: wall, events, air0 } = historyWith(table, pot, pot.dips.slice(0, i + 1))
    const look: Look = {
      kind: 'look',
      id: dip.dipId,
      of: table.settings.readyMeans === 'thirsty' ? 'thirsty' : 'touch',
      pot: wall,
      events,
      air0,
      ...(damp ? { dampMin: damp.at / MIN_MS } : {}),
      ...(dry ? { dryMin: dry.at / MIN_MS } : {}),
    }
    return [seenAs(pot, dip, dip.dipId, last.at, look)]
  })
}

/**
 * Weighings of a pot whose bisque was weighed. Half and half, a pot weighs as neither half is computed: left out. So is one
 * whose bisque came damp: nobody knows how much of that water its first weight held.
 */
function weighingsOf(table: Table, pot: PotState): Seen[] {
  const { bisqueG } = pot
  if (bisqueG === undefined || pot.damp) return []
  return pot.weighings.flatMap((reading): Seen[] => {
    const dips = pot.dips.filter((dip) => dip.outAt <= reading.at)
    const last = dips.at(-1)
    if (!last || hasOverlap(table, pot, dips)) return []
    const weighing: Weighing = {
      kind: 'weighing',
      id: `weighed ${reading.at}`,
      ...historyWith(table, pot, dips),
      atMin: reading.at / MIN_MS,
      gainG: reading.grams - bisqueG,
    }
    return [seenAs(pot, last, weighing.id, reading.at, weighing)]
  })
}

/** What a weighed pot may weigh at table time `now`, ms, whole grams; undefined where its bisque or its coats are not known. */
export function likelyGrams(
  table: Table,
  pot: PotState,
  now: number,
): { least: number; most: number } | undefined {
  const { bisqueG, dips } = pot
  if (bisqueG === undefined || pot.damp || dips.length === 0 || hasOverlap(table, pot, dips)) return undefined
  const { least, most } = likelyGainG({ ...historyWith(table, pot, dips), atMin: now / MIN_MS })
  return { least: Math.floor(bisqueG + least), most: Math.ceil(bisqueG + most) }
}

const seenAs = (
  pot: PotState,
  dip: PotState['dips'][number],
  lessonId: string,
  at: number,
  observation: Observation,
): Seen => ({ potId: pot.facts.potId, bucketId: dip.bucketId, lessonId, at, observation })

/** What teaches this room now, oldest first. */
export function lessonsUsed(table: Table): readonly Seen[] {
  return Object.values(table.pots)
    .flatMap((pot) => seenOn(table, pot).filter(({ lessonId }) => !pot.dropped?.includes(lessonId)))
    .sort((a, b) => a.at - b.at)
    .slice(-LESSONS_USED)
}

/** Runs what was seen through the balance, ahead of a lesson that learns from it and others. */
export const runOf = ({ observation }: Seen): void => void learn([observation])

interface Taught {
  /** Asked of for every pot of a table, and the same for all of them. */
  readonly table: Table | undefined
  readonly used: readonly Seen[]
  /** Before any of it, on the board's clay. */
  readonly start: Learned
  readonly room: Learned | Lesson
  readonly glazes: Map<string, Learned>
}

let taught: Taught = { table: undefined, used: [], start: UNLEARNED, room: UNLEARNED, glazes: new Map() }

function taughtBy(table: Table): Taught {
  if (taught.table === table) return taught
  const used = lessonsUsed(table)
  const start = unlearnedOn(bodyOf(table))
  if (!alike(taught.used, used) || taught.start.fillSd !== start.fillSd) {
    const room = learn(
      used.map(({ observation }) => observation),
      start,
    )
    taught = { table, used, start, room, glazes: new Map() }
  } else taught = { ...taught, table }
  return taught
}

/**
 * What this table's touches and weighings teach about its waits, recomputed from them: one that is taken back, or
 * dropped, is as if it had never been.
 */
export const lessonOf = (table: Table): Learned | Lesson => taughtBy(table).room

/**
 * The same for the coats of one glaze: what the others teach of the room, then its own. `without`: a look that is left
 * out, of a coat whose own wait it bounds.
 */
export function lessonFor(table: Table, bucketId: string, without?: string): Learned {
  const { used, start, room, glazes } = taughtBy(table)
  const left = without === undefined ? used : used.filter(({ lessonId }) => lessonId !== without)
  const key = left.length === used.length ? bucketId : JSON.stringify([bucketId, without])
  let lesson = glazes.get(key)
  if (!lesson) {
    const of = (own: boolean) =>
      left.filter((seen) => (seen.bucketId === bucketId) === own).map(({ observation }) => observation)
    const others = of(false)
    const from = others.length === 0 ? start : forGlaze(learn(others, start), start)
    lesson = from === start && left === used ? room : learn(of(true), from)
    glazes.set(key, lesson)
  }
  return lesson
}
