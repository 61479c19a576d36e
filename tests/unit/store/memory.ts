import type { Channel, JournalPorts, TabMessage } from '../../../src/store/contract.ts'
import type { JournalStorage } from '../../../src/store/journal-storage.ts'
import type { Knowledge } from '../../../src/store/marks.ts'
import { type FallbackStorage, openUnsavedFallback } from '../../../src/store/unsaved-fallback.ts'
import { KNOWS_SAMPLES } from './sample.ts'

/** One phone: what its tabs share. */
export function phone() {
  const journal = new Map<string, unknown>()
  const aside = new Map<string, unknown>()
  const lines = new Map<string, string>()
  const tabs = new Set<(message: TabMessage) => void>()
  const trouble = { read: false, write: false, newer: false }

  const mayWrite = async () => {
    if (trouble.write) throw new DOMException('full', 'QuotaExceededError')
  }
  const clone = <T>(value: T): T => structuredClone(value)

  const storage: JournalStorage = {
    async load() {
      if (trouble.read) throw new DOMException('lost', 'UnknownError')
      return clone({ journal: [...journal], quarantined: [...aside], lost: [] })
    },
    isNewer: async () => trouble.newer,
    keys: async () => [...journal.keys()],
    fetch: async (keys) => keys.flatMap((key) => (journal.has(key) ? [[key, clone(journal.get(key))]] : [])),
    async put(entries) {
      await mayWrite()
      for (const [key, value] of entries) journal.set(key, clone(value))
    },
    async move(moves, to) {
      await mayWrite()
      const [source, target] = to === 'journal' ? [aside, journal] : [journal, aside]
      for (const move of moves) {
        target.set(move.to, clone(move.value))
        source.delete(move.from)
      }
    },
    async replace(ids, key, value) {
      await mayWrite()
      journal.set(key, clone(value))
      for (const id of ids) journal.delete(id)
    },
    async quarantine(kept) {
      await mayWrite()
      for (const [key, value] of kept) aside.set(key, clone(value))
    },
    close() {},
  }

  const local: FallbackStorage = {
    getItem: (key) => lines.get(key) ?? null,
    setItem: (key, value) => void lines.set(key, value),
    removeItem: (key) => void lines.delete(key),
    key: (index) => [...lines.keys()][index] ?? null,
    get length() {
      return lines.size
    },
  }

  const channel = (): Channel => {
    let own: ((message: TabMessage) => void) | undefined
    return {
      post(message) {
        for (const tab of tabs) if (tab !== own) tab(clone(message))
      },
      listen(listener) {
        own = listener
        tabs.add(listener)
      },
      close: () => void (own && tabs.delete(own)),
    }
  }

  const ports = (writer: string, knowledge: Knowledge = KNOWS_SAMPLES): JournalPorts => ({
    knowledge,
    storage,
    fallback: openUnsavedFallback(() => local),
    channel: channel(),
    writer: Promise.resolve(writer),
  })

  return { journal, aside, lines, trouble, ports }
}
