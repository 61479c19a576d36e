import { chance } from './generate.ts'

/** How hands at the table are: every step later by up to `laterS`, and a part of the steps ten minutes later. */
export interface PaceProfile {
  readonly name: 'quick' | 'none' | 'brisk' | 'normal' | 'slow'
  readonly laterS: number
  readonly pauses: number
  /** What they take at least, s: bare work, or less. */
  readonly bareS: BareWork
}

/** Seconds of a set-up, a stir, a wax or a wipe, and from the end of a drip until the pot is set down. */
export interface BareWork {
  readonly open: number
  readonly restir: number
  readonly prep: number
  readonly foot: number
}

const BARE_S: BareWork = { open: 180, restir: 60, prep: 60, foot: 30 }

export const PACES: readonly PaceProfile[] = [
  // Every hit comes 20 to 45 s after the hands are free.
  { name: 'quick', laterS: 25, pauses: 0, bareS: { open: 20, restir: 20, prep: 20, foot: 20 } },
  { name: 'none', laterS: 0, pauses: 0, bareS: BARE_S },
  { name: 'brisk', laterS: 20, pauses: 0.01, bareS: BARE_S },
  { name: 'normal', laterS: 60, pauses: 0.03, bareS: BARE_S },
  { name: 'slow', laterS: 180, pauses: 0.03, bareS: BARE_S },
]

export const PAUSE_S = 600

/** Whole number below 2^32 of some text: the same step of the same sitting draws the same chance, whatever the order. */
function hash(text: string): number {
  let h = 2166136261
  for (let k = 0; k < text.length; k++) h = Math.imul(h ^ text.charCodeAt(k), 16777619)
  return h >>> 0
}

/** In [0, 1), of a sitting's seed and what it is for. */
export const luck = (seed: number, what: string): number => {
  const next = chance((hash(what) ^ Math.imul(seed, 2654435761)) >>> 0)
  next()
  return next()
}

/** A draw of the normal law by its two uniform draws (G. Box, M. Muller, Ann. Math. Stat. 29 (1958) 610). */
export const normal = (seed: number, what: string): number =>
  Math.sqrt(-2 * Math.log(1 - luck(seed, `${what} a`))) * Math.cos(2 * Math.PI * luck(seed, `${what} b`))

/** How much later than a machine these hands do a step, ms: odd milliseconds included. */
export function laterMs(seed: number, pace: PaceProfile, what: string): number {
  const pause = luck(seed, `${what} pause`) < pace.pauses ? PAUSE_S : 0
  return Math.round((luck(seed, `${what} later`) * pace.laterS + pause) * 1000)
}
