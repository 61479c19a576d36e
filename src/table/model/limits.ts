import type { Refusal } from './action.ts'
import { HIDDEN } from './plain-name.ts'
import { EDGE_UP_MM, HELD_S, outOf, type Range } from './range.ts'

/** Allowed range of every number a person can enter, in the unit it is stored in. */
export const LIMITS = {
  number: { least: 1, most: 9999, whole: true },
  heightMm: { least: 10, most: 600 },
  rimMm: { least: 10, most: 500 },
  bellyMm: { least: 10, most: 600 },
  footMm: { least: 10, most: 500 },
  wallMm: { least: 1, most: 30 },
  footLineMm: { least: 0, most: 60 },
  galleryMm: { least: 1, most: 40 },
  absorption: { least: 0, most: 0.4 },
  tempC: { least: 0, most: 45 },
  rh: { least: 0.05, most: 1 },
  altitudeM: { least: -400, most: 5000 },
  /** A wet thermometer, and pots out of a shed. */
  wetC: { least: -10, most: 45 },
  potsC: { least: -20, most: 45 },
  clothMm: { least: 100, most: 2000 },
  clothG: { least: 5, most: 5000 },
  /** Beyond these a cloth was weighed wrongly, or was dry. */
  airFactor: { least: 0.2, most: 5 },
  clothMin: { least: 10, most: 600 },
  /** Measured on bricks 0.03 to 0.36; bisque may drink faster (assumption). */
  sorptivityMmPerSqrtS: { least: 0.01, most: 0.8 },
  tileG: { least: 0.1, most: 500 },
  areaCm2: { least: 5, most: 5000 },
  tileS: { least: 1, most: 600 },
  gramsPerMl: { least: 1.05, most: 1.9 },
  toleranceGramsPerMl: { least: 0.005, most: 0.1 },
  solidsGravity: { least: 2, most: 4.5 },
  insideMm: { least: 100, most: 800 },
  litres: { least: 0.2, most: 120 },
  bucketHeightMm: { least: 80, most: 1000 },
  limitMm: { least: 0.2, most: 3 },
  pinMm: { least: 0.1, most: 1.5 },
  /** Slop on a plate that can't drink: a hundredth of a millimetre to a gel of 20 Pa. */
  clingsGramsPerCm2: { least: 0.002, most: 0.2 },
  slideG: { least: 0.02, most: 20 },
  /** A pot on a kitchen scale. */
  grams: { least: 10, most: 20_000 },
  /** A coat as planned: nothing is computed for a shorter one. */
  holdS: { least: 0.5, most: 60 },
  heldS: HELD_S,
  edgeUpMm: EDGE_UP_MM,
  depthMm: { least: 2, most: 300 },
  leadInS: { least: 3, most: 8, whole: true },
  lowerMmPerS: { least: 20, most: 400 },
  dripS: { least: 3, most: 60 },
  staleMin: { least: 1, most: 60 },
  stackLimitMm: { least: 0.3, most: 3 },
  collarVesselMm: { least: 60, most: 500 },
  firstWaitMin: { least: 1, most: 12 * 60 },
  laterWaitMin: { least: 1, most: 12 * 60 },
  kilnWaitMin: { least: 10, most: 7 * 24 * 60 },
  loadMin: { least: 0, most: 12 * 60 },
  agoMin: { least: 0, most: 24 * 60 },
  /** Dry coat of a test tile's stripe. */
  dryMm: { least: 0.05, most: 3 },
  bandMm: { least: 10, most: 300 },
  runMm: { least: 0, most: 300 },
  longestMm: { least: 0, most: 400 },
  /** The charts end at 15 and 300 degC/h; beyond them the nearest column holds. */
  riseCPerH: { least: 5, most: 600 },
  fireHoldMin: { least: 0, most: 600 },
  topC: { least: 500, most: 1400 },
  /** A reading in a firing's book. */
  logC: { least: 0, most: 1400 },
  /** Firings of one glaze over another. */
  firings: { least: 0, most: 999, whole: true },
  cupMl: { least: 20, most: 2000 },
  cupEmptyG: { least: 0, most: 2000 },
  cupFullG: { least: 20, most: 6000 },
  copies: { least: 1, most: 40, whole: true },
  /** A kiln's inside, and its furniture: a shelf stands on three posts. */
  chamberMm: { least: 100, most: 2000 },
  shelfMm: { least: 80, most: 2000 },
  shelfThickMm: { least: 3, most: 60 },
  shelfCount: { least: 1, most: 60, whole: true },
  postMm: { least: 10, most: 600 },
  postCount: { least: 3, most: 400, whole: true },
  /** Where a probe or a spy hole is, and how far a probe stands in. */
  upMm: { least: 0, most: 2000 },
  angleDeg: { least: 0, most: 360 },
  reachMm: { least: 0, most: 300 },
  /** The kiln's thermometer, in the cold as well. */
  readC: { least: -50, most: 1400 },
  /** A kiln against its thermometer. */
  offsetC: { least: -100, most: 100 },
  /** How far melt came down the outside of a pot: the tallest and widest has less wall. */
  meltMm: { least: 0, most: 1200 },
  /** How many times as told a melt runs: the engine's own curve ends there. */
  factor: { least: 0.02, most: 50 },
  /** Longest drip against the mean front. */
  drip: { least: 1, most: 50 },
} as const satisfies Record<string, Range>

export type LimitedField = keyof typeof LIMITS

/** A photograph as it is kept, bytes: the largest of its sides is 1280 px. */
export const PHOTO_MOST_BYTES = 4_000_000

/** Longest name of a bucket or a stack, in characters. */
export const NAME_MOST = 24

/** A refusal naming field, value and range, or undefined when the value is allowed. */
export const outOfRange = (field: LimitedField, value: number): Refusal | undefined =>
  outOf(LIMITS[field], field, value)

/** A name after trimming, or why not. */
export function checkName(field: string, name: string): Refusal | undefined {
  if (name.trim() === '') return { code: 'missing', field }
  if (HIDDEN.test(name)) return { code: 'hidden-letters', field }
  if ([...name.trim()].length > NAME_MOST) return { code: 'too-long', field, facts: { most: NAME_MOST } }
  return undefined
}
