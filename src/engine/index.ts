/** The engine's public surface: how wet a wall is, how thick a dip comes out, how long a wait lasts. */

export * from './air.ts'
export { DEFAULT_BODY, fillablePerMm, porosity } from './body.ts'
export {
  absorptionOf,
  type CoatReading,
  coatFromDryGain,
  coatFromWetGain,
  type PickUp,
  packingOf,
  pickUpFromPin,
  pickUpOf,
  pinPickUp,
  sorptivityOf,
} from './calibrate.ts'
export type * from './contract.ts'
export { forecastPot } from './forecast.ts'
export * from './geometry.ts'
export { type Reach, reachOf, secondsUnder } from './immersion.ts'
export { type Learned, UNLEARNED } from './learned.ts'
export { defaultSlip, densestGramsPerMl, shedPerMm } from './slip.ts'
export { type Wax, waxSetMin } from './wax.ts'
export { skirtTopMm } from './zones.ts'
