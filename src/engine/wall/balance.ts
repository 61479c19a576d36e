/**
 * One step of the water balance of a piece of wall: film into the wall, coat to body, half to half, and into the air,
 * with the heat that takes. Links between stores are solved implicitly, so that a step may be as long as the wait
 * allows; what leaves a store is what the books say left.
 */

import {
  BODY_TO_COAT,
  CLAY_J_PER_KG_K,
  COAT_FADES_FILLED,
  COAT_TO_BODY,
  CRITICAL_FILLED,
  HALF_TO_HALF,
  LIQUID_MM2_PER_S,
  LIQUID_SLOPE,
  WATER_J_PER_KG_K,
} from '../parameters.ts'
import { intoBody, NOTHING_MM, roomBehind, type Side, suction2, type Wall, waterOf } from './wall.ts'
import { quickVapour, quickVapourSlope, type Weather } from './weather.ts'

const PER_FADES = 1 / COAT_FADES_FILLED
const PER_CRITICAL = 1 / CRITICAL_FILLED

/**
 * Water that the pores of a body bring to its face as liquid, mm/s: 3 D w / L2 of a slab whose water lies as a parabola,
 * none of it at the face (linear driving force), D that of its mean filling.
 */
const throughPores = (side: Side, depthMm: number, suction: number): number =>
  (3 * LIQUID_MM2_PER_S * Math.exp(LIQUID_SLOPE * side.body * side.perCap) * suction ** 2 * side.body) /
  depthMm ** 2

/**
 * Resistance of the way out of a face, s/m, by `gap` of vapour, kg/m3: still air; a dry coat; and, where the pores behind
 * bring less than could leave there, what comes as vapour through dry body beside it.
 */
function wayOut(side: Side, wall: Wall, weather: Weather, gap: number): number {
  const boundary = weather.boundarySPerM / side.airing
  if (side.film > 0) return boundary
  const coatDry = 1 - side.coat * side.perPore * PER_CRITICAL
  if (coatDry <= 0) return boundary
  const layer = weather.dryLayerSPerMPerMm * coatDry
  const wet = boundary + layer * side.coatMm
  const bodyDry = 1 - side.body * side.perCap * PER_CRITICAL
  if (bodyDry <= 0 || gap <= 0) return wet
  const depthMm = wall.thickMm / 2
  const dry = wet + layer * bodyDry * depthMm
  return Math.max(wet, 1 / (throughPores(side, depthMm, weather.suction) / gap + 1 / dry))
}

const losesWater = (side: Side): boolean => side.film + side.coat + side.body > NOTHING_MM

/** Water the body draws from the film in `seconds`: dI/dt = 1/(2 u), u the path's resistance, growing by p per mm. */
const soaked = (u: number, p: number, seconds: number): number =>
  seconds / (u + Math.sqrt(u * u + p * seconds) || 1)

/** The path from film to body: its resistance now and per mm drawn, and the room at its end. */
interface Path {
  u: number
  p: number
  room: number
}

function openPath(path: Path, wall: Wall, side: Side, other: Side, weather: Weather): void {
  const s2 = suction2(wall, side, other, weather.suction)
  const perS2 = s2 > 0 ? 1 / s2 : 0
  path.room = s2 > 0 ? roomBehind(side, other) : 0
  path.u = side.resistance + side.path * perS2
  path.p = side.perR2 + perS2
}

const taken = (path: Path, side: Side, lossPerS: number, seconds: number): number =>
  Math.min(path.room, soaked(path.u, path.p, seconds), side.film) + lossPerS * seconds

/**
 * Seconds, at most `stepS`, until body and air together have taken the film: by halving, to a sixty-fourth of the step,
 * which also bounds the number of steps of a wait.
 */
function filmLastsS(path: Path, side: Side, lossPerS: number, stepS: number): number {
  if (taken(path, side, lossPerS, stepS) < side.film) return stepS
  let [low, high] = [0, stepS]
  for (let i = 0; i < 6; i++) {
    const mid = (low + high) / 2
    if (taken(path, side, lossPerS, mid) < side.film) low = mid
    else high = mid
  }
  return high
}

/** Film to body and air over the step. */
function drainFilm(path: Path, wall: Wall, side: Side, other: Side, lossPerS: number, stepS: number): void {
  const drawn = Math.min(path.room, soaked(path.u, path.p, stepS), side.film)
  const lost = Math.min(side.film - drawn, lossPerS * stepS)
  intoBody(side, other, drawn)
  side.path += drawn
  side.resistance += side.perR2 * (drawn + lost)
  side.film -= drawn + lost
  if (side.film < NOTHING_MM) {
    wall.evaporated += side.film
    side.film = 0
  }
  wall.evaporated += lost
}

const pathOut: Path = { u: 0, p: 0, room: 0 }
const pathIn: Path = { u: 0, p: 0, room: 0 }

/** A step takes at most this part of the water of a face whose film is gone, but is no shorter than this part of itself. */
const MOST_LOST = 0.1
const LEAST_STEP = 1 / 16
/** With less than this part of the water of a kiln-dry wall nothing is left to be told. */
const DRY_PART = 0.25

/** Seconds of a step in which a drying face loses little enough to be told by how fast it did at their start. */
function steadyS(side: Side, lossPerS: number, stepS: number): number {
  const mm = MOST_LOST * (side.coat + side.body)
  return lossPerS * stepS > mm && mm > NOTHING_MM ? Math.max(LEAST_STEP * stepS, mm / lossPerS) : stepS
}

/** Film first fills what room the coat's own pores have (after an emptying by the scale). */
function refill(side: Side): void {
  const mm = Math.min(side.film, side.pore - side.coat)
  side.coat += mm
  side.film -= mm
}

/**
 * Moves the wall on by up to `stepS` seconds in this weather; stops early where a film ends. Returns the seconds
 * moved.
 */
export function step(wall: Wall, weather: Weather, stepS: number): number {
  const o = wall.outside
  const i = wall.inside
  if (o.film > 0 && o.coat < o.pore) refill(o)
  if (i.film > 0 && i.coat < i.pore) refill(i)
  const filmO = o.film > 0
  const filmI = i.film > 0
  const tempC = wall.tempC
  const vapour = weather.vapourScale * quickVapour(tempC)
  const gap = vapour - weather.aroundKgPerM3
  const slope = vapour * quickVapourSlope(tempC)
  const openO = losesWater(o) ? 1 / wayOut(o, wall, weather, gap) : 0
  const openI = losesWater(i) ? 1 / wayOut(i, wall, weather, gap) : 0
  // Heat in, heat out by evaporation, and how that changes with a degree: implicit in the wall's temperature.
  const cooling = gap > 0 ? weather.latentJPerKg * (openO + openI) : 0
  const heat = heatIn(o, weather) + heatIn(i, weather)
  const store = CLAY_J_PER_KG_K * wall.dryKgPerM2 + WATER_J_PER_KG_K * waterOf(wall)
  const push = heat * (weather.tempC - tempC) - cooling * gap
  const pull = heat + cooling * slope
  let seconds = stepS
  let rise = (seconds * push) / (store + seconds * pull)
  let vapourGap = Math.max(0, gap + slope * rise)
  if (filmO) {
    openPath(pathOut, wall, o, i, weather)
    seconds = filmLastsS(pathOut, o, openO * vapourGap, seconds)
  }
  if (filmI) {
    openPath(pathIn, wall, i, o, weather)
    seconds = filmLastsS(pathIn, i, openI * vapourGap, seconds)
  }
  if (waterOf(wall) * wall.perKilnMm > DRY_PART) {
    if (!filmO) seconds = steadyS(o, openO * vapourGap, seconds)
    if (!filmI) seconds = steadyS(i, openI * vapourGap, seconds)
  }
  if (seconds < stepS) {
    rise = (seconds * push) / (store + seconds * pull)
    vapourGap = Math.max(0, gap + slope * rise)
  }
  wall.tempC = tempC + rise
  if (filmO) drainFilm(pathOut, wall, o, i, openO * vapourGap, seconds)
  if (filmI) {
    // The outside may have filled a lent half meanwhile.
    pathIn.room = Math.min(pathIn.room, roomBehind(i, o))
    drainFilm(pathIn, wall, i, o, openI * vapourGap, seconds)
  }
  share(wall, seconds, filmO ? 0 : openO * vapourGap, filmI ? 0 : openI * vapourGap, filmO, filmI)
  return seconds
}

const heatIn = (side: Side, weather: Weather): number =>
  side.airing * weather.heatWPerM2K + side.radiation * weather.radiationWPerM2K

/**
 * Link of coat and body, mm/s per unit of filling. Into the body by the difference in filling, for its last pores pull
 * least; back into a coat that dries before it, steadily.
 */
function pull(side: Side, perPore: number): number {
  const ahead = side.coat * perPore - side.body * side.perCap
  return ahead > 0 ? COAT_TO_BODY * ahead : BODY_TO_COAT
}

/**
 * Coat - body - body - coat as a chain: implicit in the links, evaporation taken from a coat while it is wet and from
 * the body behind a drying one. `lossO`, `lossI` in mm/s.
 */
function share(
  wall: Wall,
  seconds: number,
  lossO: number,
  lossI: number,
  filmO: boolean,
  filmI: boolean,
): void {
  const o = wall.outside
  const i = wall.inside
  // A store of no size has a reciprocal of 0, which cuts its links.
  const perPoreO = filmO ? 0 : o.perPore
  const perPoreI = filmI ? 0 : i.perPore
  const coatLinkO = o.perCap > 0 && perPoreO > 0 ? seconds * pull(o, perPoreO) : 0
  const coatLinkI = i.perCap > 0 && perPoreI > 0 ? seconds * pull(i, perPoreI) : 0
  const halfLink = seconds * HALF_TO_HALF
  const wb = coatLinkO * perPoreO
  const bw = coatLinkO * o.perCap
  const ob = halfLink * o.perCap
  const ib = halfLink * i.perCap
  const vb = coatLinkI * perPoreI
  const bv = coatLinkI * i.perCap
  // A fading coat loses in proportion to what it holds, implicitly; a wet one at the full rate.
  const partO = o.coat * perPoreO * PER_FADES
  const partI = i.coat * perPoreI * PER_FADES
  const fadeO = partO < 1 ? seconds * lossO * perPoreO * PER_FADES : 0
  const fadeI = partI < 1 ? seconds * lossI * perPoreI * PER_FADES : 0
  const wetO = partO < 1 ? 0 : Math.min(o.coat, seconds * lossO)
  const wetI = partI < 1 ? 0 : Math.min(i.coat, seconds * lossI)
  const deepO = partO < 1 ? seconds * lossO * (1 - partO) : 0
  const deepI = partI < 1 ? seconds * lossI * (1 - partI) : 0
  // Thomas' elimination down the chain, then back.
  const d1 = 1 / (1 + wb + fadeO)
  const r1 = o.coat - wetO
  const d2 = 1 / (1 + bw + ob - wb * bw * d1)
  const r2 = o.body - deepO + wb * r1 * d1
  const d3 = 1 / (1 + ib + bv - ob * ib * d2)
  const r3 = i.body - deepI + ob * r2 * d2
  const d4 = 1 / (1 + vb + fadeI - bv * vb * d3)
  const r4 = i.coat - wetI + bv * r3 * d3
  const coatInside = r4 * d4
  const bodyInside = (r3 + vb * coatInside) * d3
  const bodyOutside = (r2 + ib * bodyInside) * d2
  const coatOutside = (r1 + bw * bodyOutside) * d1
  wall.evaporated += wetO + wetI + deepO + deepI + fadeO * coatOutside + fadeI * coatInside
  o.coat = keep(wall, coatOutside)
  i.coat = keep(wall, coatInside)
  o.body = keep(wall, bodyOutside)
  i.body = keep(wall, bodyInside)
}

/** A store can't owe: what it lacks had not left. */
function keep(wall: Wall, mm: number): number {
  if (mm >= 0) return mm
  wall.evaporated += mm
  return 0
}
