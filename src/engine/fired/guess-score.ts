/**
 * Who told the runs better, the person or the app: both in mm, alike. The absolute error is least in the mean for who says
 * the middle of what they expect (Gneiting, J. Am. Stat. Assoc. 106 (2011) 746), so a middle is asked for and a range is
 * never scored against one.
 */

import { inRange } from '../check.ts'
import { FIRST_MM, type RunSeen } from './run-curve.ts'

/** One pot's guesses, fixed before the lid went up, and what was found. Lengths mm; the shelf is a run of the whole room. */
export interface Guessed {
  readonly roomMm: number
  readonly personMm: number | null
  readonly appMm: number
  /** The app's 10 to 90 % range. */
  readonly lowMm: number
  readonly highMm: number
  readonly found: RunSeen
}

export interface GuessScore {
  /** Pots that both guessed and that were found in mm. */
  readonly both: number
  /** Mean misses over those pots, mm; null without one. */
  readonly personMm: number | null
  readonly appMm: number | null
  readonly nearer: 'person' | 'app' | null
  /** Pots found in mm of which the app's range said something, and those of them that lay in it. */
  readonly told: number
  readonly held: number
  /** The app's ranges hold too few: say so. */
  readonly tooNarrow: boolean
}

/** Fewer say nothing of who is nearer. Our choice. */
const LEAST_POTS = 10
const STANDARD_ERRORS = 2
/** What a range is meant to hold, and how seldom chance alone may come to as few. */
const MEANT = 0.8
const SELDOM = 0.05

/** A run as found, mm on this pot; null for one that was not measured, or not looked at nearer. */
export function foundMm(found: RunSeen, roomMm: number): number | null {
  switch (found.kind) {
    case 'none':
      return 0
    case 'shelf':
      return roomMm
    case 'measured':
      return Math.min(found.mm, roomMm)
    case 'some':
    case 'within':
      return null
  }
}

/** How far a guess was off, mm, both held to the pot's room. */
export function missMm(guessMm: number, foundAtMm: number, roomMm: number): number {
  inRange('roomMm', roomMm, 0, 10_000)
  inRange('guessMm', guessMm, 0, 10_000)
  inRange('foundMm', foundAtMm, 0, 10_000)
  return Math.abs(Math.min(guessMm, roomMm) - Math.min(foundAtMm, roomMm))
}

/** A ruler on a pot tells to this, mm. */
const READ_MM = 0.5

/** Least and most that a run may have been, mm on this pot. */
function between(found: RunSeen, roomMm: number): readonly [number, number] {
  switch (found.kind) {
    case 'none':
      return [0, FIRST_MM]
    case 'within':
      return [0, found.mm]
    case 'some':
      return [FIRST_MM, roomMm]
    case 'shelf':
      return [roomMm, Number.POSITIVE_INFINITY]
    case 'measured': {
      const mm = Math.min(found.mm, roomMm)
      return [mm - READ_MM, mm + READ_MM]
    }
  }
}

/** A range told of a run, and the bare wall down to the shelf, mm. */
export type RangeTold = Pick<Guessed, 'roomMm' | 'lowMm' | 'highMm'>

/**
 * Where a run lies against the range told of it, as finely as it was found. One that nobody measured is held to have been
 * anything from a millimetre on.
 */
export function againstRange(
  { lowMm, highMm, roomMm }: RangeTold,
  found: RunSeen,
): 'within' | 'farther' | 'less' {
  const [least, most] = between(found, roomMm)
  return most < lowMm ? 'less' : least > highMm ? 'farther' : 'within'
}

/** Chance that of `n` that each hold with `part` at most `held` do: the binomial law's lower tail. */
export function chanceOfAtMost(held: number, n: number, part: number): number {
  inRange('n', n, 0, 1e5)
  inRange('held', held, 0, n)
  inRange('part', part, 0, 1)
  let sum = 0
  let lnWays = 0
  for (let k = 0; k <= held; k++) {
    if (k > 0) lnWays += Math.log((n - k + 1) / k)
    sum += Math.exp(lnWays + (k > 0 ? k * Math.log(part) : 0) + (n > k ? (n - k) * Math.log1p(-part) : 0))
  }
  return Math.min(1, sum)
}

/** The score of all pots so far. RangeError for lengths that cannot be. */
export function guessScore(pots: readonly Guessed[]): GuessScore {
  const misses: (readonly [person: number, app: number])[] = []
  let [told, held] = [0, 0]
  for (const pot of pots) {
    const { roomMm, personMm, appMm, lowMm, highMm, found } = pot
    const mm = foundMm(found, roomMm)
    if (mm === null) continue
    const app = missMm(appMm, mm, roomMm)
    // From none to the shelf holds whatever comes.
    if (lowMm > 0 || highMm < roomMm) {
      told++
      if (againstRange(pot, found) === 'within') held++
    }
    if (personMm !== null) misses.push([missMm(personMm, mm, roomMm), app])
  }
  const both = misses.length
  const mean = (of: (miss: readonly [number, number]) => number): number =>
    misses.reduce((sum, miss) => sum + of(miss), 0) / both
  const better = mean(([person, app]) => app - person)
  const square = mean(([person, app]) => (app - person - better) ** 2)
  const error = Math.sqrt(square / (both - 1))
  const apart = both >= LEAST_POTS && Math.abs(better) > STANDARD_ERRORS * error
  return {
    both,
    personMm: both > 0 ? mean(([person]) => person) : null,
    appMm: both > 0 ? mean(([, app]) => app) : null,
    nearer: apart ? (better > 0 ? 'person' : 'app') : null,
    told,
    held,
    tooNarrow: told > 0 && chanceOfAtMost(held, told, MEANT) < SELDOM,
  }
}
