/** When somebody last said that a copy outside the phone can wait. Losing it loses nothing. */

const KEY = 'bucketside.copy-put-off'

/** Epoch ms; 0 where nobody did. */
export function copyPutOffAt(): number {
  try {
    return Number(localStorage.getItem(KEY)) || 0
  } catch {
    // Storage may be walled off.
    return 0
  }
}

/** `epochMs`: now. */
export function putOffCopy(epochMs: number): void {
  try {
    localStorage.setItem(KEY, String(epochMs))
  } catch {
    // As above.
  }
}
