/** Page to waiting worker: take over. It answers on the port with {@link TakeOver}. */
export interface SkipWaiting {
  readonly type: 'SKIP_WAITING'
}

/** `other-window`: another window of the app is open and may be at work, so the worker stays as it is. */
export type TakeOver = 'taking-over' | 'other-window'

/** A notification was tapped. Kept in the store `knocks`, as a message to a page in the background may be lost. */
export interface NoticeTap {
  /** Epoch ms of the tap. */
  readonly at: number
  /** Tag of the notification. */
  readonly tag: string
  /** Its button, empty for the notification itself. */
  readonly action: string
}

/** BroadcastChannel that tells pages of a new {@link NoticeTap}. */
export const NOTICE_TAP_CHANNEL = 'bucketside-knocks'
