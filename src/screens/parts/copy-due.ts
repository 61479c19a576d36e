import { useEffect, useState } from 'preact/hooks'
import { daysSince, isCopyDue } from '../../table/card/copy-due.ts'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'

export interface CopyDue {
  /** How old the last copy outside the phone is. */
  readonly text: string
  readonly backUp: () => void
  readonly notNow: () => void
}

/** The reminder of a copy outside the phone, while it is due; undefined else, in the demo, and until it is known. */
export function useCopyDue(): CopyDue | undefined {
  const { table, card, now, health, demo, backUp, copyPutOff } = useApp()
  const { end: w } = useLateWords()
  const [putOffAt, setPutOffAt] = useState<number>()
  useEffect(() => {
    copyPutOff().then(setPutOffAt, () => {})
  }, [])
  const { copiedAt, unread } = health.value
  if (demo || unread || putOffAt === undefined) return undefined
  const nowMs = now.value + table.value.skewMs
  if (!isCopyDue(table.value, card.value, { copiedAt, putOffAt }, nowMs)) return undefined
  return {
    text: w.noCopy(daysSince(copiedAt, nowMs)),
    // Where it fails, or is called off, the line stays.
    backUp: () => void backUp().catch(() => {}),
    notNow: () => void copyPutOff(true).then(setPutOffAt, () => {}),
  }
}
