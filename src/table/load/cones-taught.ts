/** What the cones of a load say of its kiln's thermometer. Temperatures in degC, times table time, ms. */
import { type Offset, offsetOf } from '../../engine/melt/cone-watch.ts'
import { coneTemp, RATE_C_PER_H, USUAL_CONES } from '../../engine/melt/cones.ts'
import type { ConeSeen, HeatReading, LoadState } from '../model/load-state.ts'
import type { Table } from '../model/state.ts'
import { fallOf, loadsOf, standsOf } from './loads.ts'

const MIN_MS = 60_000
/** A cone that was seen so long after the last reading is tied to none. Our choice. */
const BESIDE_MS = 15 * MIN_MS
/** The rise at a fall is that of the last 100 K before it. */
const RISE_K = 100
/** A cone so far from where its chart and this kiln have it is asked about, K: three sds of both. Assumption. */
const ODD_K = 24

/** A cone against what the thermometer showed, K: positive where the kiln is hotter than it shows. */
export interface ConeTaught {
  /** It stands still, and falls at no less. */
  readonly stands?: true
  readonly loadId: string
  readonly cone: string
  readonly at: number
  /** By which it was said. */
  readonly hit: string
  readonly shownC: number
  readonly chartC: number
  readonly overK: number
}

function shownAt(readings: readonly HeatReading[], at: number): number | undefined {
  const before = readings.findLast((reading) => reading.at <= at)
  const next = readings.find((reading) => reading.at >= at)
  if (before && next)
    return next.at === before.at
      ? before.tempC
      : before.tempC + ((next.tempC - before.tempC) * (at - before.at)) / (next.at - before.at)
  const [only, further] = before ? [before, readings.at(-2)] : [next, undefined]
  if (!only || Math.abs(only.at - at) > BESIDE_MS) return undefined
  const perMs = further && only.at > further.at ? (only.tempC - further.tempC) / (only.at - further.at) : 0
  return only.tempC + Math.max(0, perMs) * (at - only.at)
}

function riseAt(load: LoadState, at: number, shownC: number): number {
  const before = load.readings.filter((reading) => reading.at < at && reading.tempC < shownC)
  const from = before.find(({ tempC }) => tempC >= shownC - RISE_K) ?? before.at(-1)
  return from ? ((shownC - from.tempC) / (at - from.at)) * 60 * MIN_MS : load.firing.riseCPerH
}

/** A look at a cone against its chart; undefined where nothing near it was read, or no chart has it. */
function besideChart(load: LoadState, { cone, at, hit }: ConeSeen): ConeTaught | undefined {
  const { firing, loadId, offAt, readings } = load
  // First seen in a kiln that cools: nobody saw at what heat.
  if (firing.make !== 'american' || (offAt !== undefined && at > offAt)) return undefined
  const shownC = shownAt(
    readings.filter((reading) => offAt === undefined || reading.at <= offAt),
    at,
  )
  const perH = shownC === undefined ? 0 : riseAt(load, at, shownC)
  // A rise that no kiln has is a slip in one of its readings.
  const isRise = perH > RATE_C_PER_H.above && perH < RATE_C_PER_H.below
  const chartC = isRise ? coneTemp(cone, USUAL_CONES, perH)?.tempC : undefined
  if (shownC === undefined || chartC === undefined) return undefined
  return { loadId, cone, at, hit, shownC, chartC, overK: chartC - shownC }
}

/** What the fallen cones of a load say of its kiln's thermometer. */
export function conesTaught(load: LoadState): readonly ConeTaught[] {
  const seen = [...new Set(load.cones.map(({ cone }) => cone))]
  return seen.flatMap((cone) => {
    const fall = fallOf(load, cone)
    return (fall?.is === 'down' && besideChart(load, fall)) || []
  })
}

/** The last look at the wanted cone where it stood, as far as it goes; it teaches nothing, but may be far over its chart. */
export function coneStands(load: LoadState): ConeTaught | undefined {
  const look = standsOf(load)
  const beside = look && besideChart(load, look)
  return beside && { ...beside, stands: true }
}

/** What all fallen cones of a kiln come to, whether taken or not. */
export function offsetLearned(table: Table, kilnId: string): (Offset & { readonly of: number }) | undefined {
  const taught = loadsOf(table)
    .filter(({ kiln }) => kiln.kilnId === kilnId)
    .flatMap(conesTaught)
    .filter((cone) => !isOdd(table, kilnId, cone))
  if (taught.length === 0) return undefined
  return { ...offsetOf(taught.map(({ overK }) => overK)), of: taught.length }
}

/** Whether cone and thermometer disagree by more than this kiln does: it is asked which is wrong. */
export function isOdd(table: Table, kilnId: string, { overK, stands }: ConeTaught): boolean {
  const off = overK - (table.offsets?.[kilnId]?.offsetC ?? 0)
  return (stands ? -off : Math.abs(off)) > ODD_K
}
