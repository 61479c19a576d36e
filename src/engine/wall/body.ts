/** The bisque-fired wall as a store of water and as a pump. */

import { inRange } from '../check.ts'
import type { Body } from '../contract.ts'
import { FILLABLE_OF_BOIL, FILLABLE_OF_SOAK } from '../parameters.ts'

/** Fired clay without its pores, g/mL. Assumption: quartz 2.65, fired kaolin 2.5 to 2.7. */
const SOLID_GRAMS_PER_ML = 2.6
/** Bisque to cone 04 by cold soak. Assumption; wall tile 0.12 to 0.14 (seen). */
const USUAL_ABSORPTION = 0.12
/**
 * Sorptivity of that bisque, mm/sqrt s. Tuned to the trade's waits; three fired clays of like porosity measured 0.05,
 * 0.07 and 0.18 (seen), so two water dips of a tile are the way to know.
 */
const USUAL_SORPTIVITY = 0.098
/**
 * Sorptivity grows with this power of the open porosity. Assumption: at one pore size it goes by the square root of
 * permeability times porosity, a power of 2 by Kozeny & Carman; seven bricks fit 3.5 with a factor of 1.46 about it.
 */
const SUCTION_POWER = 2
/** Doubt of that power, which grows with the distance from the usual bisque, and of sorptivity there (judgements). */
const POWER_SD = 0.5
const USUAL_SD = 0.3
/** Doubt of one tile's water dips on a kitchen scale (a judgement). */
const DIPPED_SD = 0.1

/** How far ln(coat) follows ln(sorptivity) at 3 s and 1.45, from the series law and the film. */
export const OF_SORPTIVITY = 0.6

const bulkOf = (absorption: number): number => SOLID_GRAMS_PER_ML / (1 + SOLID_GRAMS_PER_ML * absorption)

/**
 * A bisque of this absorption by cold soak. Suction follows absorption, and with it the cone of the bisque, from a tile
 * that was dipped in water, or else from the usual bisque.
 */
export function bisqueOf(absorption: number, dipped?: DippedTile): Body {
  const bulkGramsPerMl = bulkOf(absorption)
  const usual = dipped?.sorptivityMmPerSqrtS ?? USUAL_SORPTIVITY
  const like = dipped?.absorption ?? USUAL_ABSORPTION
  const pores = poresOf(absorption) / poresOf(like)
  return {
    absorption,
    absorptionTest: 'soak',
    bulkGramsPerMl,
    sorptivityMmPerSqrtS: Math.min(MOST_SORPTIVITY, usual * pores ** SUCTION_POWER),
    sorptivitySd: Math.min(MOST_SD, Math.hypot(dipped ? DIPPED_SD : USUAL_SD, POWER_SD * Math.log(pores))),
  }
}

/** Open pores, at least those of a body that hardly drinks: the power law ends there. */
const poresOf = (absorption: number): number =>
  Math.max(LEAST_ABSORPTION, absorption) * bulkOf(Math.max(LEAST_ABSORPTION, absorption))

/** A tile of the same clay, dipped twice in water. */
export interface DippedTile {
  readonly absorption: number
  readonly sorptivityMmPerSqrtS: number
}

/** The same body once a tile of it was dipped: its suction as it is, known as well as a kitchen scale tells. */
export const dippedBody = (body: Body): Body => ({ ...body, sorptivitySd: DIPPED_SD })

/** Nor is suction doubted more than this, sd of its logarithm. */
const MOST_SD = 0.5
/** No clay drinks faster, mm/sqrt s. */
const MOST_SORPTIVITY = 2
/** Below this absorption suction falls no further. */
const LEAST_ABSORPTION = 0.01

/** The app's usual bisque, to cone 04. */
export const DEFAULT_BODY: Body = bisqueOf(USUAL_ABSORPTION)

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
  inRange('sorptivityMmPerSqrtS', body.sorptivityMmPerSqrtS, 0, MOST_SORPTIVITY)
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
