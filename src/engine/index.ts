/** The engine's public surface: how wet a wall is, how thick a dip comes out, how long a wait lasts. */

export * from './air/air.ts'
export * from './air/dew.ts'
export * from './air/psychrometer.ts'
export { type Wax, waxSetMin } from './air/wax.ts'
export * from './air/witness-cloth.ts'
export * from './bucket/bucket.ts'
export * from './bucket/collar.ts'
export type * from './contract.ts'
export { type CoatAgain, type Difference, differences, stackAgain } from './fired/again.ts'
export { dipAlarm, dipDensity } from './fired/dip-density.ts'
export { type FlowLesson, flowLesson, nextPot, type SubjectLesson } from './fired/flow-lesson.ts'
export { type GuessScore, guessScore } from './fired/guess-score.ts'
export { leadsTo, mayBeClear, pairShown } from './fired/proven.ts'
export { type RoomMemory, roomMemory } from './fired/room-memory.ts'
export { lnKOf, type RunSeen, runCurve, sharesOf } from './fired/run-curve.ts'
export { thicknessLimit } from './fired/thickness-limit.ts'
export { type TileValue, tileValues } from './fired/tile-value.ts'
export { CANDLING_C, type Candled, type Candling, candling } from './kiln/candling.ts'
export * from './kiln/contract.ts'
export { gapMm, type Trouble, troublesAt } from './kiln/gaps.ts'
export { slabRadiusMm } from './kiln/items.ts'
export {
  type FoundPiece,
  type Matched,
  type Matching,
  type MatchPot,
  matching,
  SHRINKAGE,
  type Shrinkage,
} from './kiln/matching.ts'
export type { LoadAsk, LoadReply } from './kiln/messages.ts'
export { inOrder } from './kiln/places.ts'
export { firstLoad, proposeLoad, proposing } from './kiln/propose.ts'
export * from './melt/cones.ts'
export * from './melt/firing.ts'
export * from './melt/melt.ts'
export * from './shape/displacement.ts'
export * from './shape/geometry.ts'
export { type Reach, reachOf, secondsUnder } from './shape/immersion.ts'
export * from './shape/neck.ts'
export { skirtTopMm } from './shape/zones.ts'
export { defaultSlop, densestGramsPerMl, shedPerMm } from './slop/slop.ts'
export * from './slop/slurry.ts'
export { forecastPot } from './wait/forecast.ts'
export { type Grade, gradeZone, type Limits, worstZone, type ZoneGrade } from './wait/grade.ts'
export { eventsIn, type HalfAndHalf, type HalfOf, halfAndHalf, type Sector } from './wait/half-and-half.ts'
export {
  type Dropped,
  forGlaze,
  type Lesson,
  type Look,
  learn,
  type Observation,
  type Weighing,
} from './wait/learn.ts'
export { type Learned, UNLEARNED } from './wait/learned.ts'
export { type NextTouch, touchNext, type Waiting } from './wait/next-touch.ts'
export { type Repair, type RestDip, repairRest } from './wait/repair.ts'
export {
  densityFor,
  type NextCoat,
  nextCoat,
  type PotHistory,
  type SecondsFor,
  secondsFor,
} from './wait/seconds.ts'
export { type Split, type StackFit, stackThatFits } from './wait/stack-fit.ts'
export { type Measurement, type WaitToCome, type Worth, worthOf } from './wait/worth.ts'
export { bisqueOf, DEFAULT_BODY, fillablePerMm, porosity } from './wall/body.ts'
export {
  type CoatReading,
  coatFromWetGain,
  type PickUp,
  pickUpOf,
  pinPickUp,
  sorptivityOf,
} from './wall/calibrate.ts'
