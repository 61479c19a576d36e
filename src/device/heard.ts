/** What other phones changed and was read here. Not the journal: where it is lost, it is told again. */

const KEY = 'bucketside.heard'
/** Those of the latest changes are kept. */
const KEPT = 100

/** The keys of what was read. */
export function heardKeys(): ReadonlySet<string> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]')
    return new Set(Array.isArray(kept) ? kept.filter((key) => typeof key === 'string') : [])
  } catch {
    // Storage may be walled off, or hold something else.
    return new Set()
  }
}

/** Keeps that these were read. */
export function beHeard(keys: readonly string[]): void {
  try {
    const all = [...new Set([...heardKeys(), ...keys])].slice(-KEPT)
    localStorage.setItem(KEY, JSON.stringify(all))
  } catch {
    // As above.
  }
}
