import type { LoadInput, LoadPlan } from '../engine/kiln/contract.ts'
import type { Packed } from './packing-worker.ts'

/** No answer by then is none, ms. */
const PATIENCE_MS = 10_000

/** A worker of its own for each question: they are few, and one that hangs is ended. Rejects without an answer. */
export function proposeBeside(input: LoadInput): Promise<LoadPlan> {
  const worker = new Worker(new URL('./packing-worker.ts', import.meta.url), { type: 'module' })
  return new Promise<LoadPlan>((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('no answer')), PATIENCE_MS)
    worker.onmessage = ({ data }: MessageEvent<Packed>) => {
      clearTimeout(timer)
      if ('plan' in data) resolve(data.plan)
      else reject(new RangeError(data.refused))
    }
    worker.onerror = () => {
      clearTimeout(timer)
      reject(new Error('no worker'))
    }
    worker.postMessage(input)
  }).finally(() => worker.terminate())
}
