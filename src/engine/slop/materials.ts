/** True densities of dry glaze materials, for the solids gravity of a recipe. */
import { between, inRange } from '../check.ts'

/**
 * g/mL. CRC: Physical Constants of Inorganic Compounds, as tabulated in the open `chemicals` library. Handbook:
 * mineral handbooks, for what the table lacks (kaolin from memory). Frits differ by make: give their own figure.
 */
export const GRAVITY = {
  // CRC
  quartz: 2.648,
  cristobalite: 2.334,
  whiting: 2.71,
  magnesite: 3.01,
  bariumCarbonate: 4.308,
  strontiumCarbonate: 3.785,
  lithiumCarbonate: 2.11,
  manganeseCarbonate: 3.7,
  manganeseDioxide: 5.08,
  cobaltCarbonate: 4.2,
  cobaltOxide: 6.11,
  copperOxide: 6.31,
  chromeOxide: 5.22,
  ironOxide: 5.25,
  nickelOxide: 6.72,
  tinOxide: 6.85,
  zincOxide: 5.6,
  zircon: 4.6,
  rutile: 4.17,
  alumina: 3.99,
  aluminaHydrate: 2.42,
  wollastonite: 2.92,
  potashFeldspar: 2.56,
  boneAsh: 3.14,
  // Handbook
  sodaFeldspar: 2.63,
  dolomite: 2.87,
  kaolin: 2.6,
  ballClay: 2.6,
  talc: 2.75,
  nephelineSyenite: 2.55,
} as const satisfies Record<string, number>

export type Material = keyof typeof GRAVITY

export interface Part {
  readonly name: string
  /** Parts by weight, in any unit; additions over a hundred are parts like the others. */
  readonly parts: number
  readonly gramsPerMl: number
}

/**
 * Solids gravity of a dry mix, g/mL: total mass over the sum of the volumes (harmonic mean by mass). Leave out
 * what dissolves (soda ash, borax). RangeError for an empty mix, a negative part or a gravity outside 1 to 12.
 */
export function gravityOfMix(mix: readonly Part[]): number {
  let [mass, volume] = [0, 0]
  for (const { name, parts, gramsPerMl } of mix) {
    mass += inRange(`parts of ${name}`, parts, 0, 1e6)
    volume += parts / between(`gramsPerMl of ${name}`, gramsPerMl, 1, 12)
  }
  between('parts in all', mass, 0, Infinity)
  return mass / volume
}
