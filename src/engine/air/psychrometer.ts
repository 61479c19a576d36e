/** Humidity from a dry and a wet thermometer side by side. */

import { inRange, oneOf } from '../check.ts'
import { PRESSURE_PA, saturationPressurePa } from './vapour.ts'

/** Thermometer pairs stand in rooms. */
const ROOM_C = [-20, 60] as const

export type PairDraught = 'fanned' | 'natural' | 'still'

/**
 * Psychrometer coefficients, 1/K. Fanned: 6.53e-4 (1 + 0.000944 wet), WMO guide no. 8 (formula from memory).
 * Natural and still: 8.0e-4 and 1.2e-3 without that factor, FAO Irrigation and drainage paper 56, eq. 16.
 */
const PAIR: Record<PairDraught, { readonly perK: number; readonly perWetK: number }> = {
  fanned: { perK: 6.53e-4, perWetK: 0.000944 },
  natural: { perK: 8.0e-4, perWetK: 0 },
  still: { perK: 1.2e-3, perWetK: 0 },
}
/** An iced wick: 5.82/6.60 of the coefficient over water (AMS Glossary of Meteorology, psychrometric formula). */
const ICED = 5.82 / 6.6

function pairRh(dryC: number, wetC: number, draught: PairDraught, pressurePa: number): number {
  inRange('dryC', dryC, ...ROOM_C)
  inRange('wetC', wetC, ROOM_C[0], dryC)
  inRange('pressurePa', pressurePa, ...PRESSURE_PA)
  const law = PAIR[oneOf('draught', draught, ['fanned', 'natural', 'still'])]
  const perK = law.perK * (1 + law.perWetK * wetC) * (wetC < 0 ? ICED : 1)
  return (saturationPressurePa(wetC) - perK * pressurePa * (dryC - wetC)) / saturationPressurePa(dryC)
}

/**
 * Relative humidity, 0 to 1, from a dry and a wet thermometer. The draught over the wick matters much: 20/15 degC
 * is 0.59 fanned and 0.47 still. A pair no air could give (see `pairTrouble`) is held to 0.
 * RangeError when the wet one reads above the dry one or either is outside -20 to 60 degC.
 */
export function rhFromPair(dryC: number, wetC: number, draught: PairDraught, pressurePa: number): number {
  return Math.min(1, Math.max(0, pairRh(dryC, wetC, draught, pressurePa)))
}

/**
 * What to ask about a pair of readings: `tooDry`, no air is that dry with this draught, so the wick was probably
 * fanned; `icy`, the wick may be frozen; otherwise `none`.
 */
export function pairTrouble(
  dryC: number,
  wetC: number,
  draught: PairDraught,
  pressurePa: number,
): 'none' | 'tooDry' | 'icy' {
  const rh = pairRh(dryC, wetC, draught, pressurePa)
  if (wetC < 0) return 'icy'
  return rh < 0 ? 'tooDry' : 'none'
}
