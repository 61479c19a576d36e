/** With all coats on: what would have the pots dry for the kiln sooner, and by how much. */

import { type BandMs, forecastOf } from '../forecast/forecast.ts'
import { potsOnTable } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { loadAt } from '../order/load-at.ts'
import { dryingVariants, type Variant } from '../order/schedule-options.ts'
import type { PotDry } from './card.ts'
import { potsThatDry } from './end-card.ts'

/** A help that gains less is not worth the walk, ms. Our choice. */
const WORTH_MS = 10 * 60_000

/** One thing that would help. Times are table time, ms. */
export interface DrySooner extends Pick<Variant, 'cut' | 'action'> {
  /** When the last pot would be dry. */
  readonly last: Pick<BandMs, 'likely' | 'upper'>
  /** How much sooner that is likely to be; `Infinity` where it would never be otherwise. */
  readonly gainMs: number
}

/** When the last of these pots is dry; undefined for none. */
export const lastOf = (dry: readonly PotDry[]): DrySooner['last'] | undefined =>
  dry.length === 0
    ? undefined
    : {
        likely: Math.max(...dry.map((pot) => pot.dry.likely)),
        upper: Math.max(...dry.map((pot) => pot.dry.upper)),
      }

/** How late for the kiln the last of these pots is likely to be, ms, negative where it is early; undefined without an hour. */
export function lateBy(table: Table, dry: readonly PotDry[], now: number): number | undefined {
  const at = loadAt(table, now)
  const last = lastOf(dry)
  return at === undefined || !last ? undefined : last.likely - at
}

/** Finds what would help, the cheapest first, a pot a step: others may have the thread in between. */
export function* soonerSteps(table: Table, now: number): Generator<void, readonly DrySooner[]> {
  const found: DrySooner[] = []
  const before = lastOf(potsThatDry(table))
  if (!before || before.likely <= now) return found
  for (const { cut, action, table: changed } of dryingVariants(table, now)) {
    // A forecast is kept by its pot: these have their own, and leave those of the table alone.
    const pots = Object.fromEntries(Object.entries(changed.pots).map(([potId, pot]) => [potId, { ...pot }]))
    const then: Table = { ...changed, pots }
    for (const pot of potsOnTable(then)) {
      forecastOf(then, pot)
      yield
    }
    const last = lastOf(potsThatDry(then))
    if (!last) continue
    const gainMs = before.likely - Math.max(now, last.likely)
    if (gainMs >= WORTH_MS) found.push({ cut, action, last, gainMs })
  }
  return found
}
