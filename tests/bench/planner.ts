import { bundled } from './bundled.ts'
import type { Timing } from './melt.ts'

/** Fresh processes for the cold answer. */
const STARTS = 5

/** Times of the planner for 40 pots of 3 coats, bundled as the app ships it. */
export const benchPlanner = (): Promise<readonly Timing[]> =>
  bundled('planner-times.ts', (ask) => {
    const cold = Array.from({ length: STARTS }, () => ask('coldMs') as number)
    const { first, final } = ask('warmMs') as { first: number; final: number }
    return [
      { name: 'planner, 40 x 3: first answer', ms: first, budgetMs: 5 },
      {
        name: 'planner, 40 x 3: first answer of a worker just started',
        ms: cold.sort((a, b) => a - b)[STARTS >> 1]!,
        budgetMs: 20,
      },
      { name: 'planner, 40 x 3: final answer', ms: final, budgetMs: 100 },
    ]
  })
