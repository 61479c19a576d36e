import type { Page } from '@playwright/test'
import { BenchPage } from '../bench.ts'

/** Called at each moment worth looking at, while time stands still. */
export type See = (moment: string) => Promise<void>

/** A stretch of an evening, told on one page from its start. */
export interface Story {
  readonly name: string
  /** Wet hands, or clean ones. */
  readonly hands: 'bench' | 'desk'
  tell(page: Page, see: See): Promise<void>
}

/**
 * The sound's clock follows the one that the story sets. Left to itself it hardly moves while minutes are told, and
 * the app would rightly say that the sound is dead.
 */
export const keepSoundInTime = (page: Page) =>
  page.addInitScript(() => {
    const currentTime = { get: () => performance.now() / 1000 }
    if ('AudioContext' in window)
      Object.defineProperty(BaseAudioContext.prototype, 'currentTime', currentTime)
  })

/** Longest that a story waits for what is to come: a coat in damp air. */
const PATIENCE_S = 10 * 3600
/** Just short of being away. */
const STEP_S = 59

/** Lets time pass, so much at a time, until the bar says so. */
export async function untilBar(bench: BenchPage, label: RegExp, stepS = STEP_S): Promise<void> {
  for (let s = 0; s < PATIENCE_S; s += stepS) {
    if (label.test(await bench.label())) return
    await bench.pass(stepS)
  }
  throw new Error(`the bar never said ${label}; it says "${await bench.label()}"`)
}

/** Just short of a gap in which nobody could have seen the count. */
const GLIMPSE_MS = 1400
const DIP_S = 25

/** Runs a whole dip from START through lead-in, lowering, hold and drip. */
export async function dip(bench: BenchPage): Promise<void> {
  await bench.hit()
  for (let ms = 0; ms < DIP_S * 1000; ms += GLIMPSE_MS) await bench.page.clock.fastForward(GLIMPSE_MS)
  await bench.page.clock.runFor(500)
}

/** Coats take their time; what was due meanwhile is seen and put away. */
const WORK_STEP_S = 240

/** Hits whatever the bar asks, passing time where it asks nothing, until a label is reached. */
export async function workUntil(bench: BenchPage, label: RegExp, most = 200): Promise<void> {
  for (let i = 0; i < most; i++) {
    const now = await bench.label()
    if (label.test(now)) return
    if (now === '' || /^(TOUCH|CHECK)/.test(now)) await bench.pass(WORK_STEP_S)
    else if (now.startsWith('START')) await dip(bench)
    else await bench.hit()
  }
  throw new Error(`the bar never said ${label}; it says "${await bench.label()}"`)
}

export { BenchPage }
