/** Says, outside the database, that there was something in it: what is then found empty was lost. */

const KEY = 'bucketside.witness'

export interface Witness {
  readonly count: number
  /** Id of the last record. */
  readonly last: string
  /** This phone's name, by which its own records are known. */
  readonly phone: string
  /** After a loss: how many came back of how many, until whoever works here has read it. */
  readonly short?: { readonly back: number; readonly of: number } | undefined
}

/** What was kept last; undefined where nothing was, or nothing can be known. */
export function witness(): Witness | undefined {
  try {
    const kept: Partial<Witness> = JSON.parse(localStorage.getItem(KEY) ?? '{}')
    const { count = 0, last, phone } = kept
    return count > 0 && typeof last === 'string' && typeof phone === 'string' ? (kept as Witness) : undefined
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

/** What did not come back was read of. */
export function forgetShort(): void {
  const kept = witness()
  if (kept?.short) keepWitness({ ...kept, short: undefined })
}
