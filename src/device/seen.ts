/** When the page was last seen alive, over kills and closed tabs. Not the journal: losing it loses nothing. */

const KEY = 'bucketside.seen'

/** Epoch ms of the last life sign of an earlier page, if any. */
export function lastSeenMs(): number | undefined {
  try {
    const seen = Number(localStorage.getItem(KEY))
    return seen > 0 ? seen : undefined
  } catch {
    // Storage may be walled off; then nothing is known of earlier pages.
    return undefined
  }
}

export function beSeen(epochMs: number): void {
  try {
    localStorage.setItem(KEY, String(epochMs))
  } catch {
    // As above.
  }
}
