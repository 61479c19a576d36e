import { type Faults, faultText } from '../device/faults.ts'
import type { ShareResult } from '../device/ports.ts'
import { openShare } from '../device/share.ts'
import { fileDay } from './file-day.ts'

/** The log of faults as a file, through the share sheet or the downloads. */
export function passOnFaults(faults: Faults, nowMs: number): Promise<ShareResult> {
  const text = faultText(faults.all(), navigator.userAgent)
  return openShare().file(`bucketside-faults-${fileDay(nowMs)}.txt`, 'text/plain', text)
}
