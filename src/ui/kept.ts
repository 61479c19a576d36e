/** The latest so many under one name: what is older is given up. */
const MOST = 40

/**
 * What is half filled in, under a name and a key of what it is of: in local storage, as it outlives a page that the
 * phone kills. Losing it loses what was not saved yet, and nothing else. Undefined where there is none.
 */
export function keptOf(name: string, key: string): unknown {
  return read(name).find(([of]) => of === key)?.[1]
}

/** Keeps it, in the place of what was kept under that key before. */
export function keep(name: string, key: string, value: unknown): void {
  const others = read(name).filter(([of]) => of !== key)
  try {
    localStorage.setItem(name, JSON.stringify([...others, [key, value]].slice(-MOST)))
  } catch {
    // Walled off, or full: it lasts as long as the page.
  }
}

function read(name: string): readonly (readonly [string, unknown])[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(name) ?? '[]')
    return Array.isArray(kept) ? kept.filter(isPair) : []
  } catch {
    // As above, or torn: nothing is kept.
    return []
  }
}

const isPair = (one: unknown): one is readonly [string, unknown] =>
  Array.isArray(one) && one.length === 2 && typeof one[0] === 'string'
