/**
 * What page and service worker both have and this realm, which knows neither DOM nor worker, may use.
 * A subset of lib.dom; where that library is loaded, it is the one that counts.
 */
interface IDBEventTarget {
  addEventListener(type: string, listener: () => void): void
}
interface IDBRequest<T = unknown> extends IDBEventTarget {
  readonly result: T
  readonly error: { readonly name: string } | null
}
interface IDBOpenDBRequest extends IDBRequest<IDBDatabase> {
  readonly transaction: IDBTransaction | null
}
type IDBValidKey = string | number
type IDBTransactionMode = 'readonly' | 'readwrite' | 'versionchange'
interface IDBObjectStore {
  readonly transaction: IDBTransaction
}
interface IDBTransaction extends IDBEventTarget {
  readonly error: { readonly name: string } | null
  objectStore(name: string): IDBObjectStore
  abort(): void
}
interface IDBVersionChangeEvent {
  readonly newVersion: number | null
}
interface IDBDatabase {
  readonly version: number
  readonly objectStoreNames: { contains(name: string): boolean }
  onversionchange: ((event: IDBVersionChangeEvent) => void) | null
  onclose: (() => void) | null
  createObjectStore(name: string): IDBObjectStore
  transaction(
    name: string,
    mode: IDBTransactionMode,
    options: { durability: 'default' | 'strict' | 'relaxed' },
  ): IDBTransaction
  close(): void
}
declare const indexedDB: { open(name: string, version?: number): IDBOpenDBRequest }
declare function setTimeout(callback: () => void, delayMs: number): unknown
