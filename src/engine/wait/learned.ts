/** What touch checks and weighings have taught about waits, as the forecast uses it. */

export interface Learned {
  /** Logarithm of the fill factor: how much more water dips bring than computed. Mean and sd. */
  readonly fillMean: number
  readonly fillSd: number
  /** Logarithm of the factor on waits. Mean and sd. */
  readonly timeMean: number
  readonly timeSd: number
  /** Observations behind it. */
  readonly count: number
}

/** Before any observation. Widths are a judgement (tuned): fill 0.25, time 0.3. */
export const UNLEARNED: Learned = { fillMean: 0, fillSd: 0.25, timeMean: 0, timeSd: 0.3, count: 0 }

/** What stays open after the shared factors are known: sd of ln(wait) from coat to coat. Tuned. */
export const TOUCH_SD = 0.35
export const KILN_SD = 0.27

/**
 * Three nodes that stand for the normal law of the fill factor, in sd, with weights. Chosen so that the tenth, half and
 * nine tenths points of the waits come out near those of a fine grid (within 15 % on the usual walls).
 */
export const FILL_NODES: readonly (readonly [sds: number, weight: number])[] = [
  [-1.22, 0.25],
  [0, 0.5],
  [1.22, 0.25],
]
