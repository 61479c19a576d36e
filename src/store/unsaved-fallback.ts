import type { TableName } from '../../shared/database.ts'

const PREFIXES = { own: 'bucketside-unsaved.', demo: 'bucketside-demo-unsaved.' } as const

/** The part of localStorage that is used. */
export type FallbackStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>

/**
 * A second place for records that the database does not take, one line a writer. Best effort: the storage may
 * be full, barred or gone, and no method throws.
 */
export interface UnsavedFallback {
  /** Keeps exactly these for `writer`; nothing removes the line. */
  keep(writer: string, values: readonly object[]): void
  /** What earlier lives of the page left, by writer. */
  left(): Map<string, unknown[]>
}

/** `open` gives the storage; reading the property alone throws where storage is barred. */
export function openUnsavedFallback(open: () => FallbackStorage, table: TableName = 'own'): UnsavedFallback {
  const prefix = PREFIXES[table]
  const attempt = <T>(work: (storage: FallbackStorage) => T, otherwise: T): T => {
    try {
      return work(open())
    } catch {
      return otherwise
    }
  }
  return {
    keep(writer, values) {
      attempt((storage) => {
        if (values.length === 0) storage.removeItem(prefix + writer)
        else storage.setItem(prefix + writer, JSON.stringify(values))
      }, undefined)
    },
    left: () =>
      attempt((storage) => {
        const lines = new Map<string, unknown[]>()
        for (let index = 0; index < storage.length; index++) {
          const key = storage.key(index)
          if (key?.startsWith(prefix)) lines.set(key.slice(prefix.length), parsed(storage.getItem(key)))
        }
        return lines
      }, new Map()),
  }
}

function parsed(text: string | null): unknown[] {
  try {
    const value: unknown = JSON.parse(text ?? '[]')
    return Array.isArray(value) ? value : []
  } catch {
    return []
  }
}
