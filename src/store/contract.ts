import type { AnyEvent, JournalRecord, RecordTime } from '../../shared/record.ts'
import type { JournalStorage } from './journal-storage.ts'
import type { Quarantined } from './quarantine.ts'
import type { SaveStatus } from './saver.ts'
import type { UnsavedFallback } from './unsaved-fallback.ts'

/** The word that {@link Journal.wipe} wants, so that no slip of code or finger empties a journal. */
export const WIPE_WORD = 'WIPE'

/** What a journal stands on. */
export interface JournalPorts {
  readonly storage: JournalStorage
  readonly fallback: UnsavedFallback
  /** To the other tabs of this phone. */
  readonly channel: Channel
  /** A name that no other opening of any journal has. Must not reject. */
  readonly writer: Promise<string>
}

export interface Channel {
  post(message: TabMessage): void
  listen(listener: (message: TabMessage) => void): void
  close(): void
}

export type TabMessage =
  | { readonly kind: 'records'; readonly records: readonly unknown[] }
  | { readonly kind: 'wiped' }

export type Change<E extends AnyEvent> =
  /** `atEnd`: all of them come after what was there, so that a fold may simply go on. */
  | { readonly kind: 'records'; readonly records: readonly JournalRecord<E>[]; readonly atEnd: boolean }
  | { readonly kind: 'status'; readonly status: SaveStatus }
  | { readonly kind: 'wiped' }
  /** A newer program has written: from now on read-only, and to be opened anew. */
  | { readonly kind: 'stale' }

/** How the opening went. Nothing here keeps the rest from being used. */
export interface Opening {
  /** Set aside now or earlier. */
  readonly quarantined: readonly Quarantined[]
  /** Keys whose values the browser could not read; left where they are. */
  readonly lost: readonly string[]
  /** Records that a newer program wrote. */
  readonly newer: number
  /** Records that an earlier life of the page could not store. They are in the fold, and tried again. */
  readonly recovered: number
  /** Why nothing could be loaded, null when it could. Hits are then kept in memory, and tried again. */
  readonly failure: string | null
}

export interface MergeReport {
  readonly added: number
  /** Had been here already. */
  readonly known: number
  /** One id with two contents: the same one prevails on every phone, the other is set aside. */
  readonly displaced: number
  /** Not records, damaged or of an unknown kind: left out. */
  readonly faulty: number
  /** Of a newer program: left out. */
  readonly newer: number
}

export interface Journal<E extends AnyEvent> {
  /** This phone's name: what its records' writers begin with, before the dot. */
  readonly phone: string
  /** All records in the order of the fold. */
  readonly records: readonly JournalRecord<E>[]
  readonly opening: Opening
  /** True when a newer program wrote here. Then `append`, `merge` and `wipe` throw. */
  readonly readOnly: boolean
  readonly status: SaveStatus
  /**
   * Takes the events of one hit. They are in `records` on return; `saved` resolves when they are durable and
   * never rejects. RangeError on a number JSON cannot carry.
   */
  append(events: readonly E[], stamp: RecordTime): Appended<E>
  /** Looks for what other tabs wrote while this page slept. */
  refresh(): Promise<void>
  /** Takes in another journal; resolves when it is durable here. */
  merge(candidates: readonly unknown[]): Promise<MergeReport>
  /** Deletes every record on this phone. `word` is {@link WIPE_WORD}, else RangeError. */
  wipe(word: string): Promise<void>
  /** Tries now what is not saved. */
  retry(): void
  /**
   * Packs what lies singly, so that the next opening is fast. Changes nothing else, may be left undone, and is
   * for a quiet moment: a hit that comes meanwhile waits for it.
   */
  tidy(): Promise<void>
  subscribe(listener: (change: Change<E>) => void): () => void
  close(): void
}

export interface Appended<E extends AnyEvent> {
  readonly records: readonly JournalRecord<E>[]
  readonly saved: Promise<void>
}
