import { DATABASES, type TableName } from '../../shared/database.ts'

/** A picture as it lies in its store. */
interface Kept {
  readonly type: string
  readonly data: ArrayBuffer
}

/** Pictures of fired pots, apart from the journal: none of them is ever between a hit and its record. */
export interface PhotoStore {
  /** Resolves once it is safely stored. Rejects where a newer program made the database. */
  put(photoId: string, picture: Blob): Promise<void>
  /** Undefined where it is gone; rejects where the storage doesn't give it. */
  get(photoId: string): Promise<Blob | undefined>
  ids(): Promise<readonly string[]>
}

const STORE = 'photos'
const VERSION = 1
/** Made again at this one where it was left without its store. */
const REMADE = VERSION + 1

/** Storage that has not answered by then is not waited for, ms. */
const ANSWER_MS = 2500
/** A picture's bytes reach a slow phone's disk later than words do, ms. */
const STORED_MS = 8000

/** The storage said nothing: neither yes nor no. */
export class SilentStorageError extends Error {
  override readonly name = 'SilentStorageError'
}

function within<T>(ms: number, work: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined
  const silent = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new SilentStorageError()), ms)
  })
  return Promise.race([work, silent]).finally(() => clearTimeout(timer))
}

/** The database of a table's pictures: one of its own, so that an older program's upgrade never meets it. */
export const photosOf = (table: TableName): string => `${DATABASES[table]}-photos`

const answer = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })

/** The pictures of a table. Opened at first use, and again once a browser has dropped the connection. */
export function photoStore(table: TableName): PhotoStore {
  let handle: Promise<IDBDatabase> | undefined
  const drop = () => {
    handle = undefined
  }
  const open = async (): Promise<IDBDatabase> => {
    const ask = (version: number) => {
      const opening = indexedDB.open(photosOf(table), version)
      opening.onupgradeneeded = () => {
        if (!opening.result.objectStoreNames.contains(STORE)) opening.result.createObjectStore(STORE)
      }
      return answer(opening)
    }
    let db = await ask(VERSION).catch((error: unknown) => {
      if ((error as { name?: string } | null)?.name !== 'VersionError') throw error
      return answer(indexedDB.open(photosOf(table)))
    })
    if (db.version === VERSION && !db.objectStoreNames.contains(STORE)) {
      db.close()
      db = await ask(REMADE)
    }
    db.onclose = drop
    db.onversionchange = () => {
      drop()
      db.close()
    }
    return db
  }
  const connect = (): Promise<IDBDatabase> => {
    if (!handle) {
      handle = open()
      handle.catch(drop)
    }
    return handle
  }
  const read = async () => (await connect()).transaction(STORE).objectStore(STORE)
  const put = async (photoId: string, picture: Blob): Promise<void> => {
    const kept: Kept = { type: picture.type, data: await picture.arrayBuffer() }
    const db = await connect()
    if (db.version > REMADE) throw new DOMException('made by a newer program', 'VersionError')
    const transaction = db.transaction(STORE, 'readwrite', { durability: 'strict' })
    transaction.objectStore(STORE).put(kept, photoId)
    await new Promise<void>((resolve, reject) => {
      transaction.oncomplete = () => resolve()
      // A full disk shows here alone.
      transaction.onabort = () => reject(transaction.error ?? new DOMException('aborted', 'AbortError'))
    })
  }
  const get = async (photoId: string): Promise<Blob | undefined> => {
    const kept: Partial<Kept> | undefined = await answer((await read()).get(photoId))
    // A value that is torn is no picture.
    return kept?.data instanceof ArrayBuffer ? new Blob([kept.data], { type: kept.type ?? '' }) : undefined
  }
  return {
    put: (photoId, picture) => within(STORED_MS, put(photoId, picture)),
    get: (photoId) => within(ANSWER_MS, get(photoId)),
    ids: () =>
      within(
        ANSWER_MS,
        read().then((store) => answer(store.getAllKeys())),
      ).then((keys) => keys.map(String)),
  }
}
