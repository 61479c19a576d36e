/** The second copy as text: a record a line, in no order; what is no whole line is passed over. */
import { examine } from '../../shared/record.ts'

interface Named {
  readonly id: string
}

/** Records as lines to be added. A tail that was torn off in mid-line is closed first. */
export const linesOf = (records: readonly object[], tornTail: boolean): string =>
  `${tornTail ? '\n' : ''}${records.map((record) => `${JSON.stringify(record)}\n`).join('')}`

/**
 * What the copy has beyond `known`, and which of `known` it lacks. A record that rotted there is lacked, and given only
 * where the copy has it in no better state.
 */
export function compareCopy(
  text: string,
  known: readonly string[],
): { readonly unknown: readonly Named[]; readonly lacking: readonly string[] } {
  const lacking = new Set(known)
  const unknown = new Map<string, Named>()
  const all = new Set(known)
  for (const line of text.split('\n')) {
    const record = recordIn(line)
    if (!record) continue
    const whole = isWhole(record)
    if (whole) lacking.delete(record.id)
    if (!all.has(record.id) && (whole || !unknown.has(record.id))) unknown.set(record.id, record)
  }
  return { unknown: [...unknown.values()], lacking: [...lacking] }
}

/** Of whatever kind; what a newer program wrote is not judged. */
function isWhole(record: Named): boolean {
  const examined = examine(record, () => true)
  return 'record' in examined || examined.fault === 'newer'
}

function recordIn(line: string): Named | undefined {
  if (!line.startsWith('{')) return undefined
  try {
    const value: Partial<Named> = JSON.parse(line)
    return typeof value.id === 'string' ? (value as Named) : undefined
  } catch {
    return undefined
  }
}
