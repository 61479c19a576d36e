/** How long the wax on a foot takes to set. */

import { oneOf } from '../check.ts'
import type { Air } from '../contract.ts'
import { wetSurface } from './air.ts'
import { checkedAir } from './vapour.ts'

export type Wax = 'hot' | 'water'

/** Hot wax, by its cooling alone, at 20 degC: a few minutes (common practice, no source). */
const HOT_SET_MIN = 5
/** Hot wax starts near its melt and is firm near this, degC (paraffin melts at 50 to 60, memory). */
const HOT_C = 80
const FIRM_C = 40
const ROOM_C = 20
/** Water a coat of water-based wax brings, mm: 0.1 mm at half solids (assumption). */
const WAX_WATER_MM = 0.05
/** Part of it that bisque drinks at once; the air must take the rest (tuned to about half an hour in a dry room). */
const DRUNK_PART = 0.5
/** Width of a foot for the law of evaporation, mm. */
const FOOT_MM = 70

/**
 * Minutes until wax no longer smears. Hot wax sets by cooling, whatever the humidity: Newton's law from the pan's heat
 * to firm, five minutes at 20 degC. Water-based wax sets as its water leaves: Infinity in saturated air.
 */
export function waxSetMin(wax: Wax, air: Air): number {
  oneOf('wax', wax, ['hot', 'water'])
  if (wax === 'hot') {
    checkedAir(air)
    const cooling = (roomC: number): number => Math.log((HOT_C - roomC) / (FIRM_C - roomC))
    return air.tempC < FIRM_C ? (HOT_SET_MIN * cooling(air.tempC)) / cooling(ROOM_C) : Infinity
  }
  const { evaporationKgPerM2s } = wetSurface(air, FOOT_MM)
  return evaporationKgPerM2s > 0 ? (WAX_WATER_MM * (1 - DRUNK_PART)) / evaporationKgPerM2s / 60 : Infinity
}
