import type { LoadInput, LoadPlan } from '../engine/kiln/contract.ts'
import type { LoadAsk, LoadReply } from '../engine/kiln/messages.ts'

/** No last answer by then: the best so far is taken, or none, ms. */
const PATIENCE_MS = 10_000

/**
 * A worker of its own for each question: they are few, and one that hangs is ended. `first` is told the first answer as it
 * comes. Rejects without an answer.
 */
export function proposeBeside(input: LoadInput, first?: (plan: LoadPlan) => void): Promise<LoadPlan> {
  const worker = new Worker(new URL('../engine/kiln/worker.ts', import.meta.url), { type: 'module' })
  let timer: ReturnType<typeof setTimeout> | undefined
  return new Promise<LoadPlan>((resolve, reject) => {
    let best: LoadPlan | undefined
    timer = setTimeout(() => (best ? resolve(best) : reject(new Error('no answer'))), PATIENCE_MS)
    worker.onmessage = ({ data }: MessageEvent<LoadReply>) => {
      if (data.stage === 'refused') reject(new RangeError(data.message))
      else if (data.stage === 'final') resolve(data.plan)
      else {
        best = data.plan
        if (data.stage === 'first') first?.(data.plan)
      }
    }
    worker.onerror = () => reject(new Error('no worker'))
    worker.postMessage({ id: 1, input, soon: true } satisfies LoadAsk)
  }).finally(() => {
    clearTimeout(timer)
    worker.terminate()
  })
}
