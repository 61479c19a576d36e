import type { AnyEvent, JournalRecord, RecordTime } from '../../shared/record.ts'
import type { JournalStorage } from './journal-storage.ts'
import type { Knowledge } from './marks.ts'
import type { Quarantined } from './quarantine.ts'
import type { SaveStatus } from './saver.ts'
import type { UnsavedFallback } from './unsaved-fallback.ts'

/** What a journal stands on. */
export interface JournalPorts {
  readonly storage: JournalStorage
  readonly fallback: UnsavedFallback
  /** To the other tabs of this phone. */
  readonly channel: Channel
  /** A name that no other opening of any journal has. Must not reject. */
  readonly writer: Promise<string>
  readonly knowledge: Knowledge
}

export interface Channel {
  post(message: TabMessage): void
  listen(listener: (message: TabMessage) => void): void
  close(): void
}

export interface TabMessage {
  readonly kind: 'records'
  readonly records: readonly unknown[]
}

export type Change<E extends AnyEvent> =
  /** `atEnd`: all of them come after what was there, so that a fold may simply go on. */
  | { readonly kind: 'records'; readonly records: readonly JournalRecord<E>[]; readonly atEnd: boolean }
  /** They are durable now. */
  | { readonly kind: 'saved'; readonly records: readonly JournalRecord<E>[] }
  | { readonly kind: 'status'; readonly status: SaveStatus }
  /** {@link Journal.opening} has changed: storage that was silent or unreadable has answered. */
  | { readonly kind: 'opening' }
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
  /**
   * Why nothing could be loaded, null when it could: then what is shown isn't what is kept, and hits are kept in memory
   * and tried again. `TimeoutError`: storage has not answered yet.
   */
  readonly failure: string | null
}

export interface MergeReport {
  readonly added: number
  /** Had been here already. */
  readonly known: number
  /** One id with two contents: the same one prevails on every phone, the other is set aside. */
  readonly displaced: number
  /** Not records, or damaged: left out. */
  readonly faulty: number
  /** What this program can't fold, of a newer one or out of range: set aside until an update knows it. */
  readonly waiting: number
  /** More than a day ahead of this phone's clock: left out. */
  readonly ahead: number
}

export interface Journal<E extends AnyEvent> {
  /** This phone's name: what its records' writers begin with, before the dot. */
  readonly phone: string
  /** All records in the order of the fold. */
  readonly records: readonly JournalRecord<E>[]
  readonly opening: Opening
  /** True when a newer program wrote here. Then `append` and `merge` throw. */
  readonly readOnly: boolean
  readonly status: SaveStatus
  /**
   * Takes the events of one hit. They are in `records` on return; `saved` resolves when they are durable and
   * never rejects. `orderMs`: the clock that their order follows, epoch ms, where it was set since: see `nextOrder`.
   * RangeError on a number JSON cannot carry.
   */
  append(events: readonly E[], stamp: RecordTime, orderMs?: number): Appended<E>
  /** Looks for what other tabs wrote while this page slept. */
  refresh(): Promise<void>
  /**
   * Takes in another journal: all of it, durable when it resolves, or nothing, and it rejects. `nowMs` is this phone's
   * clock. `noted`: what this phone writes down of it, kept with all of it or not at all; where it depends on what was left
   * out or set aside, as a function of that. Does not freeze the page.
   */
  merge(candidates: readonly unknown[], nowMs: number, noted?: Noting<E>): Promise<MergeReport>
  /** A newer program has taken over in another tab: from now on read-only. */
  retire(): void
  /** Tries now what is not saved. */
  retry(): void
  /** Stores all again that is known here: the database was emptied or made anew under this page. */
  writeBack(): Promise<void>
  /**
   * Packs what lies singly, so that the next opening is fast. Changes nothing else, may be left undone, and is
   * for a quiet moment: a hit that comes meanwhile waits for it.
   */
  tidy(): Promise<void>
  subscribe(listener: (change: Change<E>) => void): () => void
  close(): void
}

/** Events of one hit, as {@link Journal.append} takes them. */
export interface Noted<E extends AnyEvent> {
  readonly events: readonly E[]
  readonly stamp: RecordTime
  readonly orderMs?: number
}

export type Noting<E extends AnyEvent> = Noted<E> | ((left: readonly unknown[]) => Noted<E> | undefined)

export interface Appended<E extends AnyEvent> {
  readonly records: readonly JournalRecord<E>[]
  readonly saved: Promise<void>
}
