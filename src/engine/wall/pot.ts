/** A pot through its events: every piece of wall in step, in one air after another. */

import { inRange } from '../check.ts'
import type { Air, Dip, Face, PotWall, WallEvent } from '../contract.ts'
import { DRIP_S, FLOOR_CREEP_AIRING, HORIZON_MIN, INSIDE_RADIATION, KILN_WATER_PART } from '../parameters.ts'
import { faceAreaCm2 } from '../shape/areas.ts'
import { checkedDip, reachOf, secondsUnder } from '../shape/immersion.ts'
import { floorInReach } from '../shape/neck.ts'
import { cutWall, type Stretch, within } from '../shape/zones.ts'
import { type Film, filmOf } from '../slop/film.ts'
import { checkedSlop, shedPerMm } from '../slop/slop.ts'
import { checkedBody, fillablePerMm } from './body.ts'
import { type Goal, wait } from './drying.ts'
import { foundDry, sponge, washOff } from './handling.ts'
import { driedPart, type Gain, newSide, type Side, type Wall, type Wetting, wet } from './wall.ts'
import { INSIDE_AIRING, type Weather, weatherOf } from './weather.ts'

/** A coat as it came out on one face of one stretch. */
export interface Laid {
  readonly dip: Dip
  readonly wetting: Wetting
  readonly gain: Gain
  /** Longest seconds under anywhere on the stretch. */
  readonly longestS: number
}

export interface Piece {
  readonly stretch: Stretch
  readonly wall: Wall
  readonly laid: { readonly outside: Laid[]; readonly inside: Laid[] }
}

/** What doesn't change between runs of the same pot: events in order, cuts, weather. */
export interface Course {
  readonly pot: PotWall
  readonly events: readonly WallEvent[]
  readonly originMin: number
  readonly stretches: readonly Stretch[]
  readonly weathers: ReadonlyMap<Air, Weather>
  readonly air0: Air
}

export interface Run {
  readonly course: Course
  readonly pieces: readonly Piece[]
  /** Moment of the last event, seconds since the first. */
  readonly lastS: number
  readonly weather: Weather
}

const byTime = (a: WallEvent, b: WallEvent): number => a.atMin - b.atMin

/** Longest history: a pot may stand on its shelf for years, or a clock have been wrong. Old waits cost few steps. */
const CENTURY_MIN = 100 * 366 * 24 * 60

/** Checks a pot and its events and settles what every run shares. RangeError names the field at fault. */
export function courseOf(pot: PotWall, events: readonly WallEvent[], air0: Air): Course {
  checkedBody(pot.body)
  inRange('startWater', pot.startWater, 0, 1)
  const { shape } = pot.profile
  const sorted = [...events].sort(byTime)
  const originMin = sorted[0]?.atMin ?? 0
  const widthMm = Math.max(shape.rimMm, shape.bellyMm ?? 0)
  const weathers = new Map<Air, Weather>([[air0, weatherOf(air0, widthMm)]])
  const dips: Dip[] = []
  for (const event of sorted) {
    inRange('atMin', event.atMin, -1e12, 1e12)
    inRange('atMin after the first event', event.atMin - originMin, 0, CENTURY_MIN)
    if (event.kind === 'dip') {
      checkedDip(event, shape.heightMm)
      checkedSlop(event.slop)
      dips.push(event)
    } else if (event.kind === 'wipe') inRange('waterMm', event.waterMm, 0, 100)
    else if (event.kind === 'air' && !weathers.has(event.air))
      weathers.set(event.air, weatherOf(event.air, widthMm))
  }
  return { pot, events: sorted, originMin, stretches: cutWall(pot.profile, dips), weathers, air0 }
}

function newPiece(course: Course, stretch: Stretch): Piece {
  const { body, startWater, profile } = course.pot
  const { thickMm } = stretch
  const room = (fillablePerMm(body) * thickMm) / 2
  const cap = room < NO_ROOM_MM ? 0 : room
  const airing = INSIDE_AIRING[profile.shape.form]
  const dry = startWater === 0 || cap === 0
  const start = dry ? 0 : Infinity
  const nominal = Math.min(cap, NOMINAL_SHED_MM)
  const side = (air: number, radiation: number): Side => {
    const fresh = newSide(cap, startWater, air, radiation)
    return { ...fresh, need: nominal, thirstyS: start, lends: driedPart(fresh) }
  }
  const wall: Wall = {
    thickMm,
    outside: stretch.base ? side(FLOOR_CREEP_AIRING, 0) : side(1, 1),
    inside: side(airing, INSIDE_RADIATION),
    sorptivity2: body.sorptivityMmPerSqrtS ** 2,
    dryKgPerM2: body.bulkGramsPerMl * thickMm,
    perKilnMm: 1 / (KILN_WATER_PART * body.bulkGramsPerMl * thickMm),
    tempC: course.weathers.get(course.air0)!.tempC,
    kilnS: start,
    brought: 0,
    evaporated: 0,
  }
  return { stretch, wall, laid: { outside: [], inside: [] } }
}

/** A half that holds less water than this, mm, holds none: parts of it could not be told. */
const NO_ROOM_MM = 1e-12
/** Shed water of an ordinary first coat, mm: asked of a wall that has had none (half a mm at 1.45, assumption). */
const NOMINAL_SHED_MM = 0.35

/** Area of one face of a stretch, cm2. */
export const areaCm2 = (course: Course, stretch: Stretch, face: Face): number => {
  const span = stretch[face]
  return span.toMm > span.fromMm ? faceAreaCm2(course.pot.profile, face, span.fromMm, span.toMm) : 0
}

/** Water in wall and coats of the whole pot, grams: each half of a wall over the area of its own face. */
export function waterG(run: Run): number {
  let grams = 0
  for (const { stretch, wall } of run.pieces) {
    const outside = areaCm2(run.course, stretch, 'outside')
    const inside = areaCm2(run.course, stretch, 'inside')
    grams += WATER_G_PER_CM2_MM * (outside * sideWater(wall.outside) + inside * sideWater(wall.inside))
  }
  return grams
}

/** Glaze on the whole pot as it would weigh dry, grams. */
export function dryGlazeG(run: Run): number {
  let grams = 0
  for (const { stretch, laid } of run.pieces)
    for (const face of FACES) {
      const areaG = laid[face].length > 0 ? WATER_G_PER_CM2_MM * areaCm2(run.course, stretch, face) : 0
      for (const { dip, gain } of laid[face])
        grams += areaG * (gain.castMm + gain.filmMm) * dip.slop.cakeSolids * dip.slop.solidsGravity
    }
  return grams
}

/** A mm of water on a cm2, and of solids per g/mL, grams. */
const WATER_G_PER_CM2_MM = 0.1
const sideWater = (side: Side): number => side.body + side.coat + side.film

const FACES = ['outside', 'inside'] as const

/** Whether a finger reaches a face: through a narrow neck, of the inside only what is next to the rim. */
export function fingered(course: Course, { stretch }: Piece, face: Face): boolean {
  if (face === 'outside' || floorInReach(course.pot.profile)) return true
  return stretch.inside.toMm === Math.max(...course.stretches.map(({ inside }) => inside.toMm))
}

const films = new WeakMap<Dip, Map<number, Film>>()

/** The film of a dip over a length of wall: the same for every stretch and every filling. */
function filmAt(dip: Dip, lengthMm: number): Film {
  const known = films.get(dip) ?? new Map<number, Film>()
  films.set(dip, known)
  let film = known.get(lengthMm)
  if (!film) {
    film = filmOf(dip.slop, lengthMm, dip.liftMmPerS, dip.dripS ?? DRIP_S)
    known.set(lengthMm, film)
  }
  return film
}

function dipPiece(course: Course, piece: Piece, dip: Dip, atS: number, weather: Weather, fill: number): void {
  const { shape } = course.pot.profile
  const { heightMm } = shape
  const reached = FACES.flatMap((face) => {
    const reach = reachOf(dip.cover, face, shape)
    const bare = face === 'outside' && piece.stretch.base
    return reach && !bare && within(piece.stretch[face], reach) ? [{ face, reach }] : []
  })
  for (const face of FACES) {
    const side = piece.wall[face]
    side.lends = Math.max(side.lends, driedPart(side))
  }
  // Faces that go under together have a half of the wall each.
  for (const { face } of reached) piece.wall[face].lends = 0
  for (const { face, reach } of reached) {
    const span = piece.stretch[face]
    const film = filmAt(dip, Math.max(1, reach.toMm - reach.fromMm))
    const wetting: Wetting = {
      atS,
      seconds: secondsUnder(dip, heightMm, (span.fromMm + span.toMm) / 2),
      shed: shedPerMm(dip.slop),
      cakeSolids: dip.slop.cakeSolids,
      cakeResistance: dip.slop.cakeResistanceSPerMm2,
      pickUp: dip.slop.pickUpFactor * fill,
      filmThirstyMm: film.thirstyMm * fill,
      filmFullMm: film.fullMm * fill,
      filmLowMm: film.fullLowMm * fill,
      filmHighMm: film.fullHighMm * fill,
      suction: weather.suction,
    }
    const gain = wet(piece.wall, piece.wall[face], wetting)
    const ends = [span.fromMm, span.toMm].map((atMm) => secondsUnder(dip, heightMm, atMm))
    piece.laid[face].push({ dip, wetting, gain, longestS: Math.max(...ends) })
  }
}

/**
 * Runs a pot through its events. `fill` scales all water that dips bring (1 as computed):
 * the latent factor that touch checks and weighings teach.
 */
export function runPot(course: Course, fill: number): Run {
  const pieces = course.stretches.map((stretch) => newPiece(course, stretch))
  let weather = course.weathers.get(course.air0)!
  let nowS = 0
  let startedS = 0
  for (const event of course.events) {
    const atS = (event.atMin - course.originMin) * 60
    if (atS > nowS) for (const { wall } of pieces) wait(wall, weather, startedS, nowS, atS)
    nowS = atS
    if (event.kind === 'air') {
      weather = course.weathers.get(event.air)!
      continue
    }
    startedS = atS
    apply({ course, pieces, lastS: nowS, weather }, event, atS, fill)
  }
  return { course, pieces, lastS: nowS, weather }
}

function apply(run: Run, event: Exclude<WallEvent, { kind: 'air' }>, atS: number, fill: number): void {
  const { course, pieces, weather } = run
  for (const piece of pieces) {
    if (event.kind === 'dip') dipPiece(course, piece, event, atS, weather, fill)
    else if (event.kind === 'washOff') {
      washOff(piece.wall)
      piece.laid.outside.length = 0
      piece.laid.inside.length = 0
    } else if (event.kind === 'dry') {
      for (const face of FACES) if (fingered(course, piece, face)) foundDry(piece.wall, piece.wall[face], atS)
    } else if (event.kind === 'wipe') {
      if (!piece.stretch.base) sponge(piece.wall, piece.wall.outside, event.waterMm)
      sponge(piece.wall, piece.wall.inside, event.waterMm)
    }
  }
}

/** Follows every piece of a run from its last event until `goal`, or for seven days. */
export function finish(run: Run, goal: Goal): void {
  const started = run.lastS
  for (const { wall } of run.pieces)
    wait(wall, run.weather, started, run.lastS, run.lastS + HORIZON_MIN * 60, goal)
}
