/** The engine's public surface: how wet a wall is, how thick a dip comes out, how long a wait lasts. */

export * from './air.ts'
export { DEFAULT_BODY, fillablePerMm, porosity } from './body.ts'
export * from './bucket.ts'
export {
  absorptionOf,
  type CoatReading,
  coatFromDryGain,
  coatFromWetGain,
  type PickUp,
  packingOf,
  pickUpOf,
  pinPickUp,
  sorptivityOf,
} from './calibrate.ts'
export * from './cloth.ts'
export * from './collar.ts'
export * from './cones.ts'
export type * from './contract.ts'
export * from './dew.ts'
export * from './displacement.ts'
export * from './firing.ts'
export { type Split, type StackFit, stackThatFits } from './fit.ts'
export { forecastPot } from './forecast.ts'
export * from './geometry.ts'
export { type Grade, gradeZone, type Limits, worstZone, type ZoneGrade } from './grade.ts'
export { eventsIn, type HalfAndHalf, type HalfOf, halfAndHalf, type Sector } from './half-and-half.ts'
export { type Reach, reachOf, secondsUnder } from './immersion.ts'
export {
  type Dropped,
  forGlaze,
  type Lesson,
  type Look,
  learn,
  type Observation,
  type Weighing,
  waterFromWeight,
} from './learn.ts'
export { type Learned, UNLEARNED } from './learned.ts'
export * from './materials.ts'
export * from './melt.ts'
export * from './neck.ts'
export { type NextTouch, touchNext, type Waiting } from './next-touch.ts'
export * from './pair.ts'
export { forecastPieces, type PieceOfPot, type PiecesForecast } from './pieces.ts'
export { type Repair, type RestDip, repairRest } from './repair.ts'
export {
  densityFor,
  type NextCoat,
  nextCoat,
  type SecondsFor,
  type Standing,
  secondsFor,
} from './seconds.ts'
export { defaultSlip, densestGramsPerMl, shedPerMm } from './slip.ts'
export * from './slurry.ts'
export { type Wax, waxSetMin } from './wax.ts'
export { skirtTopMm } from './zones.ts'
