import { bundled } from './bundled.ts'
import type { Timing } from './melt.ts'

/** Times of the kiln's load, bundled as the app ships it. */
export const benchLoad = (): Promise<readonly Timing[]> =>
  bundled('kiln/load-times.ts', (ask) => {
    const warm = ask('warmMs') as Readonly<Record<string, number>>
    const rows: Timing[] = [
      { name: 'load, 20 pots: first answer', ms: warm.first20!, budgetMs: 30 },
      { name: 'load, 40 pots: first answer', ms: warm.first40!, budgetMs: 60 },
      {
        name: 'load, 40 pots: first answer of a worker just started',
        ms: ask('coldMs') as number,
        budgetMs: 150,
      },
      { name: 'load, 40 pots: final answer', ms: warm.final40!, budgetMs: 1500 },
      { name: 'load, 400 pots: first answer', ms: warm.first400!, budgetMs: 1000 },
      { name: 'load: which pot is which, 40', ms: warm.match40!, budgetMs: 30 },
    ]
    return rows
  })
