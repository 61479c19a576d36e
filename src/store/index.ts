/** The public face of the store. */
import { type Database, openDatabase, type TableName } from '../../shared/database.ts'
import type { AnyEvent } from '../../shared/record.ts'
import type { Journal } from './contract.ts'
import { loadJournal } from './journal.ts'
import { databaseStorage } from './journal-storage.ts'
import { type ContentCheck, SCHEMA } from './marks.ts'
import { tabChannel } from './tab-channel.ts'
import { openUnsavedFallback } from './unsaved-fallback.ts'
import { witness } from './witness.ts'
import { nameWriter } from './writer.ts'

export type { Appended, Change, Journal, MergeReport, Noted, Noting, Opening } from './contract.ts'
export { onNoticeTap, takeNoticeTaps } from './notice-taps.ts'
export type { Quarantined, QuarantineReason } from './quarantine.ts'
export type { SaveStatus } from './saver.ts'
export { forgetShort, keepWitness, witness } from './witness.ts'

export interface JournalOptions {
  /** Whose records: nothing passes from one table's to the other's. */
  readonly table: TableName
  /** Tells whether an event is of a kind that this program folds. */
  isEvent(event: AnyEvent): boolean
  /** Fetches what examines the contents of events of those kinds. */
  content(): Promise<ContentCheck>
}

export interface OpenedJournal<E extends AnyEvent> extends Journal<E> {
  readonly database: Database
}

/** Opens this phone's journal. Never rejects: see {@link Journal.opening} for how it went. */
export async function openJournal<E extends AnyEvent>(options: JournalOptions): Promise<OpenedJournal<E>> {
  let remade = () => {}
  let stale = () => {}
  const database = openDatabase({ onRemade: () => remade(), onStale: () => stale() }, options.table)
  const ports = {
    storage: databaseStorage(database),
    fallback: openUnsavedFallback(() => localStorage, options.table),
    channel: await tabChannel(options.table),
    writer: nameWriter(database, options.table === 'own' ? witness()?.phone : undefined),
    knowledge: {
      schema: SCHEMA,
      isEvent: (event: AnyEvent) => options.isEvent(event),
      content: () => options.content(),
    },
  }
  const journal = await loadJournal<E>(ports)
  remade = () => void journal.writeBack().catch(() => {})
  stale = () => journal.retire()
  return Object.assign(journal, { database })
}
