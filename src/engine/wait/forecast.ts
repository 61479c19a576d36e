/** What a pot's coats come to and what its waits will be, from its events so far. */

import type {
  Air,
  Band,
  CoatThickness,
  Face,
  PotForecast,
  PotWall,
  WallEvent,
  ZoneForecast,
  ZoneName,
} from '../contract.ts'
import { bandOf, type Likelihood } from '../numeric/spread.ts'
import { floorInReach } from '../shape/neck.ts'
import { OF_SORPTIVITY } from '../wall/body.ts'
import type { Goal } from '../wall/drying.ts'
import {
  type Course,
  courseOf,
  fingered,
  finish,
  type Laid,
  type Piece,
  type Run,
  runPot,
} from '../wall/pot.ts'
import { filledBehind, otherSide } from '../wall/wall.ts'
import { FILL_NODES, KILN_SD, type Learned, TOUCH_SD } from './learned.ts'

/** Quantile of the standard normal at 0.95, for thickness that must not be told too low. */
const Z95 = 1.6448536269514722
/** Sd of ln(pick-up) of a glaze nobody has measured, its clay's suction apart: with that a factor of 1.5 at 95 %, a judgement. */
export const UNMEASURED_SD = 0.16

/** A face and when it is touch-dry, thirsty again: minutes after the last event of a run; negative if before it. */
export interface FaceDries {
  readonly piece: Piece
  readonly face: Face
  readonly touchMin: number
  readonly thirstyMin: number
}

/** The coated faces of a run, or all of them when none is coated. */
function moments(run: Run, sinceS: number): FaceDries[] {
  const all: FaceDries[] = []
  for (const piece of run.pieces)
    for (const face of ['outside', 'inside'] as const) {
      const side = piece.wall[face]
      if (side.coatMm > 0)
        all.push({
          piece,
          face,
          touchMin: (side.touchS - sinceS) / 60,
          thirstyMin: (side.thirstyS - sinceS) / 60,
        })
    }
  if (all.length > 0) return all
  const walls = run.pieces.filter(({ stretch }) => !stretch.base)
  return walls.map((piece) => ({
    piece,
    face: 'outside' as const,
    touchMin: (piece.wall.outside.touchS - sinceS) / 60,
    thirstyMin: (piece.wall.outside.thirstyS - sinceS) / 60,
  }))
}

/** New air and a finger wet nothing. */
export const wets = ({ kind }: WallEvent): boolean => kind !== 'air' && kind !== 'dry'

/** When the waits began: the last event that wetted the pot, seconds since the first event. */
export function wettedS(course: Course): number {
  let last = 0
  for (const event of course.events) if (wets(event)) last = (event.atMin - course.originMin) * 60
  return last
}

export interface Waits {
  readonly touchMin: number
  readonly thirstyMin: number
  readonly kilnMin: number
  /** The faces that wait longest to be touch-dry and to be thirsty. */
  readonly slowest: FaceDries | undefined
  readonly thirstLast: FaceDries | undefined
  /** The face that waits longest to be touch-dry of those a finger reaches, and its minutes. */
  readonly touched: FaceDries | undefined
  readonly touchedMin: number
}

/** Of faces the slowest that a finger reaches. */
function touchedOf(run: Run, faces: readonly FaceDries[]): FaceDries | undefined {
  return faces
    .filter(({ piece, face }) => fingered(run.course, piece, face))
    .reduce<FaceDries | undefined>((a, b) => (a && a.touchMin >= b.touchMin ? a : b), undefined)
}

/** Follows a run to `goal` and reads its waits off the slowest zone, minutes from the last wetting. Moves the run on. */
export function waitsOf(run: Run, goal: Goal): Waits {
  finish(run, goal)
  const sinceS = wettedS(run.course)
  let slowest: FaceDries | undefined
  let thirstLast: FaceDries | undefined
  const faces = moments(run, sinceS)
  for (const moment of faces) {
    if (slowest === undefined || moment.touchMin > slowest.touchMin) slowest = moment
    if (thirstLast === undefined || moment.thirstyMin > thirstLast.thirstyMin) thirstLast = moment
  }
  const kilnMin = run.pieces.reduce((max, { wall }) => Math.max(max, (wall.kilnS - sinceS) / 60), 0)
  const touchMin = Math.max(0, slowest?.touchMin ?? 0)
  const touched = touchedOf(run, faces)
  const touchedMin = Math.max(0, touched?.touchMin ?? 0)
  const thirstyMin = Math.max(0, thirstLast?.thirstyMin ?? 0)
  return { touchMin, thirstyMin, kilnMin, slowest, thirstLast, touched, touchedMin }
}

/**
 * Upper cast: the longest seconds of the zone, but no more than there was room for, and the upper pick-up. Upper film:
 * that of a thick slop as far as the wall sets none of it. So neither falls as a dip gets longer.
 */
function coatOf({ dip, gain, wetting, longestS }: Laid, sorptivitySd: number): CoatThickness {
  const sd = dip.slop.pickUpSd ?? Math.hypot(UNMEASURED_SD, OF_SORPTIVITY * sorptivitySd)
  const factor = Math.exp(Z95 * sd)
  const longer = wetting.seconds > 0 ? Math.sqrt(longestS / wetting.seconds) : 1
  const castMm = Math.max(gain.castMm, Math.min(gain.castMm * longer, gain.mostCastMm))
  const between = (thirstyMm: number, fullMm: number): number => fullMm + (thirstyMm - fullMm) * gain.setPart
  const likelyMm = gain.castMm + gain.filmMm
  const lowFilmMm = between(wetting.filmThirstyMm / factor, wetting.filmLowMm)
  const highFilmMm = between(
    wetting.filmThirstyMm * factor,
    Math.max(wetting.filmHighMm, wetting.filmThirstyMm * factor),
  )
  return {
    dipId: dip.id,
    glazeId: dip.glazeId,
    likelyMm,
    lowerMm: Math.min(likelyMm, gain.castMm / factor + Math.min(gain.filmMm, lowFilmMm)),
    upperMm: castMm * factor + Math.max(gain.filmMm, highFilmMm),
  }
}

/** A finger that found a coat wet: which wait it was asked of, and when, minutes on the clock of the events. */
export interface NotYet {
  readonly of: Exclude<Goal, 'kiln'>
  readonly atMin: number
}

const noSooner = (band: Band, than: Band): Band => ({
  lower: Math.max(band.lower, than.lower),
  likely: Math.max(band.likely, than.likely),
  upper: Math.max(band.upper, than.upper),
})

/** Coats and filling of every zone as a run stands. */
export function zonesOf(run: Run): ZoneForecast[] {
  const zones: ZoneForecast[] = []
  const { sorptivitySd = 0 } = run.course.pot.body
  for (const { stretch, wall, laid } of run.pieces)
    for (const face of ['outside', 'inside'] as const) {
      const { fromMm, toMm } = stretch[face]
      if (toMm <= fromMm) continue
      const side = wall[face]
      const coats = laid[face].map((coat) => coatOf(coat, sorptivitySd))
      const name: ZoneName = face === 'inside' ? 'inside' : stretch.name
      zones.push({
        name,
        face,
        fromMm,
        toMm,
        coats,
        likelyMm: coats.reduce((sum, coat) => sum + coat.likelyMm, 0),
        lowerMm: coats.reduce((sum, coat) => sum + coat.lowerMm, 0),
        upperMm: coats.reduce((sum, coat) => sum + coat.upperMm, 0),
        filled: filledBehind(side, otherSide(wall, side)),
      })
    }
  return zones
}

/**
 * Forecasts a pot: thickness by zone, and when it is touch-dry, thirsty again and kiln-dry on the clock of the events
 * (minutes). `air0` is the air before any air event, `learned` what this studio's checks have taught (it moves the
 * waits, not the thickness). Infinity: never in this air, or later than seven days after the last wetting. `notYet`: a
 * finger found the coat wet then; told is what is left of waits that are longer, which `learned` must not know of already.
 * RangeError names the field of a pot, slop, dip or air that makes no sense.
 */
export function forecastPot(
  pot: PotWall,
  events: readonly WallEvent[],
  air0: Air,
  learned: Learned,
  notYet?: NotYet,
): PotForecast {
  const course = courseOf(pot, events, air0)
  const fromMin = course.originMin + wettedS(course) / 60
  const asComputed = runPot(course, 1)
  const zones = zonesOf(asComputed)
  const { fillMean, fillSd } = learned
  const middle = waitsOf(fillMean === 0 ? asComputed : runPot(course, Math.exp(fillMean)), 'kiln')
  // Every stretch at every filling: which one decides changes with the filling.
  const nodes = FILL_NODES.map(([sds, weight]) => {
    if (sds === 0) return { ...middle, weight }
    return { ...waitsOf(runPot(course, Math.exp(fillMean + sds * fillSd)), 'kiln'), weight }
  })
  const after = notYet ? Math.max(0, notYet.atMin - fromMin) : 0
  const band = (minutes: (of: Waits) => number, sd: number, longerThan: number): Band => {
    const of: Likelihood[] = nodes.map((node) => ({
      minutes: minutes(node) * Math.exp(learned.timeMean),
      weight: node.weight,
    }))
    return longerThan === 0 && of.every((node) => node.minutes <= 0)
      ? { lower: fromMin, likely: fromMin, upper: fromMin }
      : bandOf(of, Math.hypot(sd, learned.timeSd), fromMin, longerThan)
  }
  const touchDry = band((of) => of.touchMin, TOUCH_SD, notYet?.of === 'thirsty' ? 0 : after)
  const thirsty = noSooner(
    band((of) => of.thirstyMin, TOUCH_SD, after),
    touchDry,
  )
  const kilnDry = noSooner(
    band((of) => of.kilnMin, KILN_SD, after),
    thirsty,
  )
  const at = middle.touched
  return {
    zones,
    touchDry,
    thirsty,
    kilnDry,
    touchAt: at
      ? {
          zone: at.face === 'inside' && floorInReach(pot.profile) ? 'inside' : at.piece.stretch.name,
          face: at.face,
        }
      : { zone: 'body', face: 'outside' },
  }
}
