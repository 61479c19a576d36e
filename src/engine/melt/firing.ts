/** Firings as heat: work of a logged firing, the cone it reached, and how the flow dose changes with a firing. */

import { KELVIN } from '../air/vapour.ts'
import { between, inRange } from '../check.ts'
import { CONE_FIGURES, type ConeSeries } from './cone-table.ts'
import { conesOf, coneTemp } from './cones.ts'
import { MOST_SCALE } from './flow-tile.ts'

/** A reading of the kiln: minutes on any zero, degC. */
export interface LogPoint {
  readonly atMin: number
  readonly tempC: number
}

/** The top of a firing: the rise over the last 100 degC, the hold at the peak and the first cooling. */
export interface Firing {
  readonly peakC: number
  readonly rateCPerH: number
  readonly holdMin: number
  readonly coolCPerH: number
}

export interface Scale {
  readonly low: number
  readonly likely: number
  readonly high: number
}

/** Which cone a log brought down; `missedC` is how many kelvins more the next one would have needed. */
export interface ConeReached {
  readonly reached: string | null
  readonly next: string | null
  readonly missedC: number | null
}

/** Molar gas constant, J/(mol K), CODATA 2018. */
export const GAS_J_PER_MOL_K = 8.314462618
/** Where a minute of heat work is a minute: cone 6 self-supporting at 60 degC/h. */
export const REFERENCE_C = 1222
/**
 * Activation energies of flow, kJ/mol: median of 32 measured glaze-like melts, 1050 to 1350 degC (open SciGlass
 * subset: 177/264/338 at 5/50/95 %). The upper end is not a melt's: it stands for grains still dissolving.
 */
export const FLOW_KJ_PER_MOL = { low: 180, likely: 264, high: 650 } as const
/** Below the peak by this much no glaze or cone of that firing moves, K: e-folds are 10 to 100 K. */
const SPAN_C = 500
/** Unlogged cooling of an electric kiln just below its peak, degC/h (assumption). */
const COOLING_C_PER_H = 150

/** Three-point Gauss-Legendre on [-1, 1]. */
const NODES = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)]
const WEIGHTS = [5 / 18, 8 / 18, 5 / 18]
const STEP_C = 10

/** Integral over a log of a rate that depends on temperature alone, per minute; temperatures run straight between. */
export function overLog(log: readonly LogPoint[], perMin: (tempC: number) => number): number {
  let sum = 0
  for (let i = 1; i < log.length; i++) {
    const a = log[i - 1]!
    const b = log[i]!
    const spanMin = between(`log[${i}].atMin - log[${i - 1}].atMin`, b.atMin - a.atMin, -1e-9, 1e6)
    const steps = Math.max(1, Math.ceil(Math.abs(b.tempC - a.tempC) / STEP_C))
    for (let s = 0; s < steps; s++)
      for (let g = 0; g < 3; g++) {
        const share = (s + 0.5 + 0.5 * NODES[g]!) / steps
        sum += (WEIGHTS[g]! * spanMin * perMin(a.tempC + share * (b.tempC - a.tempC))) / steps
      }
  }
  return sum
}

/**
 * Heat work of a log: minutes at 1222 degC that do as much for a process of `kJPerMol` (50 to 2000).
 * RangeError when times run backwards or a temperature is outside -50 to 1500 degC.
 */
export function heatWorkMin(log: readonly LogPoint[], kJPerMol: number): number {
  between('kJPerMol', kJPerMol, 50, 2000)
  for (const [i, point] of log.entries()) inRange(`log[${i}].tempC`, point.tempC, -50, 1500)
  const perK = (kJPerMol * 1000) / GAS_J_PER_MOL_K
  return overLog(log, (tempC) => Math.exp(perK * (1 / (REFERENCE_C + KELVIN) - 1 / (tempC + KELVIN))))
}

/** The log a firing would leave: 500 degC up to the peak, the hold, and 500 degC down. */
export function logOf(firing: Firing): readonly LogPoint[] {
  inRange('firing.peakC', firing.peakC, 500, 1500)
  between('firing.rateCPerH', firing.rateCPerH, 0, 3000)
  inRange('firing.holdMin', firing.holdMin, 0, 6000)
  between('firing.coolCPerH', firing.coolCPerH, 0, 10_000)
  const topMin = (SPAN_C / firing.rateCPerH) * 60
  const downMin = topMin + firing.holdMin
  return [
    { atMin: 0, tempC: firing.peakC - SPAN_C },
    { atMin: topMin, tempC: firing.peakC },
    { atMin: downMin, tempC: firing.peakC },
    { atMin: downMin + (SPAN_C / firing.coolCPerH) * 60, tempC: firing.peakC - SPAN_C },
  ]
}

/** A firing straight to a cone's charted end point, no hold; null when the series has no such cone. */
export function firingToCone(cone: string, series: ConeSeries, rateCPerH: number): Firing | null {
  const end = coneTemp(cone, series, rateCPerH)
  return end && { peakC: end.tempC, rateCPerH, holdMin: 0, coolCPerH: COOLING_C_PER_H }
}

/**
 * Flow dose of the planned firing over that of the tested one. The band spans the activation energies, so its
 * upper edge is the pessimistic one whether the planned firing is hotter or cooler.
 */
export function doseScale(tested: Firing, planned: Firing): Scale {
  const [before, after] = [logOf(tested), logOf(planned)]
  const ratio = (kJ: number): number => Math.min(MOST_SCALE, heatWorkMin(after, kJ) / heatWorkMin(before, kJ))
  const ratios = [FLOW_KJ_PER_MOL.low, FLOW_KJ_PER_MOL.likely, FLOW_KJ_PER_MOL.high].map(ratio)
  return { low: Math.min(...ratios), likely: ratios[1]!, high: Math.max(...ratios) }
}

/** A self-supporting American cone as heat work. */
export interface ConeWork {
  readonly cone: string
  readonly kJPerMol: number
  /** Natural logarithm of the heat work that brings it down, minutes at 1222 degC. */
  readonly lnWork: number
}

const rampTo = (tempC: number, rateCPerH: number): readonly LogPoint[] => [
  { atMin: 0, tempC: tempC - SPAN_C },
  { atMin: (SPAN_C / rateCPerH) * 60, tempC },
]

/** Mean log work over a cone's charted rates and the worst misfit, K, for one activation energy. */
function fitOf(points: readonly { tempC: number; rateCPerH: number }[], kJPerMol: number) {
  const works = points.map((p) => Math.log(heatWorkMin(rampTo(p.tempC, p.rateCPerH), kJPerMol)))
  const lnWork = works.reduce((sum, w) => sum + w, 0) / works.length
  return { lnWork, misfit: works.reduce((sum, w) => sum + (w - lnWork) ** 2, 0) / kJPerMol ** 2 }
}

function workOf(cone: string): ConeWork {
  const points = CONE_FIGURES.flatMap((f) =>
    f.cone === cone && f.mounting === 'selfSupporting' && f.rateCPerH !== null
      ? [{ tempC: f.tempC, rateCPerH: f.rateCPerH }]
      : [],
  )
  // Golden section on the energy: the misfit has one dip between the ends.
  const golden = (Math.sqrt(5) - 1) / 2
  let [low, high] = [150, 1900]
  for (let i = 0; i < 24; i++) {
    const a = high - golden * (high - low)
    const b = low + golden * (high - low)
    if (fitOf(points, a).misfit < fitOf(points, b).misfit) high = b
    else low = a
  }
  const kJPerMol = (low + high) / 2
  return { cone, kJPerMol, lnWork: fitOf(points, kJPerMol).lnWork }
}

/** A hold sags and a thermocouple wavers by this much, K; below it a firing cools. A judgement. */
const AT_TOP_C = 5

let works: readonly ConeWork[] | null = null
/** Every self-supporting American cone, the lowest first. */
export const coneWorks = (): readonly ConeWork[] => {
  works ??= conesOf('american', 'selfSupporting').map(workOf)
  return works
}

/**
 * The hottest self-supporting American cone that a log brought down, by heat work fitted to the chart at 15, 60 and
 * 150 degC/h (each cone its own energy: rms 1.2, worst 3.4 degC there). Like the chart's firings the log counts up to
 * where it leaves its top: the cooling after it is in the chart already. The thermocouple's own error comes on top.
 * RangeError for fewer than two readings or as for `heatWorkMin`.
 */
export function coneOfLog(log: readonly LogPoint[]): ConeReached {
  inRange('log.length', log.length, 2, 1e6)
  const hottestC = Math.max(...log.map((p) => p.tempC))
  const left = log.findLastIndex(({ tempC }) => tempC >= hottestC - AT_TOP_C)
  const rising = log.slice(0, Math.max(2, left + 1))
  let reached: string | null = null
  for (const work of coneWorks()) {
    const shortLn = work.lnWork - Math.log(heatWorkMin(rising, work.kJPerMol))
    if (shortLn <= 0) {
      reached = work.cone
      continue
    }
    const perLnC = (GAS_J_PER_MOL_K * (hottestC + KELVIN) ** 2) / (work.kJPerMol * 1000)
    return { reached, next: work.cone, missedC: shortLn * perLnC }
  }
  return { reached, next: null, missedC: null }
}
