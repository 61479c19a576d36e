/** The bisque-fired wall as a store of water and as a pump. */

import { inRange } from '../check.ts'
import type { Body } from '../contract.ts'
import { FILLABLE_OF_BOIL, FILLABLE_OF_SOAK } from '../parameters.ts'

/**
 * Bisque of cone 06 to 04 by cold soak. Absorption: studio range 0.10 to 0.18 (seen for wall tile 0.12 to 0.14).
 * Bulk density: 1.75 to 1.95 (assumption). Sorptivity: 0.22 mm/sqrt s is tuned; bricks of like porosity
 * measured 0.05 to 0.36 (seen), so a two-time water dip of a tile is the way to know.
 */
export const DEFAULT_BODY: Body = {
  absorption: 0.13,
  absorptionTest: 'soak',
  bulkGramsPerMl: 1.94,
  sorptivityMmPerSqrtS: 0.22,
}

/** Open pores by volume: water absorbed per dry mass times bulk density (ISO 10545-3). */
export const porosity = (body: Body): number => body.absorption * body.bulkGramsPerMl

/** Water that dipping can put into a mm of wall, mm/mm. */
export const fillablePerMm = (body: Body): number =>
  porosity(body) * (body.absorptionTest === 'boil' ? FILLABLE_OF_BOIL : FILLABLE_OF_SOAK)

/** Throws RangeError unless absorption (0 to 0.4), bulk density (1 to 3) and sorptivity (0 to 2) make sense. */
export function checkedBody(body: Body): Body {
  inRange('absorption', body.absorption, 0, 0.4)
  inRange('bulkGramsPerMl', body.bulkGramsPerMl, 1, 3)
  inRange('porosity (absorption x bulkGramsPerMl)', porosity(body), 0, 0.95)
  inRange('sorptivityMmPerSqrtS', body.sorptivityMmPerSqrtS, 0, 2)
  return body
}

/** Suction against that at 20 degC, from surface tension and viscosity of water (IAPWS). */
const SUCTION_BY_TEMP: readonly (readonly [tempC: number, factor: number])[] = [
  [0, 0.7625],
  [10, 0.8847],
  [15, 0.9432],
  [20, 1],
  [25, 1.0552],
  [30, 1.1089],
  [40, 1.2117],
]

/** How much faster a wall drinks than at 20 degC: sqrt(tension/viscosity) of water, straight between the rows. */
export function suctionFactor(tempC: number): number {
  let [beforeC, before] = SUCTION_BY_TEMP[0]!
  if (tempC <= beforeC) return before
  for (const [atC, factor] of SUCTION_BY_TEMP) {
    if (tempC <= atC) return before + ((factor - before) * (tempC - beforeC)) / (atC - beforeC || 1)
    beforeC = atC
    before = factor
  }
  return before
}
