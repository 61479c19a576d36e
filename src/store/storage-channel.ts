import type { Channel } from './contract.ts'

/** A channel to other windows where the browser has none: storage events (HTML Standard, section 12.2) are fired in those alone. */
export function throughStorage(name: string): Channel {
  const left = new AbortController()
  return {
    post(message) {
      try {
        localStorage.setItem(name, JSON.stringify(message))
        localStorage.removeItem(name)
      } catch {
        // Full or barred: the others look when they are looked at.
      }
    },
    listen(listener) {
      const heard = ({ key, newValue }: StorageEvent) => {
        if (key === name && newValue) listener(JSON.parse(newValue))
      }
      addEventListener('storage', heard, { signal: left.signal })
    },
    close: () => left.abort(),
  }
}
