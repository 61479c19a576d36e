import type { UseStore } from 'idb-keyval'

/** The own table's; the demo has one of its own, and nothing of it is ever in this one. */
export const DATABASES = { own: 'bucketside', demo: 'bucketside-demo' } as const
export type TableName = keyof typeof DATABASES
/** Raised by two when a store is added. Stores are never taken away: an older program may still need them. */
const VERSION = 1
/** A database that was left without a store has it made again at this one. A program from before that only reads it. */
const REMADE = VERSION + 1

/**
 * - `journal`: one record a key, the key being the record's id
 * - `quarantine`: what could not be read as a record, under the key it had
 * - `local`: facts about this phone alone, no part of what phones share
 * - `knocks`: what the service worker leaves for the page
 */
const STORES = ['journal', 'quarantine', 'local', 'knocks'] as const
export type StoreName = (typeof STORES)[number]

/** Pauses before the second and third try: three tries fit in two seconds. */
const PAUSES_MS = [250, 750]
/**
 * How a lost connection shows. WebKit keeps answering a dead handle with these until it is opened anew
 * (https://bugs.webkit.org/show_bug.cgi?id=277615); a forced close aborts what was under way.
 */
const LOST = new Set(['UnknownError', 'InvalidStateError', 'AbortError'])

export interface DatabaseListeners {
  /** Another tab holds an older version open and does not let go. */
  readonly onBlocked?: () => void
  /** A newer program took over in another tab: this page can only read and should be opened anew. */
  readonly onStale?: () => void
  /** The database was gone and has been made anew: all that is stored is what comes from now on. */
  readonly onRemade?: () => void
}

export interface Database {
  /** A store for idb-keyval, strict about durability; a write resolves after the transaction's `complete`. */
  store(name: StoreName): UseStore
  /** True when a newer program made the database: it can be read, and any write is refused. */
  isNewer(): Promise<boolean>
  close(): void
}

/** Refused write to a database that a newer program made. */
export class NewerDatabaseError extends Error {
  override readonly name = 'NewerDatabaseError'
}

const nameOf = (error: unknown) => (error as { name?: string } | null)?.name
const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms))

function request(
  name: string,
  version: number | undefined,
  listeners: DatabaseListeners,
  onMade: () => void,
): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(name, version)
    let made = false
    opening.addEventListener('upgradeneeded', () => {
      made = !opening.result.objectStoreNames.contains(STORES[0])
      for (const store of STORES) {
        if (!opening.result.objectStoreNames.contains(store)) opening.result.createObjectStore(store)
      }
    })
    opening.addEventListener('blocked', () => listeners.onBlocked?.())
    opening.addEventListener('success', () => {
      resolve(opening.result)
      if (made) onMade()
    })
    opening.addEventListener('error', () => reject(opening.error))
  })
}

/**
 * Runs `work` in a transaction of its own. A write waits for `complete` and fails with the transaction's own
 * error: a full disk shows there only, after every request has succeeded. A throw in `work` takes all of it back.
 */
async function transact<T>(
  db: IDBDatabase,
  name: StoreName,
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => T | PromiseLike<T>,
): Promise<T> {
  const transaction = db.transaction(name, mode, { durability: 'strict' })
  const completed = new Promise<void>((resolve, reject) => {
    transaction.addEventListener('complete', resolve)
    transaction.addEventListener('abort', () => reject(transaction.error ?? { name: 'AbortError' }))
  })
  if (mode === 'readonly') {
    completed.catch(() => {})
    return work(transaction.objectStore(name))
  }
  let result: T | PromiseLike<T>
  try {
    result = work(transaction.objectStore(name))
  } catch (error) {
    completed.catch(() => {})
    transaction.abort()
    throw error
  }
  // idb-keyval rejects at the bubbling `error`, where the transaction's error is still null.
  const settled = Promise.resolve(result).then(
    (value) => ({ value }),
    (error: unknown) => ({ error }),
  )
  await completed
  const outcome = await settled
  if ('error' in outcome) throw outcome.error
  return outcome.value
}

/**
 * The one door to what is stored for a table, for page and service worker alike. Opens at first use, and again whenever
 * the connection was lost; `work` given to a store may then run up to three times and must be idempotent.
 */
export function openDatabase(listeners: DatabaseListeners = {}, table: TableName = 'own'): Database {
  let handle: Promise<IDBDatabase> | undefined

  const drop = () => {
    handle?.then(
      (db) => db.close(),
      () => {},
    )
    handle = undefined
  }

  let opened = false

  const open = async (): Promise<IDBDatabase> => {
    const onMade = () => opened && listeners.onRemade?.()
    const ask = (version?: number) => request(DATABASES[table], version, listeners, onMade)
    let db = await ask(VERSION).catch((error) => {
      if (nameOf(error) !== 'VersionError') throw error
      return ask()
    })
    if (db.version === VERSION && STORES.some((name) => !db.objectStoreNames.contains(name))) {
      db.close()
      db = await ask(REMADE)
    }
    opened = true
    db.onclose = () => {
      handle = undefined
    }
    db.onversionchange = (event) => {
      drop()
      if ((event.newVersion ?? 0) > REMADE) listeners.onStale?.()
    }
    return db
  }

  const connect = () => {
    if (handle) return handle
    const opening = open()
    handle = opening
    opening.catch(() => {
      if (handle === opening) handle = undefined
    })
    return opening
  }

  const store =
    (name: StoreName): UseStore =>
    async (mode, work) => {
      for (let tried = 0; ; tried++) {
        try {
          const db = await connect()
          if (mode !== 'readonly' && db.version > REMADE) throw new NewerDatabaseError()
          return await transact(db, name, mode, work)
        } catch (error) {
          const pauseMs = PAUSES_MS[tried]
          if (pauseMs === undefined || !LOST.has(nameOf(error) ?? '')) throw error
          drop()
          await pause(pauseMs)
        }
      }
    }

  return { store, isNewer: async () => (await connect()).version > REMADE, close: drop }
}
