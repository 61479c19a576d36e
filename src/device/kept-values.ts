import { crc32 } from '../../shared/crc.ts'

/** Longer than a sitting's, as own table and demo share them. */
const MOST = 64
/** Written once the hand that brought a new one is away from the glass. */
const QUIET_MS = 2000

/**
 * Values computed by one `version` of the program, under a text of all they depend on, kept in local storage under
 * `name`. Losing them loses time and nothing else; what another version computed, or `isValue` does not know, is as if
 * it were not there.
 */
export function keptValues<Value>(
  name: string,
  version: string,
  isValue: (value: unknown) => value is Value,
) {
  const earlier = read(name, version)
  /** Of this page, the latest last. */
  const used = new Map<string, unknown>()
  let due = false
  const use = (key: string, value: unknown) => {
    used.delete(key)
    used.set(key, value)
  }
  return {
    recall(text: string): Value | undefined {
      const key = keyOf(text)
      const value = used.get(key) ?? earlier[key]
      if (!isValue(value)) return undefined
      use(key, value)
      return value
    },
    note(text: string, value: Value): void {
      use(keyOf(text), value)
      if (due) return
      due = true
      setTimeout(() => {
        due = false
        write(name, version, Object.fromEntries([...used].slice(-MOST)))
      }, QUIET_MS)
    },
  }
}

const keyOf = (text: string) => `${text.length} ${crc32(text)}`

function read(name: string, version: string): Readonly<Record<string, unknown>> {
  try {
    const { of, values } = JSON.parse(localStorage.getItem(name) ?? '{}')
    return of === version && typeof values === 'object' && values !== null ? values : {}
  } catch {
    // Walled off, or torn: nothing is known.
    return {}
  }
}

function write(name: string, version: string, values: Readonly<Record<string, unknown>>): void {
  try {
    localStorage.setItem(name, JSON.stringify({ of: version, values }))
  } catch {
    // Walled off, or full: computed again at the next start.
  }
}
