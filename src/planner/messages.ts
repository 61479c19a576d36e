import { foresee } from './plan/foresee.ts'
import { drain, FINAL_WORK, firstPlan, LONG_WORK, planning, type Replanned } from './plan/plan.ts'
import type { Foresight, Odds, Plan, PlanInput } from './types.ts'

/** A question to the worker. Of several the newest counts; `id` comes back with the answers. */
export interface Ask {
  readonly id: number
  readonly input: PlanInput
  /** What was told before; null for a fresh table. */
  readonly previous: Plan | null
  /** Foresees how the answers may come out. */
  readonly odds: Odds
  /** Search on while the hands work. */
  readonly long: boolean
}

/**
 * Two answers a question, `first` at once and `final` after the search; `better` follows where a long search gains
 * a minute or more. Or `refused` with the reason.
 */
export type Reply =
  | {
      readonly id: number
      readonly stage: 'first' | 'final' | 'better'
      readonly plan: Plan
      readonly kept: boolean
      /** Null of a first answer: the order that follows it is foreseen. */
      readonly foresight: Foresight | null
    }
  | { readonly id: number; readonly stage: 'refused'; readonly message: string }

/**
 * The worker's whole behaviour without a worker: `ask` answers at once and searches on in slices that `later`
 * schedules, long once `quiet` lets it; a newer question drops an older search.
 */
export function makeDesk(
  post: (reply: Reply) => void,
  later: (run: () => void) => void,
  quiet: (run: () => void) => void,
): (ask: Ask) => void {
  let newest = 0
  let turn = 0
  return ({ id, input, previous, odds, long }) => {
    const mine = ++turn
    newest = mine
    const run = (steps: Generator<void, Replanned>, then: (found: Replanned) => void) => {
      const go = () => {
        if (newest !== mine) return
        const step = steps.next()
        if (step.done) then(step.value)
        else later(go)
      }
      later(go)
    }
    try {
      post({ id, stage: 'first', plan: firstPlan(input, previous), kept: false, foresight: null })
      run(planning(input, previous, FINAL_WORK), ({ plan, kept }) => {
        post({ id, stage: 'final', plan, kept, foresight: foresee(input, plan, odds) })
        if (!long || plan.proven) return
        quiet(() => {
          run(planning(input, plan, LONG_WORK), (found) => {
            if (found.kept) return
            const { plan: better } = found
            post({ id, stage: 'better', plan: better, kept: false, foresight: foresee(input, better, odds) })
          })
        })
      })
    } catch (problem) {
      if (!(problem instanceof RangeError)) throw problem
      post({ id, stage: 'refused', message: problem.message })
    }
  }
}

/** Work of the warming run: enough for the hot loops to be compiled. */
const WARMING_WORK = 60_000

/** Runs the hot loops once on an invented table, so that the first real question finds them compiled. */
export function warm(): void {
  const buckets = ['a', 'b', 'c'].map((id) => ({ id, openS: 180, restirS: 60, freshS: 300, decantS: 60 }))
  const coat = (bucketId: string) => ({ bucketId, dipS: 60, outAtS: 20, waitAfterS: 900, collar: false })
  const pots = Array.from({ length: 16 }, (_, k) => ({
    id: `${k}`,
    prep: [],
    coats: [coat('a'), coat(k % 2 ? 'b' : 'c'), coat(k % 3 ? 'c' : 'a')],
    readyAtS: 0,
    kilnDryS: 0,
  }))
  drain(
    planning(
      { nowS: 0, hands: [{ freeAtS: 0, open: null }], buckets, pots, deadline: null, seed: 1 },
      null,
      WARMING_WORK,
    ),
  )
}
