/** What the phone can do beyond the first hits: ring with the screen off, knocks, recorded names. Fetched late. */
import type { ReadonlySignal } from '@preact/signals'

export interface RingView {
  /** The person wants the phone to ring with the screen off. */
  readonly on: boolean
  /** It was offered at the bench, and answered. */
  readonly offered: boolean
  readonly track: 'off' | 'playing' | 'interrupted' | 'failed'
  /** Whether this phone with this version of its browser rang with the screen off when it was tried. */
  readonly proof: 'proven' | 'untested' | 'failed'
  readonly notices: 'granted' | 'denied' | 'ask' | 'absent'
  /** A test under way: lock the phone, then say whether it rang. `stayed`: the screen was on when it was due. */
  readonly test?: { readonly step: 'lock' | 'ask' | 'stayed'; readonly dueMs: number }
}

export type KnockBy = 'off' | 'motion' | 'mic'

export interface KnockView {
  readonly by: KnockBy
  readonly state: 'off' | 'listening' | 'refused' | 'absent'
}

/** How the recording of a name went. */
export type NameResult = 'kept' | 'refused' | 'absent' | 'nothing'

export interface Extras {
  /** Kinds of cards that were answered on this phone. */
  readonly answered: ReadonlySignal<ReadonlySet<string>>
  noteAnswered(kind: string): void
  /** Says how a card is answered, once a kind while the program is open; none: that is over. */
  sayHint(kind: string, text: string): void
  readonly ring: ReadonlySignal<RingView>
  /** Inside a tap, as every change of what is to ring. */
  setRing(on: boolean): void
  beginTest(): void
  /** Ends the test with what the person heard; without an answer nothing is learnt. */
  endTest(rang?: boolean): void
  askNotices(): void
  /** Plays one sound, inside a tap: a tone by its name, a bucket's call by its letter; not while a count runs. */
  playTone(name: string): void
  /** Says words that have clips, instead of what was being said. */
  say(words: readonly string[]): void
  /** A calendar file of the waits of over an hour. `none`: there are none. */
  calendar(): Promise<'shared' | 'saved' | 'cancelled' | 'none'>
  /** How many waits that file would hold. */
  longWaits(): number
  readonly knock: ReadonlySignal<KnockView>
  setKnock(by: KnockBy): void
  /** Buckets whose name was recorded on this phone. */
  readonly names: ReadonlySignal<ReadonlySet<string>>
  /** Records from now until the result's `stop` is called. */
  recordName(bucketId: string): { stop(): void; readonly done: Promise<NameResult> }
  playName(bucketId: string): void
  dropName(bucketId: string): void
}
