/** States visited at most; beyond it sequences are left out (the answer stays a lower bound). */
const MOST_STATES = 20_000

/** Neighbouring equal entries made one: the bucket simply stays open. */
const collapse = (sequence: readonly number[]): number[] =>
  sequence.filter((each, k) => k === 0 || sequence[k - 1] !== each)

function within(short: readonly number[], long: readonly number[]): boolean {
  let k = 0
  for (const each of long) if (each === short[k]) k++
  return k === short.length
}

/** Distinct sequences that are not contained in another, longest first. */
function distinct(sequences: readonly (readonly number[])[]): number[][] {
  const byKey = new Map(sequences.map((each) => [collapse(each).join(), collapse(each)]))
  const all = [...byKey.values()].sort((a, b) => b.length - a.length)
  return all.filter((each, k) => !all.some((other, j) => j < k && within(each, other)))
}

/**
 * A shortest common supersequence: the fewest bucket visits that serve every stack, by breadth first over how
 * far each stack has come. `first`: bucket that is open already, its first visit is free (-1 for none).
 * Exact when `exact`; otherwise of as many stacks as fit, which bounds the visits from below.
 */
export function supersequence(
  sequences: readonly (readonly number[])[],
  first: number,
): { readonly visits: number[]; readonly exact: boolean } {
  const all = distinct(sequences)
  const used: number[][] = []
  let size = 1
  for (const each of all) {
    if (size * (each.length + 1) > MOST_STATES) continue
    size *= each.length + 1
    used.push(each)
  }
  const advance = (state: readonly number[], bucket: number) =>
    state.map((at, k) => (used[k]![at] === bucket ? at + 1 : at))
  const begin = used.map(() => 0)
  const opened = first < 0 ? begin : advance(begin, first)
  const from = new Map<
    string,
    { readonly state: number[]; readonly before: string | null; readonly bucket: number }
  >()
  from.set(opened.join(), { state: opened, before: null, bucket: first })
  const goal = used.map((each) => each.length).join()
  const line = [opened.join()]
  for (let k = 0; k < line.length && !from.has(goal); k++) {
    const key = line[k]!
    const { state } = from.get(key)!
    for (const bucket of new Set(state.flatMap((at, j) => used[j]![at] ?? []))) {
      const next = advance(state, bucket)
      const nextKey = next.join()
      if (from.has(nextKey)) continue
      from.set(nextKey, { state: next, before: key, bucket })
      line.push(nextKey)
    }
  }
  const visits: number[] = []
  for (let key: string | null = goal; key !== null; key = from.get(key)!.before) {
    const { bucket, before } = from.get(key)!
    if (before !== null) visits.unshift(bucket)
  }
  return { visits, exact: used.length === all.length }
}
