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
  const [known, setKnown] = useState<Awaited<ReturnType<typeof copyPutOff>>>()
  const [failed, setFailed] = useState(false)
  useEffect(() => {
    copyPutOff().then(setKnown, () => {})
  }, [])
  const { copiedAt, unread } = health.value
  if (demo || unread || known === undefined) return undefined
  const nowMs = now.value + table.value.skewMs
  if (!isCopyDue(table.value, card.value, { copiedAt, ...known }, nowMs)) return undefined
  return {
    text: failed ? w.copyFailed : w.noCopy(daysSince(copiedAt, nowMs)),
    // Where it is called off the line stays.
    backUp: () =>
      void backUp().then(
        () => setFailed(false),
        () => setFailed(true),
      ),
    notNow: () => void copyPutOff(true).then(setKnown, () => {}),
  }
}
