import type { LoadInput, LoadPlan } from './contract.ts'
import { finalPasses, firstPasses, proposing, SOON_PASSES } from './propose.ts'

/** A question to the worker. Of several the newest counts; `id` comes back with the answers. */
export interface LoadAsk {
  readonly id: number
  readonly input: LoadInput
  /** Somebody waits for the last answer: it comes after fewer passes. */
  readonly soon?: boolean
}

/**
 * Answers to a question: `first` at once, `better` as often as the search finds one, `final` when it is over, which alone
 * tells what would get in what is left out. Or `refused`, with the field, value and range.
 */
export type LoadReply =
  | { readonly id: number; readonly stage: 'first' | 'better' | 'final'; readonly plan: LoadPlan }
  | { readonly id: number; readonly stage: 'refused'; readonly message: string }

/** The worker's whole behaviour without a worker: `later` schedules each pass, a newer question drops an older search. */
export function makeLoadDesk(
  post: (reply: LoadReply) => void,
  later: (run: () => void) => void,
): (ask: LoadAsk) => void {
  let newest: LoadAsk | null = null
  return (ask) => {
    const { id, input, soon } = ask
    newest = ask
    try {
      const steps = proposing(input, soon ? SOON_PASSES : finalPasses(input))
      let first: LoadPlan | null = null
      for (let pass = 0; pass < firstPasses(input) || !first; pass++) first = steps.next().value ?? first
      post({ id, stage: 'first', plan: first })
      const go = () => {
        if (newest !== ask) return
        const { done, value } = steps.next()
        if (value) post({ id, stage: done ? 'final' : 'better', plan: value })
        if (!done) later(go)
      }
      later(go)
    } catch (problem) {
      if (!(problem instanceof RangeError)) throw problem
      post({ id, stage: 'refused', message: problem.message })
    }
  }
}
