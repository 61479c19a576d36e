/** What touch checks and weighings have taught about waits, as the forecast uses it. */

import type { Body } from '../contract.ts'
import { DEFAULT_BODY } from '../wall/body.ts'

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

/**
 * Sd of ln(fill) that is of slop and hands, where the body's suction is known; and of ln(time). Tuned, so that bands hold
 * four times in five in rooms with physical errors of clay, slop, hands and air, and in rooms of this very prior.
 */
const SLOP_SD = 0.11
const TIME_SD = 0.22
/**
 * How far ln(fill) follows doubt of ln(sorptivity) for waits: a clay that drinks faster brings more water, and takes it
 * in faster. Tuned like them.
 */
const OF_SORPTIVITY = 0.27

/** Before any observation, on this clay: what nobody measured of its suction is part of the doubt. */
export const unlearnedOn = (body: Body): Learned => ({
  fillMean: 0,
  fillSd: Math.hypot(SLOP_SD, OF_SORPTIVITY * (body.sorptivitySd ?? 0)),
  timeMean: 0,
  timeSd: TIME_SD,
  count: 0,
})

/** Before any observation, on the usual bisque: fill 0.14. */
export const UNLEARNED: Learned = unlearnedOn(DEFAULT_BODY)

/** What stays open after the shared factors are known: sd of ln(wait) from coat to coat. Tuned. */
export const TOUCH_SD = 0.4
export const KILN_SD = 0.27

/**
 * Three nodes that stand for the normal law of the fill factor, in sd, with weights. Chosen so that the tenth, half and
 * nine tenths points of the waits come out near those of a fine grid: of 150 drawn pots 21, 9 and 11 miss it by more than
 * 15 %, by 31 % at most.
 */
export const FILL_NODES: readonly (readonly [sds: number, weight: number])[] = [
  [-1.22, 0.25],
  [0, 0.5],
  [1.22, 0.25],
]
