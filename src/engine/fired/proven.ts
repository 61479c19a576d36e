/** What results are allowed to say: when *clear* has grounds, what proves a pair, what shows at once and what waits. */

import { between } from '../check.ts'
import type { RunSeen } from './run-curve.ts'

/** A result of a subject as evidence. */
export interface Evidence {
  readonly firing: string
  readonly seen: RunSeen
  /** ln k at which this pot would have run so far that it was seen. */
  readonly firstLn: number
}

/** Firings that have to agree before anything is called proved or clear. */
export const LEAST_FIRINGS = 2
/** A pot that did not run says something while it could have: where that is seen lies this near to the factor, ln. */
const NEAR_LN = 1

/**
 * Whether a subject without a flow tile may be called clear: results of two firings, each of a pot whose run was measured,
 * or that could have run by what is known now (`lnMean`) and did not. RangeError for a mean that is no number.
 */
export function mayBeClear(ownTile: boolean, results: readonly Evidence[], lnMean: number): boolean {
  between('lnMean', lnMean, -20, 20)
  if (ownTile) return true
  const telling = results.filter(
    ({ seen, firstLn }) =>
      seen.kind === 'measured' ||
      ((seen.kind === 'none' || seen.kind === 'within') && Math.abs(firstLn - lnMean) <= NEAR_LN),
  )
  return new Set(telling.map(({ firing }) => firing)).size >= LEAST_FIRINGS
}

/** A fired pot that carries a pair outside. */
export interface PairFired {
  readonly id: string
  readonly firing: string
  /** Its melt passed the foot line, or reached the shelf. */
  readonly pastFoot: boolean
  readonly stuck: boolean
  /** Something else was wrong with it. */
  readonly faulty: boolean
  readonly crawled: boolean
  /** Fired more than a cone below its plan, or nobody knows what it was fired to. */
  readonly short: boolean
  /** The run was another subject's by its curve. */
  readonly others: boolean
}

export interface PairShown {
  readonly is: 'proved' | 'went-wrong' | 'untried'
  /** Results that speak for it and against it. */
  readonly good: readonly string[]
  readonly bad: readonly string[]
  /** Firings that the good ones come from. */
  readonly firings: number
}

/**
 * What firings have shown of a pair. One pot past its foot line or stuck goes against it, whatever else came out well; so
 * do those that crawled once they are more than the good ones. It takes good pots of two firings to prove it. A pot that was fired too cool proves nothing.
 */
export function pairShown(pots: readonly PairFired[]): PairShown {
  const good = pots.filter(
    ({ pastFoot, stuck, faulty, crawled, short }) => !(pastFoot || stuck || faulty || crawled || short),
  )
  const crawls = pots.filter(({ crawled }) => crawled).length > good.length
  const bad = pots.filter(
    ({ pastFoot, stuck, others, crawled }) => ((pastFoot || stuck) && !others) || (crawled && crawls),
  )
  const firings = new Set(good.map(({ firing }) => firing)).size
  return {
    is: bad.length > 0 ? 'went-wrong' : firings >= LEAST_FIRINGS ? 'proved' : 'untried',
    good: good.map(({ id }) => id).sort(),
    bad: bad.map(({ id }) => id).sort(),
    firings,
  }
}

/**
 * What a lesson has to differ by, ln: a fifth, or, where what is reckoned with lies outside its range, a twentieth. One pot
 * that ran a little moves a factor by less, and back with the next. Our choice.
 */
const MOVES_LN = Math.log(1.2)
const LEAVES_LN = Math.log(1.05)

/** A danger is shown at once, until it is answered; relief waits for a hand. All are ln factors, of the range 10 and 90 %. */
export function leadsTo(
  lnUsed: number,
  learned: { readonly low: number; readonly likely: number; readonly high: number },
): 'danger' | 'relief' | 'same' {
  between('lnUsed', lnUsed, -20, 20)
  between('likely', learned.likely, -20, 20)
  const by = learned.likely - lnUsed
  const least = lnUsed < learned.low || lnUsed > learned.high ? LEAVES_LN : MOVES_LN
  return by >= least ? 'danger' : by <= -least ? 'relief' : 'same'
}
