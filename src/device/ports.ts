/**
 * What the rest of the program sees of the phone. Two clocks are used throughout:
 * `...Ms` of epoch time for what is kept, and *page time* (`performance.now`, `event.timeStamp`) for a tap.
 */
import type { CountPlan, CuePlan, Place, WordId } from './sound-plan.ts'

export type Unsubscribe = () => void

/** The clock was set by somebody (`moved`), or the phone slept while the page clock stood still (`slept`). */
export interface ClockJump {
  readonly byMs: number
  /** It came after this moment, page time. */
  readonly sinceMs: number
  readonly kind: 'moved' | 'slept'
}

export interface Clock {
  /** Epoch time, ms: as the clock went before it was set, until that is {@link taken}. */
  epochMs(): number
  /** By so much it was set since, ms. */
  untakenMs(): number
  /** From now on epoch time has so much of that in it. */
  taken(byMs: number): void
  /** Page time, ms; never set back. */
  pageMs(): number
  /** Epoch ms of a page time, such as the `timeStamp` of an event. */
  epochAt(pageMs: number): number
  onJump(listener: (jump: ClockJump) => void): Unsubscribe
}

export type WakeReason = 'start' | 'discarded' | 'visible' | 'resume' | 'pageshow' | 'online' | 'gap'
export type SleepReason = 'hidden' | 'freeze' | 'pagehide'

/** The page is back. `gapMs`: how long nobody could see it or it could not run, 0 if not at all. */
export interface Wake {
  readonly reason: WakeReason
  readonly gapMs: number
  readonly atMs: number
}

export interface Lifecycle {
  visible(): boolean
  onWake(listener: (wake: Wake) => void): Unsubscribe
  /** May be the last line that runs. */
  onSleep(listener: (reason: SleepReason) => void): Unsubscribe
}

export type WakeLockState = 'idle' | 'held' | 'lost' | 'refused' | 'absent'

export interface Awake {
  state(): WakeLockState
  /** Ask for the screen to stay on, or let it sleep again. Best called inside a tap. */
  want(on: boolean): void
  onChange(listener: (state: WakeLockState) => void): Unsubscribe
}

export type Feeling = 'short' | 'twoShort' | 'long' | 'refused' | 'out'

export interface Haptics {
  readonly present: boolean
  /** False when the phone cannot or will not. */
  feel(feeling: Feeling): boolean
  /** A whole count from now on, instead of what was being felt. */
  count(plan: CuePlan): boolean
}

/** `off`: there is no audio here. `locked`: waits for a tap. `dead`: says it runs and does not. */
export type SoundHealth = 'ok' | 'locked' | 'dead' | 'off'
/** `numerals`: the screen counts, nothing sounds. */
export type SoundMode = 'voice' | 'tones' | 'numerals'

export interface Sound {
  health(): SoundHealth
  onHealth(listener: (health: SoundHealth) => void): Unsubscribe
  /** Inside a tap (pointerup, click, keydown): opens the audio or rebuilds it. */
  unlock(): Promise<SoundHealth>
  setMode(mode: SoundMode): void
  /** Schedules a whole count on the audio clock; `tapMs` is the tap in page time. Replaces a running count. */
  count(plan: CountPlan, tapMs: number): void
  /** Cuts off whatever sounds or will sound, within 10 ms. */
  stop(): void
  /** Ends the OUT tone; the drip call still comes. */
  hush(): void
  /** A drip call `afterS` from the tap, for a dip that was stopped early. */
  drip(afterS: number, tapMs: number, poured?: boolean): void
  /** Two notes of the bucket, then `first`, then the places: "B one, ready"; no places: the notes alone; no letter: no notes. */
  call(bucketLetter: string, places: readonly Place[], bucketId?: string, first?: readonly WordId[]): void
  /**
   * Words one after another, instead of what a card said before, after a call; none: what it said ends. Nothing where
   * voice is off or not loaded.
   */
  say(words: readonly WordId[]): void
  /**
   * A sentence by the phone's own speech, once a card's line, a call or a count is over; an empty one takes it back.
   * Nothing where voice is off, or the phone has no voice of its own in that language.
   */
  hint(text: string, language: string): void
  /** Ends whatever is being said, or waits to be; a count goes on. */
  quiet(): void
  /** A card's line or a call is being said, or waits for its turn. */
  saying(): boolean
  /** The sign of a refusal at once, then words with the weight of a call: no card cuts them off, a count is not spoken into. */
  warn(words: readonly WordId[]): void
  /** Something of ours is in the air: a knock now may be our own. */
  heard(): boolean
  refused(): void
  saved(): void
  /** The rising tone under a held button; call the result when the finger leaves. */
  holding(): () => void
  play(plan: CuePlan, tapMs?: number): void
}

export interface NoticeText {
  readonly tag: string
  readonly title: string
  readonly body: string
  /** The moment it is about, epoch ms. */
  readonly atMs: number
  readonly silent: boolean
}

export type NoticePermission = 'granted' | 'denied' | 'ask' | 'absent'

export interface Notices {
  permission(): NoticePermission
  /** Inside a tap. */
  ask(): Promise<NoticePermission>
  /** False when nothing could be posted. */
  post(notice: NoticeText): Promise<boolean>
  clear(tag: string): Promise<void>
  /** Count on the app's icon, where the phone has it; 0 removes it. */
  badge(count: number): void
}

/** `prompt`: the browser can ask. `byHand`: iOS, the person adds it from the share sheet. */
export type InstallState = 'installed' | 'prompt' | 'byHand' | 'unknown'

export interface Install {
  state(): InstallState
  /** Inside a tap. True when the person accepted. */
  prompt(): Promise<boolean>
  onChange(listener: (state: InstallState) => void): Unsubscribe
}

export type ShareResult = 'shared' | 'saved' | 'cancelled'

export interface Share {
  /** Offers the phone's share sheet, or saves the file where there is none. Inside a tap. */
  file(name: string, type: string, content: string | Blob | Uint8Array<ArrayBuffer>): Promise<ShareResult>
}

export interface TapeCall {
  readonly dueMs: number
  readonly bucketLetter: string
  readonly places: readonly Place[]
}

export type TapeState = 'off' | 'playing' | 'interrupted' | 'failed'

/** Buttons of a headset and of the lock screen. */
export type MediaButton = 'next' | 'pause' | 'play'

export interface Tape {
  state(): TapeState
  onChange(listener: (state: TapeState) => void): Unsubscribe
  /**
   * Builds the track from now on and plays it, silent until `quietUntilMs` of epoch time. Inside the tap that changed
   * a wait; no calls: stops.
   */
  arm(calls: readonly TapeCall[], title: string, quietUntilMs?: number): Promise<TapeState>
  /** Plays on after an interruption, where it should be by now. On a wake, and at the next tap. */
  resume(): Promise<TapeState>
  /** Silent until it is resumed. */
  pause(): void
  off(): void
  /** What has come due was heard: it is not said again. Works with the screen off, as long as the page runs. */
  answered(): void
  onButton(listener: (button: MediaButton) => void): Unsubscribe
}
