import { Z90 } from '../../engine/numeric/spread.ts'
import { learn } from '../../engine/wait/learn.ts'
import { TOUCH_SD, unlearnedOn } from '../../engine/wait/learned.ts'
import { lessonsUsed, type Seen } from '../forecast/learning.ts'

import { bodyOf } from '../forecast/wall-inputs.ts'
import type { Table } from '../model/state.ts'

/** How long waits are over what is computed, as so many checks have it. */
export interface Narrowed {
  /** The check that was the last of them; none before the first. */
  readonly seen: Seen | undefined
  /** The factor that all coats share: 10th, 50th and 90th percentile. */
  readonly low: number
  readonly likely: number
  readonly high: number
  /** The same of one coat, which differs from the others by more than anybody can learn. */
  readonly coatLow: number
  readonly coatHigh: number
}

/** What was known of this table's waits before any check, and after each that is reckoned with, oldest first. */
export function narrowing(table: Table): readonly Narrowed[] {
  const used = lessonsUsed(table)
  const start = unlearnedOn(bodyOf(table))
  return [undefined, ...used].map((seen, n) => {
    const { timeMean, timeSd } =
      n === 0
        ? start
        : learn(
            used.slice(0, n).map(({ observation }) => observation),
            start,
          )
    const at = (sds: number, sd: number) => Math.exp(timeMean + sds * Z90 * sd)
    const coatSd = Math.hypot(timeSd, TOUCH_SD)
    return {
      seen,
      low: at(-1, timeSd),
      likely: at(0, timeSd),
      high: at(1, timeSd),
      coatLow: at(-1, coatSd),
      coatHigh: at(1, coatSd),
    }
  })
}
