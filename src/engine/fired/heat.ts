/** How much more a firing made glazes flow than was planned, from the cones that stood in it. */

import { KELVIN } from '../air/vapour.ts'
import { between, inRange } from '../check.ts'
import { FLOW_KJ_PER_MOL, GAS_J_PER_MOL_K } from '../melt/firing.ts'

/** A cone as it stood at the end: its charted end at this rise, degC. */
export interface ConeStood {
  readonly endC: number
  /** `bent`: it bent while the fire went on, and how it ended nobody saw. One that is down stays so. */
  readonly is: 'standing' | 'bending' | 'down' | 'bent'
}

/** Firings of one plan differ by so much in ln dose (sd), and a cone tells it to so much. Assumptions. */
const FIRING_SD = 0.2
const CONE_SD = 0.12
/** A cone that bends lacks so much, K: suppliers have 15 to 25 min from the first bend to down. Assumption. */
const BENDING_K = 10

/**
 * Change of ln dose a kelvin at `tempC`: E/(R T^2), with the median energy of measured melts or `kJPerMol`.
 * RangeError outside 400 to 1500 degC.
 */
export function lnDosePerK(tempC: number, kJPerMol: number = FLOW_KJ_PER_MOL.likely): number {
  inRange('tempC', tempC, 400, 1500)
  between('kJPerMol', kJPerMol, 50, 2000)
  return (kJPerMol * 1000) / (GAS_J_PER_MOL_K * (tempC + KELVIN) ** 2)
}

/** Kelvins over the planned end that a firing came to at least, by cones that fell or bent in it; -Infinity where none did. */
export const atLeastOverK = (cones: readonly ConeStood[], plannedEndC: number): number =>
  Math.max(
    ...cones.map(({ endC, is }) =>
      is === 'standing' ? Number.NEGATIVE_INFINITY : endC - (is === 'down' ? 0 : BENDING_K) - plannedEndC,
    ),
  )

/**
 * Kelvins over the planned end, from cones of one level; null where they don't say. Between the highest that is down and
 * the next that stands half way; one that bends is 10 K short of its own end. Where none tells how far it went at most, those
 * that fell say no less than that they did: nothing of a firing that may have reached its plan.
 */
export function overPlanK(cones: readonly ConeStood[], plannedEndC: number): number | null {
  const ends = (is: ConeStood['is']) => cones.filter((cone) => cone.is === is).map(({ endC }) => endC)
  const highest = Math.max(...ends('down'), ...ends('bent').map((endC) => endC - BENDING_K))
  const bends = Math.min(...ends('bending'))
  if (Number.isFinite(bends) && !(highest > bends)) return bends - BENDING_K - plannedEndC
  const next = Math.min(...ends('standing').filter((endC) => !(endC < highest)))
  if (Number.isFinite(highest) && Number.isFinite(next)) return (highest + next) / 2 - plannedEndC
  if (Number.isFinite(highest)) return highest >= plannedEndC ? highest - plannedEndC : null
  // Not even the lowest bent.
  return Number.isFinite(next) ? next - 2 * BENDING_K - plannedEndC : null
}

/** ln dose of a firing over its plan: mean and sd, from kelvins that cones told, or null for none. */
export function heatOf(
  overK: number | null,
  plannedEndC: number,
): { readonly mean: number; readonly sd: number } {
  if (overK === null) return { mean: 0, sd: FIRING_SD }
  const read = inRange('overK', overK, -800, 800) * lnDosePerK(plannedEndC)
  const keeps = FIRING_SD ** 2 / (FIRING_SD ** 2 + CONE_SD ** 2)
  return { mean: keeps * read, sd: CONE_SD * Math.sqrt(keeps) }
}
