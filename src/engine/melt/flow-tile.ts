/** Flow dose of a glaze from what its test tiles did: dry thickness by the pots' own gauge, and the run in mm. */

import { inRange } from '../check.ts'
import { Z90 } from '../numeric/spread.ts'
import { type DoseBand, MELT_PER_DRY, MOST_DOSE_PER_MM, THICKEST_MM } from './coats.ts'
import type { ConeMake } from './cone-table.ts'
import type { Scale } from './firing.ts'

/** A dipped stripe on an upright tile, mm: dry coat, its length down the tile, travel of its lower edge. */
export interface TileStripe {
  readonly dryMm: number
  readonly bandMm: number
  /** Mean travel of the lower edge. */
  readonly runMm: number
  /** Its longest drip, if one ran ahead. */
  readonly longestMm?: number
}

/** A fired tile with one to three stripes, filed under the witness cone that fell beside it. */
export interface FlowTile {
  readonly cone: string
  readonly make: ConeMake
  readonly stripes: readonly TileStripe[]
}

/** Dose per mm of melt with its 10 to 90 % band, and how far drips run ahead of the mean front. */
export interface FlowDose extends DoseBand {
  readonly lowPerMm: number
  readonly tiles: number
  readonly dripFactor: number
  /** True when the dose was carried over to a firing in which no tile stood: make a new tile. */
  readonly carried: boolean
}

/** A run that can't be told from none, mm (a ruler on a rounded edge). It counts as this much. */
export const LEAST_READ_MM = 0.5
/** Log spread of one tile's dose: a thickness 20 % off is a run 40 % off (ln 1.4). */
const TILE_LN = Math.log(1.4)
/** How many tiles that spread is worth against the tiles' own (assumption). */
const TILE_WEIGHT = 2
/** Thinner dry coats no gauge reads, mm. */
const THINNEST_MM = 0.01
const DRIP = { least: 1.5, usual: 2, most: 5 } as const

function checkedStripe(stripe: TileStripe): TileStripe {
  inRange('dryMm', stripe.dryMm, THINNEST_MM, THICKEST_MM)
  inRange('bandMm', stripe.bandMm, 0.1, 500)
  inRange('runMm', stripe.runMm, 0, 500)
  if (stripe.longestMm !== undefined) inRange('longestMm', stripe.longestMm, stripe.runMm, 1000)
  return stripe
}

/**
 * Dose, per mm of melt, that makes a band of `bandMm` run `runMm` down an upright tile: R/h^2 until the draining from
 * the top edge catches the front at R = L/2, then Huppert's law (Nature 300, 427, 1982), 4 ((L + R)/3)^3/(L h)^2.
 * A run under 0.5 mm counts as 0.5. RangeError for thickness, band or run out of range.
 */
export function doseOfStripe(stripe: TileStripe): number {
  const { dryMm, bandMm, runMm } = checkedStripe(stripe)
  const meltMm = dryMm * MELT_PER_DRY
  const run = Math.max(runMm, LEAST_READ_MM)
  if (run <= bandMm / 2) return run / meltMm ** 2
  return (4 * ((bandMm + run) / 3) ** 3) / (bandMm * meltMm) ** 2
}

/** The way back: how far, mm, a band of this dry thickness and length runs down an upright tile at a dose. */
export function runOfStripe(dosePerMm: number, dryMm: number, bandMm: number): number {
  inRange('dosePerMm', dosePerMm, 0, MOST_DOSE_PER_MM)
  checkedStripe({ dryMm, bandMm, runMm: 0 })
  const meltMm = dryMm * MELT_PER_DRY
  const free = dosePerMm * meltMm ** 2
  if (free <= bandMm / 2) return free
  return 3 * (((bandMm * meltMm) ** 2 * dosePerMm) / 4) ** (1 / 3) - bandMm
}

/** Dose of a tile: least squares over its stripes, thick ones counting as h^4 (sum R h^2 over sum h^4). */
export function doseOfTile(stripes: readonly TileStripe[]): number {
  inRange('stripes.length', stripes.length, 1, 3)
  const weights = stripes.map((stripe) => checkedStripe(stripe).dryMm ** 4)
  const total = weights.reduce((sum, w) => sum + w, 0)
  return stripes.reduce((sum, stripe, i) => sum + (weights[i]! * doseOfStripe(stripe)) / total, 0)
}

const capped = (dosePerMm: number): number => Math.min(MOST_DOSE_PER_MM, dosePerMm)

/** Longest drip over mean run, as far as it counts; a front too short to read is taken as one that can be. */
export const dripOver = (runMm: number, longestMm: number): number =>
  Math.min(DRIP.most, Math.max(DRIP.least, longestMm / Math.max(runMm, LEAST_READ_MM)))

/** Longest drip over mean run, the worst stripe that ran: at least 1.5; 2 where no drip was measured. */
function dripOf(tiles: readonly FlowTile[]): number {
  const drips = tiles.flatMap(({ stripes }) =>
    stripes.flatMap(({ runMm, longestMm }) =>
      longestMm !== undefined && runMm >= LEAST_READ_MM ? [dripOver(runMm, longestMm)] : [],
    ),
  )
  return drips.length === 0 ? DRIP.usual : Math.max(...drips)
}

/**
 * One dose from all tiles of a glaze under one witness cone: geometric mean; the band is for the next pot, from the
 * tiles' own spread and that of reading one. RangeError without tiles or when cones or makes are mixed.
 */
export function doseOfTiles(tiles: readonly FlowTile[]): FlowDose {
  inRange('tiles.length', tiles.length, 1, 1000)
  for (const [i, { cone, make }] of tiles.entries())
    if (cone !== tiles[0]!.cone || make !== tiles[0]!.make)
      throw new RangeError(`tiles[${i}].cone is ${make} ${cone}: must be ${tiles[0]!.make} ${tiles[0]!.cone}`)
  const logs = tiles.map(({ stripes }) => Math.log(doseOfTile(stripes)))
  const mean = logs.reduce((sum, x) => sum + x, 0) / logs.length
  const squares = logs.reduce((sum, x) => sum + (x - mean) ** 2, 0)
  const variance = (TILE_WEIGHT * TILE_LN ** 2 + squares) / (TILE_WEIGHT + logs.length - 1)
  const edge = Z90 * Math.sqrt(variance * (1 + 1 / logs.length))
  return {
    likelyPerMm: capped(Math.exp(mean)),
    lowPerMm: capped(Math.exp(mean - edge)),
    highPerMm: capped(Math.exp(mean + edge)),
    tiles: tiles.length,
    dripFactor: dripOf(tiles),
    carried: false,
  }
}

/** Firings further apart count as this far: of whatever was tested, all runs off. */
export const MOST_SCALE = 1e6

/** The dose carried over to another firing by `doseScale`: the band widens and a new tile is due. */
export function carriedDose(dose: FlowDose, scale: Scale): FlowDose {
  inRange('scale.low', scale.low, Number.MIN_VALUE, MOST_SCALE)
  inRange('scale.likely', scale.likely, scale.low, MOST_SCALE)
  inRange('scale.high', scale.high, scale.likely, MOST_SCALE)
  return {
    ...dose,
    likelyPerMm: capped(dose.likelyPerMm * scale.likely),
    lowPerMm: capped(dose.lowPerMm * scale.low),
    highPerMm: capped(dose.highPerMm * scale.high),
    carried: true,
  }
}
