/** What sponges and the tap do to a piece of wall. */

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
    side.touchS = Infinity
    side.thirstyS = Infinity
  }
  wall.kilnS = Infinity
  wall.brought += waterOf(wall) - before
}
