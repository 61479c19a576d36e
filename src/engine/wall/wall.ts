/**
 * A piece of wall with two faces, and what dips, sponges and washing do to it. The state is mutable and
 * private to one forecast: stores in mm of water over the face, moments in seconds since the first event.
 */

import { CRITICAL_FILLED, TOUCH_EMPTY } from '../parameters.ts'
import { drawn } from '../slop/pickup.ts'

/** One face: the film on it, the coats, and its half of the wall. */
export interface Side {
  /** Part of the outside's convection, and of its radiation, that this face has. */
  readonly airing: number
  readonly radiation: number
  /** Water its half of the wall can take, mm, one over that (0 for none), and what is in it. */
  readonly cap: number
  readonly perCap: number
  body: number
  /** Water the film must still lose before it is a coat. */
  film: number
  /** Pores of all coats, one over that (0 without), and water in them. */
  pore: number
  perPore: number
  coat: number
  /** Pores of the newest coat, and as much of those under it as still had to dry when it came. */
  newPore: number
  coatMm: number
  /** Sum of cake resistance times settled thickness, s/mm. */
  resistance: number
  /** Water drawn into the body in this wetting. */
  path: number
  /** Shed water per mm of coat of the last slop, its cake resistance over that, and the factor on the body's sorptivity that came with it. */
  shed: number
  perR2: number
  pickUp: number
  /** What one more coat like the last would have to shed, mm. */
  need: number
  /** Part of its half of the wall that drinks from the other face: all of it until it is wet, and again once dry. */
  lends: number
  /** Since when the coat is touch-dry, and has room again; Infinity while it is not. */
  touchS: number
  thirstyS: number
}

export interface Wall {
  readonly thickMm: number
  readonly outside: Side
  readonly inside: Side
  /** Sorptivity of the dry body at 20 degC, squared, mm2/s. */
  readonly sorptivity2: number
  /** Dry mass, kg/m2. */
  readonly dryKgPerM2: number
  /** One over the water a kiln-dry wall may hold, 1/mm. */
  readonly perKilnMm: number
  tempC: number
  kilnS: number
  /** The water book, mm: brought by slop and sponge, lost to the air. */
  brought: number
  evaporated: number
}

/** Stores smaller than this, mm, count as none. */
export const NOTHING_MM = 1e-9

const reciprocal = (mm: number): number => (mm > NOTHING_MM ? 1 / mm : 0)

/** A face that has had nothing: `cap` mm of room in its half of the body, `filled` of it taken; `airing` and `radiation` against a free outside. */
export function newSide(cap: number, filled: number, airing: number, radiation: number): Side {
  return {
    airing,
    radiation,
    cap,
    perCap: reciprocal(cap),
    body: cap * filled,
    film: 0,
    pore: 0,
    perPore: 0,
    coat: 0,
    newPore: 0,
    coatMm: 0,
    resistance: 0,
    path: 0,
    shed: 1,
    perR2: 0,
    pickUp: 1,
    need: 0,
    lends: 1,
    touchS: 0,
    thirstyS: 0,
  }
}

/** The face across the wall. */
export const otherSide = (wall: Wall, side: Side): Side =>
  side === wall.outside ? wall.inside : wall.outside

/** Water of a wall, both faces, mm. */
export const waterOf = (wall: Wall): number =>
  wall.outside.body +
  wall.outside.coat +
  wall.outside.film +
  wall.inside.body +
  wall.inside.coat +
  wall.inside.film

/** A face dries and lends again over this much filling, about where liquid threads break: nothing jumps. */
const LENDS_OVER = 0.2

/** How far a face that was wet has dried, 0 to 1: the part of its half of the wall that it lends again. */
export function driedPart(side: Side): number {
  const { film, coat, perPore, body, perCap } = side
  if (film > 0) return 0
  const filled = Math.max(coat * perPore, body * perCap)
  return Math.min(1, Math.max(0, (CRITICAL_FILLED + LENDS_OVER / 2 - filled) / LENDS_OVER))
}

/** Room for water in the body behind a face, mm: a face that was never wet, or has dried since, lends its half. */
export const roomBehind = (side: Side, other: Side): number =>
  Math.max(0, side.cap - side.body + other.lends * (other.cap - other.body))

/** Filled part of the share of the pores behind a face. */
export function filledBehind(side: Side, other: Side): number {
  // Both halves are of one size.
  const mm = (side.body + other.lends * other.body) / (1 + other.lends)
  return side.perCap > 0 ? Math.min(1, mm * side.perCap) : 1
}

/** Squared sorptivity of the body behind a face now: Green & Ampt, S2 falls with the filled part. */
export const suction2 = (wall: Wall, side: Side, other: Side, suction: number): number =>
  wall.sorptivity2 * side.pickUp ** 2 * suction * suction * (1 - filledBehind(side, other))

/** Puts water behind a face, first into its own half, the rest into a half that lends. */
export function intoBody(side: Side, other: Side, mm: number): void {
  const own = Math.min(mm, Math.max(0, side.cap - side.body))
  side.body += own
  if (mm > own) other.body += mm - own
}

/** A slop as it meets one height of the wall. */
export interface Wetting {
  readonly atS: number
  readonly seconds: number
  readonly shed: number
  readonly cakeSolids: number
  readonly cakeResistance: number
  /** Factor of calibration on all it draws (1 uncalibrated). */
  readonly pickUp: number
  /** Dry coat in the film where the wall sets it, and where it only drains, mm. */
  readonly filmThirstyMm: number
  readonly filmFullMm: number
  /** The same with a thin and a thick slop, on a full wall. */
  readonly filmLowMm: number
  readonly filmHighMm: number
  /** Factor on suction by temperature. */
  readonly suction: number
}

/** Coat that this slop leaves on dry ware of this wall, film included, mm. */
function coatOnDryMm(wall: Wall, side: Side, w: Wetting): number {
  const draw = drawn(
    {
      suction2: wall.sorptivity2 * w.pickUp ** 2 * w.suction ** 2,
      room: side.cap,
      coatRoom: 0,
      resistance: 0,
    },
    w.shed,
    w.cakeResistance / (w.pickUp * w.suction) ** 2,
    w.seconds,
  )
  return draw.intoBody / w.shed + filmMm(w, setPartOf(w, side.cap - draw.intoBody))
}

/** Part of the film that a wall with `room` left for its water sets; the rest drains. */
const setPartOf = (w: Wetting, room: number): number =>
  w.filmThirstyMm > 0 ? Math.min(1, Math.max(0, room) / (w.shed * w.filmThirstyMm)) : 1

/** Dry coat in the film when the wall has `room` left for its water. */
const filmMm = (w: Wetting, setPart: number): number =>
  w.filmFullMm + (w.filmThirstyMm - w.filmFullMm) * setPart

/** What a dip added, dry coat in mm: cast by suction, and dried from the film. */
export interface Gain {
  readonly castMm: number
  readonly filmMm: number
  /** The most that the room there was could have cast. */
  readonly mostCastMm: number
  /** Part of the film that a thirsty wall set, 0 to 1. */
  readonly setPart: number
}

/**
 * A face goes under and comes out: old coats drink, then the body, then the film settles on top. Water still in an
 * older film is the first that the body draws, and the new film replaces it.
 */
export function wet(wall: Wall, side: Side, w: Wetting): Gain {
  const other = otherSide(wall, side)
  const perR2 = w.cakeResistance / (w.pickUp * w.suction) ** 2 / w.shed
  side.resistance += side.perR2 * side.film
  side.pickUp = w.pickUp
  const room = roomBehind(side, other)
  const coatRoom = side.pore - side.coat
  // None of it once touch-dry, so that a dip just before and one just after wait alike.
  const stillWet = side.film > 0 ? side.newPore : Math.max(0, side.newPore - coatRoom / TOUCH_EMPTY)
  const draw = drawn(
    { suction2: suction2(wall, side, other, w.suction), room, coatRoom, resistance: side.resistance },
    w.shed,
    perR2 * w.shed,
    w.seconds,
  )
  const fromOldFilm = Math.min(side.film, draw.intoCoats + draw.intoBody)
  side.film -= fromOldFilm
  const cakeMm = (draw.intoCoats + draw.intoBody - fromOldFilm) / w.shed
  const setPart = setPartOf(w, room - draw.intoBody + coatRoom - draw.intoCoats)
  const filmNowMm = filmMm(w, setPart)
  const gainedFilmMm = Math.max(0, filmNowMm - side.film / side.shed)
  const gainedMm = cakeMm + gainedFilmMm
  const pores = (1 - w.cakeSolids) * gainedMm
  wall.brought += gainedMm * w.shed + pores
  side.coat += draw.intoCoats + pores
  side.pore += pores
  side.newPore = pores + stillWet
  side.perPore = reciprocal(side.pore)
  intoBody(side, other, draw.intoBody)
  side.film += gainedFilmMm * w.shed
  const refill = Math.min(side.film, Math.max(0, side.pore - side.coat))
  side.coat += refill
  side.film -= refill
  side.coatMm += gainedMm
  side.resistance += perR2 * w.shed * cakeMm
  side.shed = w.shed
  side.perR2 = perR2
  side.path = draw.intoBody
  side.need = w.shed * coatOnDryMm(wall, side, w)
  side.touchS = Infinity
  side.thirstyS = Infinity
  wall.kilnS = Infinity
  return { castMm: cakeMm, filmMm: gainedFilmMm, mostCastMm: (room + coatRoom) / w.shed, setPart }
}
