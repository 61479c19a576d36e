/** Times of the melt on this machine: one look-ahead (budget 3 ms) and one foot room before a dip (1 ms). */
import type { Face } from '../../src/engine/contract.ts'
import { footRoom } from '../../src/engine/melt/melt.ts'
import { lookAhead, playShares } from '../../src/engine/melt/melt-preview.ts'
import { outlineOf } from '../../src/engine/shape/geometry.ts'
import { coat } from '../fixtures/melt.ts'

export interface Timing {
  readonly name: string
  readonly ms: number
  readonly budgetMs: number
}

const RUNS = 60

/** Median of `RUNS` after as many to warm up, ms. */
function median(run: () => unknown): number {
  for (let i = 0; i < RUNS; i++) run()
  const times = Array.from({ length: RUNS }, () => {
    const from = performance.now()
    run()
    return performance.now() - from
  })
  return times.sort((a, b) => a - b)[RUNS >> 1]!
}

/** A bottle with a belly under three coats of a stiff, a runny and a stiff glaze, outside and inside. */
export function benchMelt(): readonly Timing[] {
  const footLineMm = 8
  const shape = {
    form: 'bottle' as const,
    heightMm: 180,
    rimMm: 60,
    bellyMm: 100,
    wallMm: 5,
    footLineMm,
  }
  const profile = outlineOf(shape)
  const on = (face: Face) => [
    coat('base', footLineMm, 180, 0.5, 8, { face, dipId: `base ${face}` }),
    coat('runny', footLineMm + 20, 180, 0.43, 65, { face, dipId: `runny ${face}` }),
    coat('collar', 155, 180, 0.5, 4, { face, dipId: `collar ${face}` }),
  ]
  const coats = [...on('outside'), ...on('inside')]
  const shares = playShares(37, 1.84)
  const input = { profile, coats: on('outside'), footLineMm, marginFactor: 2, provedPairs: [] }
  return [
    {
      name: 'melt look-ahead, 37 frames to one cone over',
      ms: median(() => lookAhead({ profile, coats, shares })),
      budgetMs: 3,
    },
    { name: 'foot room before a dip', ms: median(() => footRoom(input)), budgetMs: 1 },
  ]
}
