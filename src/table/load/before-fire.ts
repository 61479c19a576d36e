import { forecastOf } from '../forecast/forecast.ts'
import type { LoadState } from '../model/load-state.ts'
import { otherPiece } from '../model/pieces.ts'
import { lastDip } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { candled, isWarm, loadsOf, potsIn } from './loads.ts'
import { lightingAt } from './to-load.ts'

/** A fire with its cooling takes no longer; a kiln nobody wrote off by then is cold. */
const FIRE_MS = 96 * 3_600_000

/** Pots of a load, and lids on them, that are not dry at `at`, table time, ms. None of a load that is candled first. */
export function wetAt(table: Table, load: LoadState, at: number): readonly PotState[] {
  if (candled(table, load)) return []
  const all = new Set(potsIn(table, load).flatMap((pot) => [pot, otherPiece(table, pot.facts) ?? pot]))
  return [...all].filter((pot) => {
    const dry = lastDip(pot) && forecastOf(table, pot)?.kiln.likely
    return dry !== undefined && dry > at
  })
}

/** Another load that is still hot in the kiln of this one, or of one that is to be begun. `now`: table time, ms. */
export const hotInKiln = (
  table: Table,
  load: { readonly loadId: string | undefined; readonly kiln: Pick<LoadState['kiln'], 'kilnId'> },
  now: number,
): LoadState | undefined =>
  loadsOf(table).find(
    (other) =>
      other.loadId !== load.loadId &&
      other.kiln.kilnId === load.kiln.kilnId &&
      now - (other.litAt ?? now) < FIRE_MS &&
      isWarm(other, now),
  )

/** What has to be asked before a load is shut in, or lit: its pots must be dry when the kiln goes on. */
export function inTheWay(
  table: Table,
  load: LoadState,
  now: number,
): { readonly wet: readonly PotState[]; readonly hot?: LoadState } {
  const hot = hotInKiln(table, load, now)
  return {
    wet: wetAt(table, load, load.shutAt === undefined ? lightingAt(table, now) : now),
    ...(hot ? { hot } : {}),
  }
}
