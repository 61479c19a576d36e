/**
 * Whose tile rides next: the value of information of a flow tile, in pots put on a slab for nothing (H. Raiffa and R.
 * Schlaifer, Applied Statistical Decision Theory, 1961). Without it a pot goes bare or on a slab by what is known; with it,
 * by what the tile shows.
 */

import { between, inRange } from '../check.ts'
import { normalCdf, normalPdf } from '../numeric/spread.ts'

/** A subject that a tile could be made of. */
export interface TileAsked {
  readonly subject: string
  /** ln of its flow dose, per mm: mean and sd as known. */
  readonly lnMean: number
  readonly lnSd: number
  /** Nothing clears it yet: without a tile all its pots stand on slabs. */
  readonly unclear?: boolean
  /** Firings to come in which it is planned. */
  readonly firings: number
  /** Of each pot planned with it: ln dose at which the pot reaches the shelf; Infinity for none. */
  readonly shelfLn: readonly number[]
}

/** What a pot on the shelf costs, and a slab or a thinner coat for nothing. */
export interface Losses {
  readonly shelf: number
  readonly slab: number
}

export interface TileValue {
  readonly subject: string
  /** Loss that the tile saves, in the unit of `Losses`. */
  readonly value: number
  /** Pots of a firing whose way into the kiln it may change. */
  readonly decides: number
}

/** Our choice; a room may set its own. */
export const LOSSES: Losses = { shelf: 10, slab: 1 }
/** A tile tells ln dose to this, and a pot differs from its glaze by as much: sd. Assumption. */
const TILE_SD = 0.4
/** A tile worth less is not asked for. Our choice. */
const LEAST_VALUE = 0.2
/** A tile decides a pot where it changes what is done with it at least so often. Our choice. */
const DECIDES = 0.1
const NODES = 401
const REACH_SDS = 5

const bareLoss = (losses: Losses, mean: number, sd: number, shelfLn: number): number =>
  losses.shelf * (1 - normalCdf((shelfLn - mean) / Math.hypot(sd, TILE_SD)))

function worthOfTile(
  { subject, lnMean, lnSd, unclear, firings, shelfLn }: TileAsked,
  losses: Losses,
): TileValue {
  between(`${subject}.lnMean`, lnMean, -20, 20)
  between(`${subject}.lnSd`, lnSd, 0, 10)
  inRange(`${subject}.firings`, firings, 0, 1000)
  const after = (lnSd * TILE_SD) / Math.hypot(lnSd, TILE_SD)
  const moves = Math.sqrt(lnSd ** 2 - after ** 2)
  let [saved, decides] = [0, 0]
  for (const shelf of shelfLn) {
    if (!(shelf > Number.NEGATIVE_INFINITY))
      throw new RangeError(`${subject}.shelfLn is ${shelf}: must be a number`)
    const bare = unclear ? Number.POSITIVE_INFINITY : bareLoss(losses, lnMean, lnSd, shelf)
    let [then, changed, sum] = [0, 0, 0]
    for (let k = 0; k < NODES; k++) {
      const z = REACH_SDS * ((2 * k) / (NODES - 1) - 1)
      const weight = normalPdf(z)
      const seen = bareLoss(losses, lnMean + moves * z, after, shelf)
      sum += weight
      then += weight * Math.min(losses.slab, seen)
      if (seen > losses.slab !== bare > losses.slab) changed += weight
    }
    saved += Math.min(losses.slab, bare) - then / sum
    if (changed / sum >= DECIDES) decides++
  }
  return { subject, value: Math.max(0, firings * saved), decides }
}

/**
 * Tiles worth their place, the most first; none that saves less than 0.2. RangeError for a spread, a dose or a count that
 * cannot be.
 */
export function tileValues(asked: readonly TileAsked[], losses: Losses = LOSSES): readonly TileValue[] {
  inRange('losses.slab', losses.slab, 0, 1e6)
  inRange('losses.shelf', losses.shelf, losses.slab, 1e6)
  return asked
    .map((one) => worthOfTile(one, losses))
    .filter(({ value }) => value >= LEAST_VALUE)
    .sort((a, b) => b.value - a.value || (a.subject < b.subject ? -1 : 1))
}

/** What is known of a glaze no tile was made of, ln dose: the studio's own tested ones', wide. Assumptions. */
export function untestedGlaze(testedPerMm: readonly number[]): {
  readonly mean: number
  readonly sd: number
} {
  const logs = testedPerMm.map((dose, i) => Math.log(between(`testedPerMm[${i}]`, dose, 0, 1e6)))
  const mean = logs.length === 0 ? Math.log(20) : logs.reduce((sum, ln) => sum + ln, 0) / logs.length
  return { mean, sd: 1 }
}

/** Of a pair that was never fired: a little under the larger of the two, ln over that one's dose. Assumptions. */
export const UNTRIED_PAIR = { mean: -0.25, sd: 0.6 } as const
