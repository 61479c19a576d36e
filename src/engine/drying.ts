/** A wait: steps of the balance until a time or until the wall is dry enough, and the moments it passes on the way. */

import { step } from './balance.ts'
import { KILN_COAT_FILLED, KILN_WATER_PART, THIRSTY_PART, TOUCH_FILLED } from './parameters.ts'
import { roomBehind, type Side, type Wall, waterOf } from './wall.ts'
import type { Weather } from './weather.ts'

/** How far a wait must be followed: until it is touch-dry, thirsty again, or kiln-dry. */
export type Goal = 'touch' | 'thirsty' | 'kiln'

const FIRST_STEP_S = 0.25
/** A step is at most this part of the wait so far: the balance changes on the scale of its own age. */
const GROWTH = 0.06
/** Longest step, s, or this part of the wait, whichever is more. */
const LONG_STEP_S = 600
const LONG_GROWTH = 0.02

const touchExcess = (side: Side): number => side.coat - TOUCH_FILLED * side.pore

/** Water that must still leave before there is room for most of another coat, mm. */
const thirstLacks = (side: Side, other: Side): number =>
  THIRSTY_PART * side.need - (roomBehind(side, other) + side.pore - side.coat)

/** 1 or less when kiln-dry. */
function kilnExcess(wall: Wall): number {
  const { outside: o, inside: i } = wall
  const coatO = o.pore > 0 ? (o.coat + o.film) / (KILN_COAT_FILLED * o.pore) : 0
  const coatI = i.pore > 0 ? (i.coat + i.film) / (KILN_COAT_FILLED * i.pore) : 0
  return Math.max(coatO, coatI, waterOf(wall) / (KILN_WATER_PART * wall.dryKgPerM2))
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
  before > level && after < before ? fromS + ((toS - fromS) * (before - level)) / (before - after) : toS

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
  while (nowS < toS && !(goal && done(wall, goal))) {
    const age = nowS - startedS
    const cap = Math.max(LONG_STEP_S, LONG_GROWTH * age)
    const stepS = Math.min(toS - nowS, cap, Math.max(FIRST_STEP_S, GROWTH * age))
    const touchO = o.film > 0 ? Infinity : touchExcess(o)
    const touchI = i.film > 0 ? Infinity : touchExcess(i)
    const lackO = thirstLacks(o, i)
    const lackI = thirstLacks(i, o)
    const kiln = wall.kilnS === Infinity ? kilnExcess(wall) : 0
    const thenS = Math.min(toS, nowS + Math.max(step(wall, weather, stepS), toS * 1e-15))
    passed(o, i, nowS, thenS, touchO, lackO)
    passed(i, o, nowS, thenS, touchI, lackI)
    if (wall.kilnS === Infinity) {
      const after = kilnExcess(wall)
      if (after <= 1) wall.kilnS = crossing(nowS, thenS, kiln, after, 1)
    }
    nowS = thenS
  }
  return nowS
}

function passed(side: Side, other: Side, fromS: number, toS: number, touch: number, lack: number): void {
  if (side.film > 0) return
  if (side.touchS === Infinity) {
    const after = touchExcess(side)
    if (after > 0) return
    side.touchS = touch === Infinity ? toS : crossing(fromS, toS, touch, after, 0)
  }
  if (side.thirstyS === Infinity) {
    const after = thirstLacks(side, other)
    if (after <= 0) side.thirstyS = Math.max(side.touchS, crossing(fromS, toS, lack, after, 0))
  }
}

/** What already holds at the start of a wait. */
function note(wall: Wall, nowS: number): void {
  passed(wall.outside, wall.inside, nowS, nowS, Infinity, 0)
  passed(wall.inside, wall.outside, nowS, nowS, Infinity, 0)
  if (wall.kilnS === Infinity && kilnExcess(wall) <= 1) wall.kilnS = nowS
}
