/** The second copy as text: a record a line, in no order; what is no whole line is passed over. */

interface Named {
  readonly id: string
}

/** Records as lines to be added. A tail that was torn off in mid-line is closed first. */
export const linesOf = (records: readonly object[], tornTail: boolean): string =>
  `${tornTail ? '\n' : ''}${records.map((record) => `${JSON.stringify(record)}\n`).join('')}`

/** What the copy has beyond `known`, and which of `known` it lacks. */
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
    lacking.delete(record.id)
    if (!all.has(record.id)) unknown.set(record.id, record)
  }
  return { unknown: [...unknown.values()], lacking: [...lacking] }
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
