/** Computing on the page's own thread between two chances to draw and to be tapped, ms: a slow phone takes six times it. */
export const SLICE_MS = 6
/** So many at once: looking at the clock costs as well. */
const STEP = 20

/** Lets the page draw and be tapped. */
export const breath = () => new Promise<void>((resolve) => setTimeout(resolve))

/** Does `work` on all of `values` without freezing the page. */
export async function inSlices<T>(values: readonly T[], work: (value: T) => void): Promise<void> {
  let since = performance.now()
  for (const [index, value] of values.entries()) {
    if (index % STEP === STEP - 1 && performance.now() - since > SLICE_MS) {
      await breath()
      since = performance.now()
    }
    work(value)
  }
}
