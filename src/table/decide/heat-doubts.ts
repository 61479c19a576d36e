/** What a kiln was hardly read or done at is asked about before it is kept. Temperatures in degC, times table time, ms. */
import type { Units } from '../entry/measure.ts'
import { mayHaveReached } from '../firing/highest.ts'
import { earlierRate, roomOf } from '../load/cool.ts'
import { coneDownAt, LID_C } from '../load/loads.ts'
import { lookFromC } from '../load/look-from.ts'
import { STEAMED_C } from '../load/steam.ts'
import type { Refusal } from '../model/action.ts'
import { LIMITS, outOfRange } from '../model/limits.ts'
import type { HeatReading, LoadState } from '../model/load-state.ts'
import type { Table } from '../model/state.ts'
import { atKilnRefusal as not } from './decide-stand.ts'

type Reading = Pick<HeatReading, 'at' | 'tempC'>

const MIN_MS = 60_000
/** What is over the room falls by no more than this part of itself an hour, the lid shut. Assumption. */
const SHUT_PER_H = 1
/** The same of a kiln that is on, hotter than any that steams: its vent is shut, and power or flame only turned down. Assumption. */
const LIT_PER_H = 0.5
/** The same of an open lid or spy hole. Assumption. */
const OPEN_PER_H = 2
/** A kiln that cooled before falls no faster than so many times as it did then. Assumption. */
const TIMES_OWN = 3
/** Above it no cooling is known: it is the radiation's. degC. */
const KNOWN_BELOW_C = 600
/** So much higher than a kiln that is off can be is no wandering of its thermometer, whichever was said first, K. Assumption. */
const RISEN_C = 10
/** A rise that is not read becomes no faster than so many times the last that was. Assumption. */
const FASTER = 2
/** Kilns fall no slower than by this part of what they are over the room, an hour. Assumption. */
const SLOW_PER_H = 0.1
const ROOM_C = 20
/** Until it is off a kiln that nobody read rose by no less, K an hour. Assumption. */
const LEAST_RISE = 60
/** In a fire, and in a fall, a thermometer may be off by so much from one look to the next, K: elements and draughts are near it. */
const READING_SLACK_C = 30

/** What a lid cannot be lifted at, or hardly: asked about as readings are. */
export function oddAtLid(
  table: Table,
  load: LoadState,
  at: number,
  action: { readonly tempC: number; readonly sure?: boolean },
): Refusal | undefined {
  const wrong = overRange(table, load, at, action)
  if (wrong || action.sure) return wrong
  const odd = unlikely(table, load, at, action.tempC)
  if (odd) return odd
  const asC = inOtherUnit(action.tempC, table.settings.units)
  if (action.tempC <= LID_C || asC > LID_C || unlikely(table, load, at, asC)) return undefined
  // Too hot for a lid, and as the other unit it would be right: asked, unless the readings have the kiln so hot.
  const { litAt = at, offAt = at } = load
  const last = load.readings.findLast((reading) => reading.at <= at && reading.at > offAt)
  const hours = (at - (last?.at ?? offAt)) / (60 * MIN_MS)
  const overC = last ? last.tempC - ROOM_C : (LEAST_RISE * (offAt - litAt)) / (60 * MIN_MS)
  const isC = ROOM_C + overC * Math.exp(-(last ? SLOW_PER_H : SHUT_PER_H) * hours)
  return isC <= LID_C ? not('hot-lid', { value: tenth(action.tempC), asC: tenth(asC) }) : undefined
}

/** Two readings of one minute are one too many. */
export const twice = ({ readings }: LoadState, at: number): Refusal | undefined =>
  readings.some((reading) => Math.floor(reading.at / MIN_MS) === Math.floor(at / MIN_MS))
    ? not('same-minute')
    : undefined

/** The most that a kiln has come to at `at` when it was read so before: since then it may have risen on, and faster. */
function climbedC(litAt: number, readings: readonly Reading[], at: number): number {
  const read = readings.filter((each) => each.at <= at)
  const [before, earlier = { at: litAt, tempC: ROOM_C }] = [read.at(-1), read.at(-2)]
  const mostPerMs = LIMITS.riseCPerH.most / (60 * MIN_MS)
  // Unread it may be warm from the fire before.
  if (!before) return ROOM_C + READING_SLACK_C + mostPerMs * (at - litAt)
  const ms = before.at - earlier.at
  const perMs = ms > 0 ? (FASTER * Math.max(0, before.tempC - earlier.tempC)) / ms : mostPerMs
  return before.tempC + perMs * (at - before.at)
}

/** A kiln that is off rises no more: a reading after it that is higher is asked about. */
export function roseAfter({ readings, litAt }: LoadState, at: number): Refusal | undefined {
  let fromC = climbedC(litAt ?? at, readings, at)
  for (const { at: readAt, tempC } of readings) {
    if (readAt <= at) continue
    if (tempC > fromC + RISEN_C) return not('rose', { value: tenth(tempC) })
    fromC = tempC
  }
  return undefined
}

/** Off though neither its cone nor a reading says that it was fired. */
export function unfired(load: LoadState, at: number): Refusal | undefined {
  const { firing, readings, litAt = at } = load
  const from = lookFromC(load)
  if (coneDownAt(load) !== undefined || from === undefined) return undefined
  const last = readings.findLast((reading) => reading.at <= at)
  const unread = { number: firing.cone, onMin: Math.max(0, Math.round((at - litAt) / MIN_MS)) }
  if (!last) return not('unfired', unread)
  const hours = (at - last.at) / (60 * MIN_MS)
  const isFired =
    last.tempC + FASTER * firing.riseCPerH * hours >= from ||
    readings.some((each) => each.at <= at && each.tempC >= from)
  if (isFired) return undefined
  // What may have been up and come down since says as little as if nothing had been read.
  return not(
    'unfired',
    mayHaveReached(load, from, at) ? unread : { number: firing.cone, value: tenth(last.tempC) },
  )
}

/** What the number typed would be in the other unit, degC. */
const inOtherUnit = (tempC: number, units: Units): number =>
  units === 'us' ? tempC * 1.8 + 32 : (tempC - 32) / 1.8

const tenth = (tempC: number): number => Math.round(tempC * 10) / 10

const askedUnit = (tempC: number, asC: number): Refusal =>
  not('fahrenheit', { value: tenth(tempC), asC: tenth(asC) })

/** More than any kiln has: asked about where the other unit would fit, else refused with the range. */
export function overRange(
  table: Table,
  load: LoadState,
  at: number,
  { tempC, sure }: { readonly tempC: number; readonly sure?: boolean },
): Refusal | undefined {
  const wrong = outOfRange('readC', tempC)
  const asC = inOtherUnit(tempC, table.settings.units)
  const asked = wrong && !sure && !outOfRange('readC', asC) && !unlikely(table, load, at, asC)
  return asked ? askedUnit(tempC, asC) : wrong
}

/** The part of what is over the room that a kiln may lose in an hour of its cooling, from `fromC` on until `to`. */
function mostPerH(table: Table, load: LoadState, fromC: number, to: number): number {
  const { bungAt, offAt, openedAt } = load
  if (to <= (offAt ?? to) && fromC > STEAMED_C) return LIT_PER_H
  if (to > Math.min(bungAt ?? to, openedAt ?? to)) return OPEN_PER_H
  const own = fromC > KNOWN_BELOW_C ? undefined : earlierRate(table, load, roomOf(table))
  return own === undefined ? SHUT_PER_H : Math.min(SHUT_PER_H, TIMES_OWN * Math.exp(own))
}

/** What no kiln does between two looks is asked about: the other unit, where that would fit, else the number. */
export function unlikely(table: Table, load: LoadState, at: number, tempC: number): Refusal | undefined {
  const { readings, litAt, offAt } = load
  const hours = (from: number, to: number): number => Math.max(0, to - from) / (60 * MIN_MS)
  const falls = (fromC: number, toC: number, from: number, to: number): boolean => {
    const overC = Math.max(0, fromC - ROOM_C)
    const leastC = ROOM_C + overC * Math.exp(-mostPerH(table, load, fromC, to) * hours(from, to))
    return toC >= Math.min(fromC, leastC) - READING_SLACK_C
  }
  const between = (fromC: number, toC: number, from: number, to: number): boolean => {
    if (toC < fromC) return falls(fromC, toC, from, to)
    if (offAt === undefined || to <= offAt)
      return toC - fromC <= READING_SLACK_C + LIMITS.riseCPerH.most * hours(from, to)
    if (from >= offAt) return toC - fromC <= RISEN_C
    const until = readings.filter((each) => each.at < from)
    const known = before || from !== litAt ? [...until, { at: from, tempC: fromC }] : until
    return toC <= climbedC(litAt ?? from, known, offAt) + RISEN_C
  }
  const before = readings.findLast((reading) => reading.at < at)
  const next = readings.find((reading) => reading.at > at)
  const fits = (value: number): boolean =>
    (before
      ? between(before.tempC, value, before.at, at)
      : litAt === undefined || between(ROOM_C, value, litAt, at)) &&
    (!next || between(value, next.tempC, at, next.at))
  if (fits(tempC)) return undefined
  const asC = inOtherUnit(tempC, table.settings.units)
  return fits(asC) ? askedUnit(tempC, asC) : not('leap', { value: tenth(tempC) })
}
