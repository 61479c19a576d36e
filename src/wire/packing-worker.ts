/// <reference lib="webworker" />
import type { LoadInput, LoadPlan } from '../engine/kiln/contract.ts'
import { proposeLoad } from '../engine/kiln/propose.ts'

/** Packs beside the page: a load in, its plan out, or why it cannot be. */
const scope = self as unknown as DedicatedWorkerGlobalScope

export type Packed = { readonly plan: LoadPlan } | { readonly refused: string }

scope.onmessage = ({ data }: MessageEvent<LoadInput>) => {
  let answer: Packed
  try {
    answer = { plan: proposeLoad(data) }
  } catch (problem) {
    if (!(problem instanceof RangeError)) throw problem
    answer = { refused: problem.message }
  }
  scope.postMessage(answer)
}
