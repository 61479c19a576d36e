import type { Lifecycle, TapeCall } from '../device/ports.ts'
import type { RingView } from '../screens/extras.ts'

/** From the tap to the ring. */
const TEST_MS = 60_000
/** Nobody who locked the phone is back before the call is over. */
const CALL_MS = 6000
/** Says which call it is by its notes; no bucket needs to bear the letter. */
const TEST_LETTER = 'R'

export interface RingTest {
  view(): RingView['test']
  /** The call to put into the track while the test runs. */
  call(): TapeCall | undefined
  begin(): void
  end(rang?: boolean): void
}

interface TestParts {
  readonly lifecycle: Lifecycle
  /** Of a test that was running when the app was closed. */
  readonly dueMs: number | undefined
  changed(dueMs: number | undefined): void
  /** Builds the track, inside the tap. */
  arm(): void
  learn(rang: boolean): void
}

/**
 * The guided test: the person locks the phone, it shall ring in a minute, and they say whether it did. An answer counts
 * only if nobody could see the page when it was due.
 */
export function openRingTest({ lifecycle, dueMs, changed, arm, learn }: TestParts): RingTest {
  // An app that was closed before it could ring has tested nothing; one closed by the phone meanwhile may have rung.
  let due = dueMs !== undefined && dueMs < Date.now() ? dueMs : undefined
  let step: 'lock' | 'ask' | 'stayed' = due === undefined ? 'lock' : 'ask'
  let hiddenMs: number | undefined
  let timer: ReturnType<typeof setTimeout> | undefined

  const watch = (): void => {
    clearTimeout(timer)
    if (due !== undefined) timer = setTimeout(settle, due - Date.now() + CALL_MS)
  }
  const settle = (): void => {
    if (due === undefined || step !== 'lock' || !lifecycle.visible()) return
    if (Date.now() < due) {
      hiddenMs = undefined
      // Timers stand still while a phone sleeps, and its clock may be set back.
      watch()
      return
    }
    step = hiddenMs !== undefined && hiddenMs < due ? 'ask' : 'stayed'
    changed(due)
  }
  lifecycle.onSleep(() => {
    hiddenMs ??= Date.now()
  })
  lifecycle.onWake(settle)

  return {
    view: () => (due === undefined ? undefined : { step, dueMs: due }),
    call: () =>
      due === undefined || step !== 'lock'
        ? undefined
        : { dueMs: due, bucketLetter: TEST_LETTER, places: [] },
    begin() {
      due = Date.now() + TEST_MS
      hiddenMs = undefined
      step = 'lock'
      changed(due)
      arm()
      watch()
    },
    end(rang) {
      due = undefined
      clearTimeout(timer)
      if (rang !== undefined) learn(rang)
      changed(undefined)
      arm()
    },
  }
}
