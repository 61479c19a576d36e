/** What a page asks of the service worker. It answers on the port that comes with it. */
export type AskOfWorker =
  /** To a waiting worker: take over. Answer: {@link TakeOver}. */
  | { readonly type: 'SKIP_WAITING' }
  /** The page has drawn its first screen: this version works. No answer. */
  | { readonly type: 'STARTED' }
  /** Look whether every file is still kept, and fetch what is not. Answer: {@link Kept}. */
  | { readonly type: 'CHECK' }

/** `other-window`: another window of the app is open and may be at work, so the worker stays as it is. */
export type TakeOver = 'taking-over' | 'other-window'

/** How the files are. */
export interface Kept {
  /** Every file is kept: no network is needed. */
  readonly all: boolean
  /** The newest version did not start twice, and the one before it is shown. */
  readonly fellBack: boolean
}

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
