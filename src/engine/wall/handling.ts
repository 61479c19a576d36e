/** What sponges and the tap do to a piece of wall. */

import { TOUCH_EMPTY } from '../parameters.ts'
import { intoBody, otherSide, roomBehind, type Side, type Wall, waterOf } from './wall.ts'

/** A damp sponge leaves `mm` of water; the body takes what it has room for. */
export function sponge(wall: Wall, side: Side, mm: number): void {
  const other = otherSide(wall, side)
  const taken = Math.min(mm, roomBehind(side, other))
  intoBody(side, other, taken)
  wall.brought += taken
  side.thirstyS = Infinity
  wall.kilnS = Infinity
}

/**
 * A finger finds a face touch-dry: it has no film, and as much of its newest coat is empty as that means. What was still
 * counted there the wall has drunk, as far as it has room, and the air the rest.
 */
export function foundDry(wall: Wall, side: Side, atS: number): void {
  if (side.coatMm === 0) return
  const wet = Math.max(0, side.coat - side.pore + TOUCH_EMPTY * side.newPore)
  const mm = side.film + wet
  const other = otherSide(wall, side)
  const taken = Math.min(mm, roomBehind(side, other))
  side.resistance += side.perR2 * side.film
  side.film = 0
  side.coat -= wet
  intoBody(side, other, taken)
  side.path += taken
  wall.evaporated += mm - taken
  side.touchS = Math.min(side.touchS, atS)
}

/** Coats washed off under the tap; the wall is full of water afterwards. */
export function washOff(wall: Wall): void {
  const before = waterOf(wall)
  for (const side of [wall.outside, wall.inside]) {
    side.film = 0
    side.coat = 0
    side.pore = 0
    side.perPore = 0
    side.newPore = 0
    side.coatMm = 0
    side.resistance = 0
    side.path = 0
    side.body = side.cap
    side.lends = 0
    side.touchS = Infinity
    side.thirstyS = Infinity
  }
  wall.kilnS = Infinity
  wall.brought += waterOf(wall) - before
}
