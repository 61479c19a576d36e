/**
 * Cooling of a kiln after it was switched off, from its own readings. The excess over the room falls at a rate that grows
 * with itself: d(theta)/dt = -r (theta/200)^s theta. s = 0 is Newton's law, 1/4 natural convection, 3 radiation far above
 * the room (U. Besson, Eur. J. Phys. 31 (2010) 1107). Which of them a kiln is nearest to, its readings say.
 */
import { inRange } from '../check.ts'
import type { Band } from '../contract.ts'
import { bandOf, type Likelihood } from '../numeric/spread.ts'
import type { LogPoint } from './firing.ts'

/** Excess over the room at which the rate is r, K. */
const REFERENCE_K = 200
/** Hotter than this a kiln cools by other ways, through its hot lining: not used, degC. Assumption. */
export const USED_BELOW_C = 600
/** What is thought of a kiln that nobody has read: ln of the rate at the reference, 1/h, and the exponent. Assumptions. */
const LN_RATE = { mean: Math.log(0.16), sd: 0.6 }
const EXPONENT = { mean: 0.07, sd: 0.15 }
/** The same kiln with another load: how far ln of its rate may be from its earlier coolings'. Assumption. */
const LN_RATE_AGAIN_SD = 0.25
/** The room about the kiln, against the air that was noted, K. Assumption. */
const ROOM_SD_K = 3
/** A thermometer against itself, K, and how far a fall keeps to the law, part of it. Assumptions. */
const READING_SD_K = 1.5
const LAW_SD = 0.05
/** Spread of what is left: some by itself, more the further below the last reading, per e-fold. Tuned on drawn linings. */
const LEFT_SD = 0.02
const LEFT_SD_PER_FOLD = 0.033
/** Nothing is told beyond, min. */
const HORIZON_MIN = 96 * 60
/** A fall smaller than this between first and last reading used says nothing, K: the thermometer stands still. */
const LEAST_FALL_K = 5
/** Points of the grid a side, over so many sds. */
const NODES = { rate: 41, exponent: 9, room: 5 }
const SDS = 2.5

/** Excess over the room, K, `hours` after it was `excessK`, at a rate of `rate` 1/h at 200 K and exponent `s`. */
export function excessAfterK(excessK: number, rate: number, s: number, hours: number): number {
  if (s === 0) return excessK * Math.exp(-rate * hours)
  return excessK * (1 + s * rate * (excessK / REFERENCE_K) ** s * hours) ** (-1 / s)
}

/** Hours from one excess over the room to a smaller one, both K. */
export function hoursToExcess(fromK: number, toK: number, rate: number, s: number): number {
  const folds = Math.log(fromK / toK)
  if (s === 0) return folds / rate
  return Math.expm1(s * folds) / (s * rate * (fromK / REFERENCE_K) ** s)
}

interface Node {
  readonly rate: number
  readonly s: number
  readonly roomC: number
  readonly weight: number
}

const spread = (n: number, mean: number, sd: number): { at: number; z: number }[] =>
  Array.from({ length: n }, (_, i) => {
    const z = (2 * i) / (n - 1) - 1
    return { at: mean + z * SDS * sd, z: z * SDS }
  })

/**
 * How likely each kind of kiln is, given the falls from reading to reading; `lnRate` is what its earlier coolings came to.
 */
function weigh(readings: readonly LogPoint[], roomC: number, lnRate?: number): Node[] {
  const nodes: Node[] = []
  let most = Number.NEGATIVE_INFINITY
  const [mean, sd] = lnRate === undefined ? [LN_RATE.mean, LN_RATE.sd] : [lnRate, LN_RATE_AGAIN_SD]
  for (const rate of spread(NODES.rate, mean, sd))
    for (const exponent of spread(NODES.exponent, EXPONENT.mean, EXPONENT.sd)) {
      // No kiln cools the slower the hotter it is.
      const s = Math.max(0, exponent.at)
      for (const room of spread(NODES.room, roomC, ROOM_SD_K)) {
        let ln = -(rate.z ** 2 + exponent.z ** 2 + room.z ** 2) / 2
        for (let i = 1; i < readings.length; i++) {
          const [a, b] = [readings[i - 1]!, readings[i]!]
          const before = a.tempC - room.at
          const fall = before - excessAfterK(before, Math.exp(rate.at), s, (b.atMin - a.atMin) / 60)
          const sd = Math.hypot(READING_SD_K * Math.SQRT2, LAW_SD * fall)
          ln -= ((a.tempC - b.tempC - fall) / sd) ** 2 / 2 + Math.log(sd)
        }
        most = Math.max(most, ln)
        nodes.push({ rate: Math.exp(rate.at), s, roomC: room.at, weight: ln })
      }
    }
  return nodes.map((node) => ({ ...node, weight: Math.exp(node.weight - most) }))
}

/** Cooling readings that tell of what is left: below 600 degC, falling to the last. Fewer than two say nothing. */
export function coolingReadings(log: readonly LogPoint[]): readonly LogPoint[] {
  const hottest = log.reduce((top, { tempC }, i) => (tempC >= log[top]!.tempC ? i : top), 0)
  return log.slice(hottest).filter(({ tempC }) => tempC < USED_BELOW_C)
}

const stands = (used: readonly LogPoint[]): boolean =>
  used.length < 2 || used[0]!.tempC - used.at(-1)!.tempC < LEAST_FALL_K

/**
 * ln of the rate at 200 K above the room, 1/h, that a cooling came to: what the next one of the same kiln begins from. Null
 * where it tells nothing: see {@link cooledMin}.
 * @throws RangeError as {@link cooledMin}.
 */
export function lnRateOf(log: readonly LogPoint[], roomC: number): number | null {
  inRange('roomC', roomC, -10, 50)
  const used = coolingReadings(log)
  if (stands(used)) return null
  const nodes = weigh(used, roomC)
  const all = nodes.reduce((sum, { weight }) => sum + weight, 0)
  return nodes.reduce((sum, { rate, weight }) => sum + Math.log(rate) * weight, 0) / all
}

/**
 * Minutes after the last reading until the kiln's thermometer shows `targetC`; a bound that lies beyond 96 h is
 * `Infinity`. Null where nothing can be told: fewer than two readings below 600 degC (one, with `lnRate`), a thermometer
 * that stands still, or a target that is no warmer than the room.
 * @param log readings in the order of time, degC and minutes.
 * @param roomC air about the kiln, -10 to 50 degC.
 * @param targetC 20 to 400 degC.
 * @param lnRate what earlier coolings of this kiln came to, see {@link lnRateOf}.
 * @throws RangeError naming field, value and allowed range.
 */
export function cooledMin(
  log: readonly LogPoint[],
  roomC: number,
  targetC: number,
  lnRate?: number,
): Band | null {
  inRange('roomC', roomC, -10, 50)
  inRange('targetC', targetC, 20, 400)
  const used = coolingReadings(log)
  const last = used.at(-1)
  const alone = lnRate !== undefined && used.length === 1
  if (!last || (stands(used) && !alone)) return null
  if (targetC <= roomC + SDS * ROOM_SD_K) return null
  if (last.tempC <= targetC) return { lower: 0, likely: 0, upper: 0 }
  const left: Likelihood[] = weigh(used, roomC, lnRate).map(({ rate, s, roomC: room, weight }) => ({
    minutes: 60 * hoursToExcess(last.tempC - room, targetC - room, rate, s),
    weight,
  }))
  const folds = Math.log((last.tempC - roomC) / (targetC - roomC))
  const { lower, likely, upper } = bandOf(left, LEFT_SD + LEFT_SD_PER_FOLD * folds, 0)
  const withinHorizon = (min: number) => (min > HORIZON_MIN ? Number.POSITIVE_INFINITY : min)
  return { lower: withinHorizon(lower), likely: withinHorizon(likely), upper: withinHorizon(upper) }
}

/** The temperature at which the next reading narrows the hour of `targetC` most, degC: half of the folds from now. */
export function nextReadingC(lastC: number, roomC: number, targetC: number): number {
  return roomC + Math.sqrt((lastC - roomC) * (targetC - roomC))
}
