import type { Plan, PlanInput } from '../../src/planner/index.ts'
import type { Answer } from './exhaust.ts'

/** Full counts with PROVE=1, a slice otherwise. */
export const FULL = process.env.PROVE === '1'

/** Boards from this seed on were not looked at while the planner was tuned. */
export const FRESH_SEED = 50_000

export const aims = (found: Plan): Answer => [found.latenessS, found.finishS, found.openings, found.restirs]

export const compare = (a: readonly number[], b: readonly number[]): number => {
  const k = a.findIndex((value, j) => value !== b[j])
  return k < 0 ? 0 : a[k]! - b[k]!
}

export const dipsOf = (input: PlanInput): number => input.pots.reduce((sum, pot) => sum + pot.coats.length, 0)

/** Longest time that a single pot takes from its first dip to the end of its last. */
export const longestChainS = (input: Pick<PlanInput, 'pots'>): number =>
  Math.max(
    ...input.pots.map((pot) =>
      pot.coats.reduce(
        (sum, coat, k) => sum + (k < pot.coats.length - 1 ? coat.outAtS + coat.waitAfterS : coat.dipS),
        0,
      ),
    ),
  )

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length)

export const percent = (part: number): string => `${(100 * part).toFixed(2)} %`

/** Processor time of this process while `run` ran: on a busy machine less wrong than the clock on the wall. */
export function cpuMs(run: () => unknown): number {
  const before = process.cpuUsage()
  run()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1000
}
