import { CLEARANCES, type LoadInput, type LoadPlan } from './contract.ts'
import { finalPasses, firstLoad, firstPasses, proposing } from './propose.ts'

/** A question to the worker. Of several the newest counts; `id` comes back with the answers. */
export interface LoadAsk {
  readonly id: number
  readonly input: LoadInput
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
    const { id, input } = ask
    newest = ask
    try {
      const steps = proposing(input, finalPasses(input))
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

/** Runs the hot loops once on an invented load, so that the first real question finds them compiled. */
export function warmLoad(): void {
  const chamber = { kind: 'round', diameterMm: 600, heightMm: 800 } as const
  const shelf = { id: 's', kind: 'round', widthMm: 540, depthMm: 540, thickMm: 16, count: 6 } as const
  const posts = [100, 150, 200].map((lengthMm) => ({ lengthMm, count: 9 }))
  const pots = Array.from({ length: 24 }, (_, k) => ({
    id: `${k}`,
    bellyRadiusMm: 35 + ((k * 37) % 50),
    footRadiusMm: 30,
    heightMm: 60 + ((k * 53) % 110),
    risk: 'clear' as const,
    onSlab: k % 5 === 0,
  }))
  firstLoad({
    loadId: '',
    kiln: {
      id: '',
      chamber,
      shelves: [shelf],
      posts,
      thermocouple: null,
      spyHoles: [],
      clearances: CLEARANCES,
    },
    pots,
    specials: [],
    pinned: [],
    loaded: [],
  })
}
