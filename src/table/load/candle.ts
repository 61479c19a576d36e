import { type Candling, candling } from '../../engine/kiln/candling.ts'
import { airAt, airOf } from '../forecast/air-inputs.ts'
import { lessonFor } from '../forecast/learning.ts'
import { historyOf, MIN_MS } from '../forecast/pot-history.ts'
import { otherPiece } from '../model/pieces.ts'
import { planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'

/** A candling as it is told: to the quarter of an hour and to ten grams, as nobody knows it finer. */
export const roughly = (candling: Candling): Candling => ({
  ...candling,
  likelyMin: Math.round(candling.likelyMin / 15) * 15,
  lateMin: Math.round(candling.lateMin / 15) * 15,
  waterG: Math.round(candling.waterG / 10) * 10,
})

/**
 * How long pots that are lit at `litAt`, table time, ms, have to be candled, and how much water leaves them, a pot a step:
 * others may have the thread in between. A lid goes with its jar. Null without pots.
 */
export function* candlingSteps(
  table: Table,
  pots: readonly PotState[],
  litAt: number,
): Generator<void, Candling | null> {
  const all = new Set(
    pots.flatMap((pot) => {
      const other = otherPiece(table, pot.facts)
      return other ? [pot, other] : [pot]
    }),
  )
  const room = airOf(airAt(table.air, litAt))
  let slowest: Candling | null = null
  let waterG = 0
  for (const pot of all) {
    const learned = lessonFor(table, pot.dips.at(-1)?.bucketId ?? planOf(table, pot)[0]?.bucketId ?? '')
    const one = candling([{ id: pot.facts.potId, ...historyOf(table, pot) }], litAt / MIN_MS, room, learned)
    waterG += one?.waterG ?? 0
    if (one && (!slowest || one.lateMin > slowest.lateMin)) slowest = one
    yield
  }
  return slowest && { ...slowest, waterG }
}
