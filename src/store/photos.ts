import { DATABASES, type TableName } from '../../shared/database.ts'

/** A picture as it lies in its store. */
interface Kept {
  readonly type: string
  readonly data: ArrayBuffer
}

/** Pictures of fired pots, apart from the journal: none of them is ever between a hit and its record. */
export interface PhotoStore {
  /** Resolves once it is safely stored. */
  put(photoId: string, picture: Blob): Promise<void>
  /** Undefined where it is gone. */
  get(photoId: string): Promise<Blob | undefined>
  ids(): Promise<readonly string[]>
}

const STORE = 'photos'

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
    const opening = indexedDB.open(photosOf(table), 1)
    opening.onupgradeneeded = () => opening.result.createObjectStore(STORE)
    const db = await answer(opening)
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
  return {
    async put(photoId, picture) {
      const kept: Kept = { type: picture.type, data: await picture.arrayBuffer() }
      const transaction = (await connect()).transaction(STORE, 'readwrite', { durability: 'strict' })
      transaction.objectStore(STORE).put(kept, photoId)
      await new Promise<void>((resolve, reject) => {
        transaction.oncomplete = () => resolve()
        // A full disk shows here alone.
        transaction.onabort = () => reject(transaction.error ?? new DOMException('aborted', 'AbortError'))
      })
    },
    async get(photoId) {
      const kept: Kept | undefined = await answer((await read()).get(photoId))
      return kept && new Blob([kept.data], { type: kept.type })
    },
    ids: async () => (await answer((await read()).getAllKeys())).map(String),
  }
}
