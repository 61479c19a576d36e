/** The stack that fits this wall: before the first dip, seconds that keep the wall from filling. */

import type { Cover, Dip, WallEvent } from './contract.ts'
import { waitsOf } from './forecast.ts'
import { courseOf, runPot } from './pot.ts'
import { SHORTEST_S, type Standing, zonesAfter } from './seconds.ts'

export interface StackFit {
  /** Does the stack as planned leave the wall able to drink its last coat? */
  readonly fits: boolean
  /** The coat at which the wall fills, from 0; undefined if it fits. */
  readonly fullAtCoat: number | undefined
  /** Seconds that fit, coat by coat, all shortened alike; the planned ones if they fit, undefined if none do. */
  readonly seconds: readonly number[] | undefined
  /** Does it fit as planned if the inside is glazed now and the outside a day later? Undefined if nothing to split. */
  readonly splitFits: boolean | undefined
}

/** Filled more than this, a wall only drains what comes next. Tuned: there a coat waits for the air. */
const FULL = 0.92
/** Told to half a second. */
const HALF_S = 2
const DAY_MIN = 24 * 60
/** A coat that the wall can't dry is taken as dipped again after this, minutes. */
const PATIENCE_MIN = 120

interface Laid {
  readonly events: readonly WallEvent[]
  readonly fullAtCoat: number | undefined
}

/** Lays the dips one after another, each when the one below is touch-dry; stops at the coat that fills the wall. */
function lay(standing: Standing, dips: readonly Dip[], startMin: number): Laid {
  let events: readonly WallEvent[] = standing.events
  let atMin = startMin
  for (const [k, dip] of dips.entries()) {
    events = [...events, { ...dip, atMin }]
    const full = zonesAfter({ ...standing, events }).some(
      (zone) => zone.coats.some(({ dipId }) => dipId === dip.id) && zone.filled > FULL,
    )
    if (full) return { events, fullAtCoat: k }
    const { touchMin } = waitsOf(runPot(courseOf(standing.pot, events, standing.air0), 1), 'touch')
    atMin += Math.min(PATIENCE_MIN, touchMin)
  }
  return { events, fullAtCoat: undefined }
}

const shortened = (dips: readonly Dip[], part: number): Dip[] =>
  dips.map((dip) => ({
    ...dip,
    holdS: Math.min(dip.holdS, Math.max(SHORTEST_S, Math.floor(dip.holdS * part * HALF_S) / HALF_S)),
  }))

/** Inside first, outside the day after: a full dip is split into a pour and an outside dip. */
function splitFits(standing: Standing, dips: readonly Dip[]): boolean | undefined {
  const { heightMm } = standing.pot.profile.shape
  if (!dips.some(({ cover }) => cover.kind === 'full')) return undefined
  const as = (dip: Dip, cover: Cover): Dip => ({ ...dip, id: `${dip.id}-${cover.kind}`, cover })
  const inside = dips.filter(({ cover }) => cover.kind === 'full').map((dip) => as(dip, { kind: 'inside' }))
  const outside = dips.map((dip) =>
    dip.cover.kind === 'full' ? as(dip, { kind: 'upTo', edgeUpMm: heightMm }) : dip,
  )
  const startMin = dips[0]!.atMin
  const tonight = lay(standing, inside, startMin)
  if (tonight.fullAtCoat !== undefined) return false
  return lay({ ...standing, events: tonight.events }, outside, startMin + DAY_MIN).fullAtCoat === undefined
}

/**
 * `dips` in order, the first at its own moment, each later one when the coat below is touch-dry (their own moments are
 * ignored). Shortest seconds tried are half a second.
 */
export function stackThatFits(standing: Standing, dips: readonly Dip[]): StackFit {
  const first = dips[0]
  if (!first) return { fits: true, fullAtCoat: undefined, seconds: [], splitFits: undefined }
  const { fullAtCoat } = lay(standing, dips, first.atMin)
  if (fullAtCoat === undefined)
    return { fits: true, fullAtCoat, seconds: dips.map(({ holdS }) => holdS), splitFits: undefined }
  let seconds: readonly number[] | undefined
  let [low, high] = [0, 1]
  for (let k = 0; k < 7; k++) {
    const part = k === 0 ? 0 : (low + high) / 2
    const tried = shortened(dips, part)
    const fits = lay(standing, tried, first.atMin).fullAtCoat === undefined
    if (fits) {
      seconds = tried.map(({ holdS }) => holdS)
      low = part
    } else if (k === 0) break
    else high = part
  }
  return { fits: false, fullAtCoat, seconds, splitFits: splitFits(standing, dips) }
}
