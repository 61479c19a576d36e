/** The next try after a fetch that failed, ms: no network, and nothing kept yet. */
const RETRY_MS = 2000

/** Something whose code is fetched when it is asked for. */
export interface Fetched<Thing> {
  /** Undefined until its code is here. */
  now(): Thing | undefined
  /** Does `job` at once, or as soon as the code is here. */
  with(job: (thing: Thing) => void): void
  /** Fetches the code. */
  ask(): void
}

/**
 * The one way code is fetched lazily: once, however often it is asked for. After a failure it is tried again by itself,
 * unless `failed` is given, which is told instead and may ask again.
 */
export function fetched<Thing>(load: () => Promise<Thing>, failed?: () => void): Fetched<Thing> {
  let here: { readonly thing: Thing } | undefined
  let asked = false
  let waiting: ((thing: Thing) => void)[] = []
  const ask = () => {
    if (asked) return
    asked = true
    load().then(
      (thing) => {
        here = { thing }
        for (const job of waiting) job(thing)
        waiting = []
      },
      () => {
        asked = false
        if (failed) failed()
        else setTimeout(ask, RETRY_MS)
      },
    )
  }
  return {
    now: () => here?.thing,
    with(job) {
      if (here) job(here.thing)
      else waiting.push(job)
    },
    ask,
  }
}
