import { delMany, entries, get, getMany, keys, promisifyRequest, setMany } from 'idb-keyval'
import type { Database } from '../../shared/database.ts'

/** What the journal needs of storage: the one thing tests replace. */
export interface JournalStorage {
  /** Everything in the journal and everything set aside. `lost` are keys whose value the browser cannot read. */
  load(): Promise<Loaded>
  /** True when a newer program made what is stored. */
  isNewer(): Promise<boolean>
  /** Keys of the journal. */
  keys(): Promise<string[]>
  /** Entries of the journal by key; missing ones left out. */
  fetch(keys: readonly string[]): Promise<Entry[]>
  /** All or none, durable when it resolves. Writing the same again changes nothing. */
  put(entries: readonly Entry[]): Promise<void>
  /** Moves values out of the journal into quarantine, or back. */
  move(moves: readonly Move[], to: 'quarantine' | 'journal'): Promise<void>
  /** Puts `value` under `key` and takes `ids` away, in one transaction. */
  replace(ids: readonly string[], key: string, value: unknown): Promise<void>
  /** Adds to quarantine what never was in the journal, or no longer is. */
  quarantine(kept: readonly Entry[]): Promise<void>
  close(): void
}

export type Entry = readonly [key: string, value: unknown]

export interface Move {
  readonly from: string
  readonly to: string
  readonly value: unknown
}

export interface Loaded {
  readonly journal: readonly Entry[]
  readonly quarantined: readonly Entry[]
  readonly lost: readonly string[]
}

/** The storage on a database of ours. */
export function databaseStorage(database: Database): JournalStorage {
  const journal = database.store('journal')
  const quarantine = database.store('quarantine')

  const loadJournal = async (): Promise<Omit<Loaded, 'quarantined'>> => {
    try {
      return { journal: await entries<string, unknown>(journal), lost: [] }
    } catch (error) {
      const known = await keys<string>(journal).catch(() => null)
      if (known === null) throw error
      // One unreadable value fails a reading of them all: take them singly.
      const read: Entry[] = []
      const lost: string[] = []
      for (const key of known) {
        try {
          read.push([key, await get(key, journal)])
        } catch {
          lost.push(key)
        }
      }
      return { journal: read, lost }
    }
  }

  return {
    async load() {
      const [{ journal: read, lost }, aside] = await Promise.all([
        loadJournal(),
        entries<string, unknown>(quarantine).catch(() => []),
      ])
      return { journal: read, lost, quarantined: aside }
    },
    isNewer: () => database.isNewer(),
    keys: () => keys<string>(journal),
    async fetch(wanted) {
      const values: unknown[] = await getMany([...wanted], journal)
      return wanted.flatMap((key, index): Entry[] =>
        values[index] === undefined ? [] : [[key, values[index]]],
      )
    },
    put: (values) =>
      setMany(
        values.map(([key, value]) => [key, value]),
        journal,
      ),
    async move(moves, to) {
      const [source, target] = to === 'journal' ? [quarantine, journal] : [journal, quarantine]
      // Two transactions: torn between them, a value is in both places, which the next opening mends.
      await setMany(
        moves.map((move) => [move.to, move.value]),
        target,
      )
      await delMany(
        moves.map((move) => move.from),
        source,
      )
    },
    quarantine: (kept) =>
      setMany(
        kept.map(([key, value]) => [key, value]),
        quarantine,
      ),
    replace: (ids, key, value) =>
      journal('readwrite', (store) => {
        store.put(value, key)
        for (const id of ids) store.delete(id)
        return promisifyRequest(store.transaction)
      }),
    close: () => database.close(),
  }
}
