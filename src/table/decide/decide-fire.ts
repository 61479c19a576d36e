import type { TableEvent } from '../../../shared/events.ts'
import type { Units } from '../entry/measure.ts'
import { earlierRate, roomOf } from '../load/cool.ts'
import { LID_C } from '../load/loads.ts'
import type { Refusal } from '../model/action.ts'
import { coneEnds, isCone } from '../model/cone.ts'
import { LIMITS, outOfRange } from '../model/limits.ts'
import type { LoadAction } from '../model/load-action.ts'
import type { LoadState } from '../model/load-state.ts'
import { outOf } from '../model/range.ts'
import type { Table } from '../model/state.ts'
import { checked, firstWrong } from './check-entry.ts'
import type { Decision, HitStamp } from './decision.ts'

type FireAction = Extract<
  LoadAction,
  {
    do:
      | 'light'
      | 'hold-glass'
      | 'read-heat'
      | 'drop-reading'
      | 'see-cone'
      | 'pull-bung'
      | 'switch-off'
      | 'open-lid'
      | 'match'
  }
>

const MIN_MS = 60_000
/** What is over the room falls by no more than this part of itself an hour, the lid shut. Assumption. */
const SHUT_PER_H = 1
/** The same of an open lid or spy hole. Assumption. */
const OPEN_PER_H = 2
/** A kiln that cooled before falls no faster than so many times as it did then. Assumption. */
const TIMES_OWN = 3
/** Above it no cooling is known: it is the radiation's. degC. */
const KNOWN_BELOW_C = 600
/** So much higher than the reading before it is no wandering of the thermometer, K. Assumption. */
const RISEN_C = 10
/** A rise that is not read becomes no faster than so many times the last that was. Assumption. */
const FASTER = 2
/** Kilns fall no slower than by this part of what they are over the room, an hour. Assumption. */
const SLOW_PER_H = 0.1
const ROOM_C = 20
/** A thermometer may be off by so much from one look to the next, K. */
const READING_SLACK_C = 30

const not = (field: string, facts?: Refusal['facts']): Refusal => ({
  code: 'at-kiln',
  field,
  ...(facts ? { facts } : {}),
})

/** What is seen and done once a load is shut in. */
export function atFire(table: Table, load: LoadState, action: FireAction, stamp: HitStamp): Decision {
  const { loadId } = load
  if (action.do === 'drop-reading')
    return load.readings.some(({ id }) => id === action.readId)
      ? { events: [{ kind: 'reading-dropped', loadId, readId: action.readId }] }
      : { refusal: { code: 'nothing-to-do' } }
  if (action.do === 'match') {
    const { do: _do, ...seen } = action
    return checked(noMatch(table, load, action), { kind: 'matched', ...seen })
  }
  const now = stamp.at - table.skewMs
  const ago = action.agoMin ?? 0
  const at = now - ago * MIN_MS
  const late = action.agoMin === undefined || ago === 0 ? {} : { agoMin: ago }
  const since = (from: number | undefined): Refusal | undefined => backInTime(ago, now, from)
  const wrong = outOfRange('agoMin', ago)
  if (wrong) return { refusal: wrong }
  switch (action.do) {
    case 'light':
      return checked(load.litAt === undefined ? undefined : not('lit-already'), {
        kind: 'kiln-lit',
        loadId,
        ...late,
      })
    case 'hold-glass':
      return lit(load, since(load.litAt), { kind: 'glass-held', loadId, fogged: action.fogged, ...late })
    case 'read-heat': {
      const refusal =
        since(load.litAt) ??
        overRange(table, load, at, action) ??
        twice(load, at) ??
        (action.sure ? undefined : unlikely(table, load, at, action.tempC))
      return lit(load, refusal, { kind: 'heat-read', loadId, tempC: action.tempC, ...late })
    }
    case 'see-cone': {
      const { cone, is } = action
      const other = isCone(cone, load.firing.make) ? undefined : noCone(cone, load)
      return lit(load, other ?? since(load.litAt), { kind: 'cone-seen', loadId, cone, is, ...late })
    }
    case 'switch-off': {
      const refusal =
        (load.offAt === undefined ? since(load.litAt) : not('off-already')) ??
        (action.sure ? undefined : roseAfter(load, at))
      return lit(load, refusal, { kind: 'kiln-off', loadId, ...late })
    }
    case 'pull-bung':
      return checked(load.offAt === undefined ? not('not-off') : since(load.offAt), {
        kind: 'bung-pulled',
        loadId,
        ...late,
      })
    case 'open-lid': {
      const { tempC } = action
      const refusal =
        (load.offAt === undefined ? not('not-off') : undefined) ??
        (load.openedAt === undefined ? undefined : not('open-already')) ??
        since(load.offAt) ??
        (tempC === undefined ? undefined : oddAtLid(table, load, at, { ...action, tempC }))
      return checked(refusal, {
        kind: 'lid-opened',
        loadId,
        ...(tempC === undefined ? {} : { tempC }),
        ...late,
      })
    }
  }
}

/** A pot is told from the others of its load once the lid is up, and once. */
function noMatch(
  table: Table,
  load: LoadState,
  { potId, sureness, heightMm, widthMm }: Extract<FireAction, { do: 'match' }>,
): Refusal | undefined {
  if (load.openedAt === undefined) return not('not-open')
  const facts = table.pots[potId]?.facts
  if (!facts || !(load.things[potId] ?? load.things[facts.lidOf ?? ''])) return { code: 'unknown-pot' }
  if (load.matched?.[potId]) return not('matched-already', { number: facts.number })
  const sizes = [
    ['heightMm', heightMm],
    ['bellyMm', widthMm],
  ] as const
  return firstWrong(sizes) ?? outOf({ least: 0, most: 1 }, 'sureness', sureness)
}

function noCone(cone: string, { firing }: LoadState): Refusal {
  const [least, most] = coneEnds(firing.make)
  return { code: 'not-a-cone', field: 'cone', facts: { value: cone, least, most } }
}

/** What a lid cannot be lifted at, or hardly: asked about as readings are. */
function oddAtLid(
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
  const last = load.readings.findLast((reading) => reading.at <= at && reading.at > (load.offAt ?? 0))
  const hours = (at - (last?.at ?? 0)) / (60 * MIN_MS)
  const slowC = last ? ROOM_C + (last.tempC - ROOM_C) * Math.exp(-SLOW_PER_H * hours) : 0
  return slowC <= LID_C ? not('hot-lid', { value: tenth(action.tempC), asC: tenth(asC) }) : undefined
}

const lit = (load: LoadState, refusal: Refusal | undefined, ...events: TableEvent[]): Decision =>
  checked(load.litAt === undefined ? not('not-lit') : refusal, ...events)

/** Before what has to come first: it goes back in time. */
function backInTime(ago: number, now: number, from: number | undefined): Refusal | undefined {
  if (from === undefined || now - ago * MIN_MS >= from) return undefined
  const most = Math.max(0, Math.floor((now - from) / MIN_MS))
  return { code: 'out-of-range', field: 'agoMin', facts: { value: ago, least: LIMITS.agoMin.least, most } }
}

/** Two readings of one minute are one too many. */
const twice = ({ readings }: LoadState, at: number): Refusal | undefined =>
  readings.some((reading) => Math.floor(reading.at / MIN_MS) === Math.floor(at / MIN_MS))
    ? not('same-minute')
    : undefined

/** A kiln that is off rises no more: a reading after it that is higher is asked about. */
function roseAfter({ readings, litAt }: LoadState, at: number): Refusal | undefined {
  const known = [{ at: litAt ?? at, tempC: ROOM_C }, ...readings.filter((each) => each.at <= at)]
  const [earlier, before = { at, tempC: ROOM_C }] = [known.at(-2), known.at(-1)]
  const ms = earlier ? before.at - earlier.at : 0
  // Until it was off it may have risen on, and faster.
  const perMs =
    earlier && ms > 0
      ? (FASTER * Math.max(0, before.tempC - earlier.tempC)) / ms
      : LIMITS.riseCPerH.most / (60 * MIN_MS)
  let fromC = before.tempC + perMs * (at - before.at)
  for (const { at: readAt, tempC } of readings) {
    if (readAt <= at) continue
    if (tempC > fromC + RISEN_C) return not('rose', { value: tenth(tempC) })
    fromC = tempC
  }
  return undefined
}

/** What the number typed would be in the other unit, degC. */
const inOtherUnit = (tempC: number, units: Units): number =>
  units === 'us' ? tempC * 1.8 + 32 : (tempC - 32) / 1.8

const tenth = (tempC: number): number => Math.round(tempC * 10) / 10

const askedUnit = (tempC: number, asC: number): Refusal =>
  not('fahrenheit', { value: tenth(tempC), asC: tenth(asC) })

/** More than any kiln has: asked about where the other unit would fit, else refused with the range. */
function overRange(
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
  const { bungAt, openedAt } = load
  if (to > Math.min(bungAt ?? to, openedAt ?? to)) return OPEN_PER_H
  const own = fromC > KNOWN_BELOW_C ? undefined : earlierRate(table, load, roomOf(table))
  return own === undefined ? SHUT_PER_H : Math.min(SHUT_PER_H, TIMES_OWN * Math.exp(own))
}

/** What no kiln does between two looks is asked about: the other unit, where that would fit, else the number. */
function unlikely(table: Table, load: LoadState, at: number, tempC: number): Refusal | undefined {
  const { readings, litAt, offAt } = load
  const hours = (from: number, to: number): number => Math.max(0, to - from) / (60 * MIN_MS)
  const falls = (fromC: number, toC: number, from: number, to: number): boolean => {
    const overC = Math.max(0, fromC - ROOM_C)
    const leastC = ROOM_C + overC * Math.exp(-mostPerH(table, load, fromC, to) * hours(from, to))
    return toC >= Math.min(fromC, leastC) - READING_SLACK_C
  }
  const between = (fromC: number, toC: number, from: number, to: number): boolean => {
    if (toC < fromC) return falls(fromC, toC, from, to)
    const most = offAt !== undefined && to > offAt ? 0 : LIMITS.riseCPerH.most
    return toC - fromC <= READING_SLACK_C + most * hours(from, to)
  }
  const before = readings.findLast((reading) => reading.at < at)
  const next = readings.find((reading) => reading.at > at)
  const fits = (value: number): boolean =>
    (before
      ? between(before.tempC, value, before.at, at)
      : litAt === undefined || offAt !== undefined || between(ROOM_C, value, litAt, at)) &&
    (!next || between(value, next.tempC, at, next.at))
  if (fits(tempC)) return undefined
  const asC = inOtherUnit(tempC, table.settings.units)
  return fits(asC) ? askedUnit(tempC, asC) : not('leap', { value: tenth(tempC) })
}
