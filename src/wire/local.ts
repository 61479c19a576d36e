import { set, type UseStore } from 'idb-keyval'

/** Keeps something about this phone alone. A write that fails costs a setting, not a hit. */
export function keep(store: UseStore, key: string, value: unknown): void {
  set(key, value, store).catch(() => {})
}
