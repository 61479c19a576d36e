/** Something whose code is fetched after the first card. */
export interface Lazy<Thing> {
  /** Undefined until its code is here. */
  now(): Thing | undefined
  /** Does `job` at once, or as soon as the code is here. */
  with(job: (thing: Thing) => void): void
  /** Fetches the code, and tries again until it is here. */
  fetch(): void
}

/** With no network and nothing kept yet, the next try. */
const RETRY_MS = 2000

export function lazy<Thing>(load: () => Promise<Thing>): Lazy<Thing> {
  let thing: Thing | undefined
  let asked = false
  let waiting: ((thing: Thing) => void)[] = []
  const fetch = () => {
    if (asked) return
    asked = true
    load().then(
      (loaded) => {
        thing = loaded
        for (const job of waiting) job(loaded)
        waiting = []
      },
      () => {
        asked = false
        setTimeout(fetch, RETRY_MS)
      },
    )
  }
  return {
    now: () => thing,
    with(job) {
      if (thing) job(thing)
      else waiting.push(job)
    },
    fetch,
  }
}
