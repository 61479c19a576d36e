/**
 * What went wrong in the app, kept on this phone alone so that a person can pass it on. Not the journal: losing it
 * loses nothing. Bounded, and alike faults in a row are one entry with their number.
 */

export interface Fault {
  /** First and last time, epoch ms. */
  readonly at: number
  readonly lastAt: number
  readonly times: number
  /** The part that failed. */
  readonly where: string
  readonly what: string
  readonly stack: string
}

const KEY = 'bucketside.faults'
const KEPT = 20
/** So much of a text tells where it happened, characters. */
const TEXT_MOST = 2000

type Place = Pick<Storage, 'getItem' | 'setItem'>

export interface Faults {
  note(where: string, error: unknown): void
  /** Oldest first. */
  all(): readonly Fault[]
}

/** Opens the log in `place`. What can't be written is still told until the page closes. */
export function openFaults(place: () => Place, now: () => number): Faults {
  let faults = read(place)
  return {
    note(where, error) {
      const { what, stack } = described(error)
      const at = now()
      const last = faults.at(-1)
      faults =
        last?.where === where && last.what === what
          ? [...faults.slice(0, -1), { ...last, lastAt: at, times: last.times + 1 }]
          : [...faults, { at, lastAt: at, times: 1, where, what, stack }].slice(-KEPT)
      try {
        place().setItem(KEY, JSON.stringify(faults))
      } catch {
        // Full or walled off.
      }
    },
    all: () => faults,
  }
}

function described(error: unknown): Pick<Fault, 'what' | 'stack'> {
  const named = error instanceof Error ? error : undefined
  const what = named ? `${named.name}: ${named.message}` : String(error)
  return { what: what.slice(0, TEXT_MOST), stack: (named?.stack ?? '').slice(0, TEXT_MOST) }
}

function read(place: () => Place): readonly Fault[] {
  try {
    const kept: unknown = JSON.parse(place().getItem(KEY) ?? '[]')
    return Array.isArray(kept) ? kept.filter(isFault).slice(-KEPT) : []
  } catch {
    return []
  }
}

const isFault = (value: unknown): value is Fault => {
  const fault = value as Partial<Fault> | null
  return (
    typeof fault === 'object' &&
    fault !== null &&
    [fault.at, fault.lastAt, fault.times].every((number) => Number.isFinite(number)) &&
    [fault.where, fault.what, fault.stack].every((text) => typeof text === 'string')
  )
}

/** The log as a text to pass on: when, where, what; no pots, no glazes. */
export const faultText = (faults: readonly Fault[], phone: string): string =>
  [
    phone,
    ...faults.map(({ at, lastAt, times, where, what, stack }) => {
      const when = [at, ...(times > 1 ? [lastAt] : [])].map((ms) => new Date(ms).toISOString()).join(' to ')
      return `${when}, ${times} x, ${where}\n${what}\n${stack}`
    }),
  ].join('\n\n')
