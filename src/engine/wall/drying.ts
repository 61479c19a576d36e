/** A wait: steps of the balance until a time or until the wall is dry enough, and the moments it passes on the way. */

import type { Face } from '../contract.ts'
import { KILN_COAT_FILLED, THIRSTY_PART, TOUCH_EMPTY } from '../parameters.ts'
import { step } from './balance.ts'
import { otherSide, roomBehind, type Side, type Wall, waterOf } from './wall.ts'
import type { Weather } from './weather.ts'

/** How far a wait must be followed: until it is touch-dry, thirsty again, or kiln-dry. */
export type Goal = 'touch' | 'thirsty' | 'kiln'

const FIRST_STEP_S = 0.5
/** A step is at most this part of the wait so far: the balance changes on the scale of its own age. */
const GROWTH = 0.15
/** Longest step, s, or this part of the wait, whichever is more. */
const LONG_STEP_S = 900
const LONG_GROWTH = 0.03

/**
 * Water that must still leave before the sheen has gone, mm: the film, and a part of the newest coat's pores. With a film
 * on it no coat is dry.
 */
const touchExcess = (side: Side): number => side.film + side.coat - side.pore + TOUCH_EMPTY * side.newPore

/** Water that must still leave before there is room for most of another coat, mm. */
const thirstLacks = (side: Side, other: Side): number =>
  THIRSTY_PART * side.need - (roomBehind(side, other) + side.pore - side.coat)

const PER_KILN_COAT = 1 / KILN_COAT_FILLED

/** Water that a face still holds too much of, mm. */
export interface StillWet {
  /** In the film. */
  readonly filmMm: number
  /** Under it before the coat is touch-dry, 0 or less once it is, of so much under a film. */
  readonly touchMm: number
  readonly ofTouchMm: number
  /** Before it is thirsty again, the film with it; 0 or less once there is room. */
  readonly thirstMm: number
}

/** How wet a face of a wall is, as it stands. */
export function stillWet(wall: Wall, face: Face): StillWet {
  const side = wall[face]
  return {
    filmMm: side.film,
    touchMm: touchExcess(side) - side.film,
    ofTouchMm: TOUCH_EMPTY * side.newPore,
    thirstMm: thirstLacks(side, otherSide(wall, side)) + side.film,
  }
}

/** 1 or less when kiln-dry. */
function kilnExcess(wall: Wall): number {
  const { outside: o, inside: i } = wall
  const coats = Math.max((o.coat + o.film) * o.perPore, (i.coat + i.film) * i.perPore)
  return Math.max(coats * PER_KILN_COAT, waterOf(wall) * wall.perKilnMm)
}

const done = (wall: Wall, goal: Goal): boolean => {
  const { outside: o, inside: i } = wall
  if (o.touchS === Infinity || i.touchS === Infinity) return false
  if (goal === 'touch') return true
  if (o.thirstyS === Infinity || i.thirstyS === Infinity) return false
  return goal === 'thirsty' || wall.kilnS !== Infinity
}

/** Where between two moments a falling quantity passed `level`. */
const crossing = (fromS: number, toS: number, before: number, after: number, level: number): number =>
  before > level ? fromS + ((toS - fromS) * (before - level)) / (before - after) : fromS

/**
 * Follows the wall from `fromS` to `toS` (seconds on its clock); stops early once `goal` is reached, if one is given.
 * `startedS` is when the wait began, which sets the size of the steps. Returns the moment reached.
 */
export function wait(
  wall: Wall,
  weather: Weather,
  startedS: number,
  fromS: number,
  toS: number,
  goal?: Goal,
): number {
  const { outside: o, inside: i } = wall
  let nowS = fromS
  note(wall, nowS)
  let touchO = touchExcess(o)
  let touchI = touchExcess(i)
  let lackO = thirstLacks(o, i)
  let lackI = thirstLacks(i, o)
  let kiln = kilnExcess(wall)
  while (nowS < toS && !(goal && done(wall, goal))) {
    const age = nowS - startedS
    const longest = Math.max(LONG_STEP_S, LONG_GROWTH * age)
    const stepS = Math.min(toS - nowS, longest, Math.max(FIRST_STEP_S, GROWTH * age))
    // A step too small for the clock's digits must still move it.
    const thenS = Math.min(toS, nowS + Math.max(step(wall, weather, stepS), toS * 1e-15))
    if (o.touchS === Infinity || o.thirstyS === Infinity) {
      const [touch, lack] = [touchO, lackO]
      touchO = touchExcess(o)
      lackO = thirstLacks(o, i)
      pass(o, nowS, thenS, touch, touchO, lack, lackO)
    }
    if (i.touchS === Infinity || i.thirstyS === Infinity) {
      const [touch, lack] = [touchI, lackI]
      touchI = touchExcess(i)
      lackI = thirstLacks(i, o)
      pass(i, nowS, thenS, touch, touchI, lack, lackI)
    }
    if (wall.kilnS === Infinity && (goal === undefined || goal === 'kiln')) {
      const before = kiln
      kiln = kilnExcess(wall)
      if (kiln <= 1) wall.kilnS = crossing(nowS, thenS, before, kiln, 1)
    }
    nowS = thenS
  }
  return nowS
}

/** Marks the moments a side passed in a step, from how much it lacked before and after. */
function pass(
  side: Side,
  fromS: number,
  toS: number,
  touchBefore: number,
  touchAfter: number,
  lackBefore: number,
  lackAfter: number,
): void {
  if (side.film > 0) return
  if (side.touchS === Infinity && touchAfter <= 0)
    side.touchS = crossing(fromS, toS, touchBefore, touchAfter, 0)
  if (side.touchS !== Infinity && side.thirstyS === Infinity && lackAfter <= 0)
    side.thirstyS = Math.max(side.touchS, crossing(fromS, toS, lackBefore, lackAfter, 0))
}

/** What already holds at the start of a wait. */
function note(wall: Wall, nowS: number): void {
  const { outside: o, inside: i } = wall
  pass(o, nowS, nowS, 0, touchExcess(o), 0, thirstLacks(o, i))
  pass(i, nowS, nowS, 0, touchExcess(i), 0, thirstLacks(i, o))
  if (wall.kilnS === Infinity && kilnExcess(wall) <= 1) wall.kilnS = nowS
}
