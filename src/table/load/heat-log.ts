import type { Band } from '../../engine/contract.ts'
import type { LogPoint } from '../../engine/melt/firing.ts'
import type { BandMs } from '../forecast/forecast.ts'
import type { HeatReading } from '../model/load-state.ts'

const MIN_MS = 60_000

/** Readings in minutes after the first. */
export const logOf = (readings: readonly HeatReading[]): readonly LogPoint[] =>
  readings.map(({ at, tempC }) => ({ atMin: (at - (readings[0]?.at ?? 0)) / MIN_MS, tempC }))

/** Moments so many minutes after one, both in table time, ms. */
export const after = (at: number, { lower, likely, upper }: Band): BandMs => ({
  lower: at + lower * MIN_MS,
  likely: at + likely * MIN_MS,
  upper: at + upper * MIN_MS,
})
