/** So long long work keeps the page's thread before it lets it draw and take taps, ms. A slow phone takes six times as long. */
export const SLICE_MS = 6
/** So many values are worked on between two looks at the clock, which costs time too. */
const STEP = 20

/** Gives the page's thread back, so that it can draw and take taps. */
export const breath = () =>
  new Promise<void>((resolve) => {
    // A message waits for no timer, which a page out of sight has once a second.
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => {
      port1.close()
      resolve()
    }
    port2.postMessage(0)
  })

/** Does `work` on all of `values` without freezing the page; `step` of them are a moment's work. */
export async function inSlices<T>(
  values: readonly T[],
  work: (value: T) => void,
  step = STEP,
): Promise<void> {
  let since = performance.now()
  for (const [index, value] of values.entries()) {
    if (index % step === step - 1 && performance.now() - since > SLICE_MS) {
      await breath()
      since = performance.now()
    }
    work(value)
  }
}

/** The same of work that pauses by itself, a moment's work from pause to pause; what it comes to. */
export async function throughSteps<T>(steps: Iterator<unknown, T, undefined>): Promise<T> {
  for (let since = performance.now(); ; ) {
    const { done, value } = steps.next()
    if (done) {
      await breath()
      return value
    }
    if (performance.now() - since < SLICE_MS) continue
    await breath()
    since = performance.now()
  }
}
