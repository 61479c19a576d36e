import { delMany, entries, get, getMany, keys, promisifyRequest, set, setMany } from 'idb-keyval'
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
  /** Puts `value` under `key`, then takes `ids` away, a few at a time: torn, they are there twice, and that is harmless. */
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

/** So many values of one write are handed to the browser before the page has its turn: packs are large. */
const AT_ONCE = 4
/** The same of keys taken away. */
const AWAY_AT_ONCE = 10

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
      journal('readwrite', async (store) => {
        for (let from = 0; from < values.length; from += AT_ONCE) {
          const part = values.slice(from, from + AT_ONCE)
          await Promise.all(part.map(([key, value]) => promisifyRequest(store.put(value, key))))
        }
      }),
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
    async replace(ids, key, value) {
      await set(key, value, journal)
      for (let from = 0; from < ids.length; from += AWAY_AT_ONCE)
        await delMany(ids.slice(from, from + AWAY_AT_ONCE), journal)
    },
    close: () => database.close(),
  }
}
