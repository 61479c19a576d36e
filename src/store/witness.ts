/** Says, outside the database, that there was something in it: what is then found empty was lost. */

const KEY = 'bucketside.witness'

export interface Witness {
  readonly count: number
  /** Id of the last record. */
  readonly last: string
  /** This phone's name, by which its own records are known. */
  readonly phone: string
}

/** What was kept last; undefined where nothing was, or nothing can be known. */
export function witness(): Witness | undefined {
  try {
    const kept: Partial<Witness> = JSON.parse(localStorage.getItem(KEY) ?? '{}')
    const { count, last, phone } = kept
    if (typeof count !== 'number' || count <= 0) return undefined
    return typeof last === 'string' && typeof phone === 'string' ? { count, last, phone } : undefined
  } catch {
    return undefined
  }
}

/** Keeps the count of records and the last one's id. */
export function keepWitness(kept: Witness): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(kept))
  } catch {
    // Walled off, or full: then a loss shows as a first visit, as without a witness.
  }
}
