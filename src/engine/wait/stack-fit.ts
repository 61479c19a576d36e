/** The stack that fits this wall: before the first dip, seconds that keep the wall from filling. */

import type { Cover, Dip, WallEvent } from '../contract.ts'
import { courseOf, runPot } from '../wall/pot.ts'
import { waitsOf, zonesOf } from './forecast.ts'
import { type PotHistory, SHORTEST_S } from './seconds.ts'

export interface StackFit {
  /** Does the stack as planned leave the wall able to drink its last coat? */
  readonly fits: boolean
  /** The coat at which the wall fills, from 0; undefined if it fits. */
  readonly fullAtCoat: number | undefined
  /** Seconds that fit, coat by coat, all shortened alike; the planned ones if they fit, undefined if none do. */
  readonly seconds: readonly number[] | undefined
  /** Inside now and outside a day later: the seconds that fit then, the planned ones if they do; undefined if none do. */
  readonly split: Split | undefined
}

/** Seconds of the pours, one for each full dip, and of all coats the day after. */
export interface Split {
  readonly insideS: readonly number[]
  readonly outsideS: readonly number[]
}

/** Filled more than this, a wall only drains what comes next. Tuned: there a coat waits for the air. */
const FULL = 0.92
/** Told to half a second. */
const HALF_S = 2
const DAY_MIN = 24 * 60
/** Parts of the planned seconds tried: none, then by halving to a sixteenth. */
const TRIES = 5
/** A coat that the wall can't dry is taken as dipped again after this, minutes. */
const PATIENCE_MIN = 120

interface Laid {
  readonly events: readonly WallEvent[]
  readonly fullAtCoat: number | undefined
}

/** Lays the dips one after another, each when the one below is touch-dry; stops at the coat that fills the wall. */
function lay(standing: PotHistory, dips: readonly Dip[], startMin: number): Laid {
  let events: readonly WallEvent[] = standing.events
  let atMin = startMin
  for (const [k, dip] of dips.entries()) {
    events = [...events, { ...dip, atMin }]
    const run = runPot(courseOf(standing.pot, events, standing.air0), 1)
    const full = zonesOf(run).some(
      (zone) => zone.coats.some(({ dipId }) => dipId === dip.id) && zone.filled > FULL,
    )
    if (full) return { events, fullAtCoat: k }
    if (k + 1 < dips.length) atMin += Math.min(PATIENCE_MIN, waitsOf(run, 'touch').touchMin)
  }
  return { events, fullAtCoat: undefined }
}

const shortened = (dips: readonly Dip[], part: number): Dip[] =>
  dips.map((dip) => ({
    ...dip,
    holdS: Math.min(dip.holdS, Math.max(SHORTEST_S, Math.floor(dip.holdS * part * HALF_S) / HALF_S)),
  }))

/** The most of the planned seconds, all shortened alike, with which the dips can be laid; undefined when none do. */
function mostThatFits(dips: readonly Dip[], fits: (tried: readonly Dip[]) => boolean): number[] | undefined {
  if (fits(dips)) return dips.map(({ holdS }) => holdS)
  let seconds: number[] | undefined
  let [low, high] = [0, 1]
  for (let k = 0; k < TRIES; k++) {
    const part = k === 0 ? 0 : (low + high) / 2
    const tried = shortened(dips, part)
    if (fits(tried)) {
      seconds = tried.map(({ holdS }) => holdS)
      low = part
    } else if (k === 0) break
    else high = part
  }
  return seconds
}

/** Inside first, outside the day after: each full dip is split into a pour and an outside dip. */
function splitOf(standing: PotHistory, dips: readonly Dip[]): Split | undefined {
  const { heightMm } = standing.pot.profile.shape
  const as = (dip: Dip, cover: Cover): Dip => ({ ...dip, id: `${dip.id}-${cover.kind}`, cover })
  const pours = dips.filter(({ cover }) => cover.kind === 'full').map((dip) => as(dip, { kind: 'inside' }))
  if (pours.length === 0) return undefined
  const outside = dips.map((dip) =>
    dip.cover.kind === 'full' ? as(dip, { kind: 'upTo', edgeUpMm: heightMm }) : dip,
  )
  const startMin = dips[0]!.atMin
  const insideS = mostThatFits(pours, (tried) => lay(standing, tried, startMin).fullAtCoat === undefined)
  if (!insideS) return undefined
  const poured = pours.map((dip, k) => ({ ...dip, holdS: insideS[k]! }))
  const tonight = { ...standing, events: lay(standing, poured, startMin).events }
  const outsideS = mostThatFits(
    outside,
    (tried) => lay(tonight, tried, startMin + DAY_MIN).fullAtCoat === undefined,
  )
  return outsideS && { insideS, outsideS }
}

/**
 * `dips` in order, the first at its own moment, each later one when the coat below is touch-dry (their own moments are
 * ignored). Shortest seconds tried are half a second.
 */
export function stackThatFits(standing: PotHistory, dips: readonly Dip[]): StackFit {
  const first = dips[0]
  if (!first) return { fits: true, fullAtCoat: undefined, seconds: [], split: undefined }
  const { fullAtCoat } = lay(standing, dips, first.atMin)
  if (fullAtCoat === undefined)
    return { fits: true, fullAtCoat, seconds: dips.map(({ holdS }) => holdS), split: undefined }
  const seconds = mostThatFits(dips, (tried) => lay(standing, tried, first.atMin).fullAtCoat === undefined)
  return { fits: false, fullAtCoat, seconds, split: splitOf(standing, dips) }
}
