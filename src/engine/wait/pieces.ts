/** Jar and lid: two pieces of one pot, each with its own coats and waits, fired together. */

import type { Band, PotForecast } from '../contract.ts'
import { forecastPot } from './forecast.ts'
import type { Learned } from './learned.ts'
import type { PotHistory } from './seconds.ts'

export interface PieceOfPot extends PotHistory {
  readonly name: string
}

export interface PiecesForecast {
  readonly pieces: readonly { readonly name: string; readonly forecast: PotForecast }[]
  /** When both can go into the kiln. */
  readonly kilnDry: Band
  /** The piece that is kiln-dry last. */
  readonly last: string
}

/** The later of some bands, edge by edge. RangeError for none at all. */
export function latestOf(bands: readonly Band[]): Band {
  if (bands.length === 0) throw new RangeError('pieces is empty: must hold at least one piece')
  const latest = (edge: keyof Band): number => Math.max(...bands.map((band) => band[edge]))
  return { early: latest('early'), likely: latest('likely'), late: latest('late') }
}

/**
 * Each piece as a pot of its own (a jar's gallery is `Shape.galleryMm`), and the later of their kiln-dry bands, edge
 * by edge, on one clock. RangeError for no piece at all.
 */
export function forecastPieces(pieces: readonly PieceOfPot[], learned: Learned): PiecesForecast {
  const all = pieces.map(({ name, pot, events, air0 }) => ({
    name,
    forecast: forecastPot(pot, events, air0, learned),
  }))
  const kilnDry = latestOf(all.map(({ forecast }) => forecast.kilnDry))
  const slowest = all.reduce((a, b) => (b.forecast.kilnDry.likely > a.forecast.kilnDry.likely ? b : a))
  return { pieces: all, kilnDry, last: slowest.name }
}
