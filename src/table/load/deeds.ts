import type { Deed, LoadState } from '../model/load-state.ts'
import type { Table } from '../model/state.ts'

/** Deeds that can be said not to have been, the latest first: those on which nothing rests but what goes with them. */
export function deedsBack(table: Table, load: LoadState): readonly Deed['kind'][] {
  const last = load.deeds?.at(-1)?.kind
  switch (last) {
    case undefined:
      return []
    case 'kiln-lit':
      return [load.readings, load.glass, load.cones].some(({ length }) => length > 0) ? [] : [last]
    case 'lid-opened':
      return isUnloaded(table, load) ? [] : [last]
    case 'bung-pulled':
      return load.offAt === undefined ? [last] : [last, 'kiln-off']
    default:
      return [last]
  }
}

/** Somebody has had pots of it in hand since the lid is up. */
const isUnloaded = (table: Table, { things, matched }: LoadState): boolean =>
  matched !== undefined ||
  Object.keys(things).some((key) => table.pots[key]?.fired?.some(({ event }) => event.kind !== 'guessed'))

/** The hits by which a deed and all after it were said: of shelves the last alone. */
export function hitsOf({ deeds = [] }: LoadState, kind: Deed['kind']): readonly string[] {
  const kinds = deeds.map((deed) => deed.kind)
  const from = kind === 'shelf-loaded' ? kinds.lastIndexOf(kind) : kinds.indexOf(kind)
  return from < 0 ? [] : [...new Set(deeds.slice(from).map(({ hit }) => hit))]
}
