import { SHORTEST_S } from '../../engine/wait/seconds.ts'

/** A hand follows the count to half a second, no finer. Our choice. */
export const STEP_S = 0.5

/** Most seconds under `plannedS` that pass, in steps a hand can do; 0 when no dip does. Fewer pass where more do. */
export function mostSeconds(plannedS: number, passes: (holdS: number) => boolean): number {
  let least = SHORTEST_S / STEP_S - 1
  let most = Math.ceil(plannedS / STEP_S)
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2)
    if (passes(middle * STEP_S)) least = middle
    else most = middle
  }
  return least * STEP_S < SHORTEST_S ? 0 : least * STEP_S
}
