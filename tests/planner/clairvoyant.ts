import type { PlanInput } from '../../src/planner/index.ts'
import { mean } from './figures.ts'
import { laterMs } from './hands.ts'
import { plan } from './plan.ts'
import type { Outcome, Sitting } from './played.ts'

/** Orders of dips timed: enough for a board of twelve pots. */
const WORK = 150_000

const inS = (ms: number): number => Math.round(ms / 1000)

/**
 * The order of one who knows every wait and every delay of the sitting before it begins: what no hands can do, to
 * hold the others against. Waits are those that were drawn in the sitting played.
 */
export function clairvoyant(sitting: Sitting, { first, waitsS }: Outcome) {
  const { seed, pace } = sitting
  const later = (what: string) => inS(laterMs(seed, pace, what))
  const stirLaterS = (id: string) => Math.round(mean([0, 1, 2, 3].map((nth) => later(`stir ${id} ${nth}`))))
  const knowing: PlanInput = {
    ...first!,
    buckets: first!.buckets.map((bucket) => ({
      ...bucket,
      openS: pace.bareS.open + stirLaterS(bucket.id),
      restirS: pace.bareS.restir + stirLaterS(bucket.id),
      // START comes when the hands are there, half of their delay after the step begins.
      freshS: 300 - Math.round(pace.laterS / 2),
    })),
    pots: first!.pots.map((pot) => ({
      ...pot,
      coats: pot.coats.map((coat, k) => {
        const laterS = later(`dip ${pot.id} ${k}`)
        const waitAfterS = Math.max(0, waitsS.get(`${pot.id} ${k}`) ?? coat.waitAfterS)
        return { ...coat, dipS: 30 + pace.bareS.foot + laterS, outAtS: 8 + laterS, waitAfterS }
      }),
    })),
  }
  const best = plan(knowing, WORK)
  return { finishMin: (best.finishS - knowing.nowS) / 60, openings: best.openings }
}
