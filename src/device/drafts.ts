/** The latest so many under one name: what is older is given up. */
const MOST = 40

type Pairs = readonly (readonly [string, unknown])[]

/** What is half filled in, under a name and a key of what it is of. Losing it loses what was not saved yet, no more. */
interface Drafts {
  /** Undefined where there is none. */
  of(name: string, key: string): unknown
  /** Keeps it, in the place of what was kept under that key before. */
  keep(name: string, key: string, value: unknown): void
}

/** By name, what the storage of this page did not take. */
const untaken = new Map<string, Pairs>()

/** Drafts in local storage, as it outlives a page that the phone kills; walled off, or full, they last as long as the page. */
export const openDrafts = (): Drafts => ({
  of: (name, key) => read(name).find(([of]) => of === key)?.[1],
  keep(name, key, value) {
    const all = [...read(name).filter(([of]) => of !== key), [key, value] as const].slice(-MOST)
    try {
      localStorage.setItem(name, JSON.stringify(all))
      untaken.delete(name)
    } catch {
      untaken.set(name, all)
    }
  },
})

function read(name: string): Pairs {
  const here = untaken.get(name)
  if (here) return here
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(name) ?? '[]')
    return Array.isArray(kept) ? kept.filter(isPair) : []
  } catch {
    // Walled off, or torn: nothing is kept.
    return []
  }
}

const isPair = (one: unknown): one is readonly [string, unknown] =>
  Array.isArray(one) && one.length === 2 && typeof one[0] === 'string'
