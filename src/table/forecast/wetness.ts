import { type DryingCurve, dryingCurve, type Wetness, wetnessAfter } from '../../engine/wait/drying-curve.ts'
import type { PotState, Table } from '../model/state.ts'
import { type Forecast, forecastOf } from './forecast.ts'
import { historyOf, MIN_MS } from './pot-history.ts'

const kept = new WeakMap<Forecast, DryingCurve>()
const DRY: Wetness = { film: 0, damp: 0 }

/**
 * What is still wet of a pot at table time `now`, of its face that is dry last, 1 fresh out of the bucket or the tap to 0
 * ready, as its room understands ready; of a room that goes by its clock, to touch-dry. The way is the wall's own, as
 * long as the wait that is likely: what checks taught, and a finger that found it wet, stretch it. Nothing of a bare dry
 * pot, however its wax sets.
 */
export function wetnessAt(table: Table, pot: PotState, now: number): Wetness {
  const forecast = forecastOf(table, pot)
  if (!forecast) return DRY
  const isThirst = table.settings.readyMeans === 'thirsty' || pot.dips.length === 0
  const goal = isThirst ? 'thirsty' : 'touch'
  let curve = kept.get(forecast)
  if (!curve) {
    const { pot: wall, events, air0 } = historyOf(table, pot)
    curve = dryingCurve(wall, events, air0, Math.exp(forecast.learned.fillMean), goal)
    kept.set(forecast, curve)
  }
  const fromMs = curve.fromMin * MIN_MS
  const { likely } = forecast[goal]
  const lastsMs = Number.isFinite(likely) ? likely - fromMs : curve.lastsMin * MIN_MS
  return lastsMs > 0 ? wetnessAfter(curve, (now - fromMs) / lastsMs) : DRY
}
