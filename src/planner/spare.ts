import { retime } from './plan.ts'
import type { Hands, Plan, PlanInput } from './types.ts'

/** Longest pause looked at: half a day. */
const LONGEST_S = 43_200

/** R16: a pause moves hands, not clocks. */
function paused(input: PlanInput, pauseS: number): PlanInput {
  const later = (hands: Hands): Hands => ({ ...hands, freeAtS: hands.freeAtS + pauseS })
  const [first, second] = input.hands
  return { ...input, hands: second ? [later(first), later(second)] : [later(first)] }
}

/**
 * What a pause of all hands from now on costs if the order stays: seconds of lateness and of finish.
 * @throws RangeError naming field, value and allowed range.
 */
export function pauseCost(
  input: PlanInput,
  plan: Plan,
  pauseS: number,
): { readonly latenessS: number; readonly finishS: number } {
  if (!Number.isInteger(pauseS) || pauseS < 0 || pauseS > LONGEST_S)
    throw new RangeError(`pauseS is ${pauseS}, allowed are whole seconds from 0 to ${LONGEST_S}`)
  const after = retime(paused(input, pauseS), plan)
  return {
    latenessS: Math.max(0, after.latenessS - plan.latenessS),
    finishS: Math.max(0, after.finishS - plan.finishS),
  }
}

/**
 * The moment by which hands must be back so that neither lateness nor finish suffers; `nowS` when at once.
 * @throws RangeError naming field, value and allowed range.
 */
export function freeUntil(input: PlanInput, plan: Plan): number {
  if (plan.actions.length === 0) return input.nowS
  let low = 0
  let high = LONGEST_S
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    const { latenessS, finishS } = pauseCost(input, plan, middle)
    if (latenessS === 0 && finishS === 0) low = middle
    else high = middle
  }
  return Math.min(...input.hands.map((hands) => hands.freeAtS)) + low
}
