/**
 * Which pot is this, after the fire: by its shelf place, the stack that is seen, and its size after shrinking, each pot once.
 * Assignments are drawn by exchanges (N. Metropolis et al., J. Chem. Phys. 21 (1953) 1087), with one shrinkage for the load.
 */
import { inRange } from '../check.ts'
import { randomFrom } from '../numeric/random.ts'
import { SURE } from './sure.ts'

/** A pot as it went in. */
export interface MatchPot {
  readonly id: string
  readonly heightMm: number
  /** Its widest, across. */
  readonly widthMm: number
  readonly stackId: string
  /** Shelf place it was told with; null where none was. */
  readonly place: string | null
  /** A piece before was told to be it, though not surely: it may be this one all the same, and is not offered. */
  readonly taken?: true
}

/** A piece as it comes out: what was seen of it, null where nobody looked. */
export interface FoundPiece {
  readonly id: string
  readonly heightMm: number | null
  readonly widthMm: number | null
  readonly stackId: string | null
  /** Its place, as `2.4`, or only its level, as `2`. */
  readonly place: string | null
  /** What it was told to be before, how surely, and which others it may be: says all there is of it. */
  readonly told?: {
    readonly potId: string
    readonly sureness: number
    readonly orIds: readonly string[]
  }
}

/** How much a load shrinks from bisque, part of the length, and its sd. */
export interface Shrinkage {
  readonly mean: number
  readonly sd: number
}

/** From bisque to a mid-range cone. From memory; a clay's own loads narrow it. */
export const SHRINKAGE: Shrinkage = { mean: 0.05, sd: 0.025 }

export interface Matched {
  readonly id: string
  /** The likeliest pots, at most three, with how sure; a drawing each. */
  readonly options: readonly { readonly potId: string; readonly sureness: number }[]
  readonly sure: boolean
}

export interface Matching {
  readonly pieces: readonly Matched[]
  /** What this load has shown: the prior of the next of its clay. */
  readonly shrinkage: Shrinkage
}

const OPTIONS = 3
/** A measure against the truth: what a ruler on a round pot leaves, mm, and part of the length. Assumptions. */
const RULER_MM = 1.2
const RULER_PART = 0.008
/** A seen stack is right so often, a place and a level too. Assumptions. */
const STACK_RIGHT = 0.95
const PLACE_RIGHT = 0.98
/** Sweeps that are drawn, those not counted first, and sweeps to a new shrinkage. Tuned. */
const SWEEPS = 500
const UNCOUNTED = 100
const REDRAW = 10
/** Grid of the shrinkage: points, over so many sds. */
const GRID = { nodes: 41, sds: 3 }

/** Logarithm of Student's density with four degrees of freedom, but for a constant. */
const logT4 = (z: number): number => -2.5 * Math.log(1 + (z * z) / 4)

const levelOf = (place: string): string => place.split('.')[0]!

/** A piece is none of the pots that it was not told to be. */
const LOG_NEVER = -40

/** What place and stack say of a pair, or what was told of it before, logarithm. */
function logSeen(pot: MatchPot, piece: FoundPiece, stacks: number, pots: number): number {
  if (piece.told) {
    const { potId, sureness, orIds } = piece.told
    const part = potId === pot.id ? sureness : orIds.includes(pot.id) ? (1 - sureness) / orIds.length : 0
    return part > 0 ? Math.log(part) : LOG_NEVER
  }
  let log = 0
  if (piece.stackId !== null)
    log += Math.log(piece.stackId === pot.stackId ? STACK_RIGHT : (1 - STACK_RIGHT) / Math.max(1, stacks - 1))
  if (piece.place !== null && pot.place !== null) {
    const same = piece.place.includes('.') ? piece.place === pot.place : piece.place === levelOf(pot.place)
    log += Math.log(same ? PLACE_RIGHT : (1 - PLACE_RIGHT) / Math.max(1, pots - 1))
  }
  return log
}

function check(
  pots: readonly MatchPot[],
  pieces: readonly FoundPiece[],
  stepMm: number,
  shrinkage: Shrinkage,
): void {
  inRange('pieces.length', pieces.length, 0, pots.length)
  for (const pot of pots) {
    inRange(`${pot.id}.heightMm`, pot.heightMm, 1, 5000)
    inRange(`${pot.id}.widthMm`, pot.widthMm, 1, 5000)
  }
  for (const piece of pieces) {
    if (piece.heightMm !== null) inRange(`${piece.id}.heightMm`, piece.heightMm, 1, 5000)
    if (piece.widthMm !== null) inRange(`${piece.id}.widthMm`, piece.widthMm, 1, 5000)
  }
  inRange('stepMm', stepMm, 0, 50)
  inRange('shrinkage.mean', shrinkage.mean, -0.05, 0.2)
  inRange('shrinkage.sd', shrinkage.sd, 0.001, 0.1)
}

/** Size of a pair: what a piece measured says of a pot that shrank by `s`. */
function sizes(pots: readonly MatchPot[], pieces: readonly FoundPiece[], stepMm: number) {
  const measures = pieces.map((piece) => [piece.heightMm, piece.widthMm] as const)
  const lengths = pots.map(({ heightMm, widthMm }) =>
    [heightMm, widthMm].map((length) => {
      const scale = Math.hypot(stepMm / Math.sqrt(12), RULER_MM, RULER_PART * length)
      return { length, per: 1 / scale, log: Math.log(scale) }
    }),
  )
  const log = (i: number, j: number, s: number): number => {
    let sum = 0
    for (let k = 0; k < 2; k++) {
      const seen = measures[i]![k]!
      if (seen === null) continue
      const { length, per, log: logScale } = lengths[j]![k]!
      sum += logT4((seen - length * (1 - s)) * per) - logScale
    }
    return sum
  }
  return log
}

/**
 * For each piece the pots it may be, jointly: no pot twice. `stepMm` is the step in which sizes were entered; `seed` makes
 * the draw, and the same question the same answer. RangeError names a measure that cannot be, or more pieces than pots.
 */
export function matching(
  pots: readonly MatchPot[],
  pieces: readonly FoundPiece[],
  stepMm: number,
  shrinkage: Shrinkage,
  seed: number,
): Matching {
  check(pots, pieces, stepMm, shrinkage)
  const [n, m] = [pieces.length, pots.length]
  const roll = randomFrom(seed)
  const stacks = new Set(pots.map(({ stackId }) => stackId)).size
  const size = sizes(pots, pieces, stepMm)
  const seen = pieces.map((piece) => pots.map((pot) => logSeen(pot, piece, stacks, m)))
  const nodes = Array.from({ length: GRID.nodes }, (_, k) => {
    const z = GRID.sds * ((2 * k) / (GRID.nodes - 1) - 1)
    return { s: shrinkage.mean + z * shrinkage.sd, log: (-z * z) / 2 }
  })
  const fit = pieces.map(() => new Float64Array(m))
  const refit = (s: number) => {
    for (let i = 0; i < n; i++) for (let j = 0; j < m; j++) fit[i]![j] = seen[i]![j]! + size(i, j, s)
  }
  refit(shrinkage.mean)
  const potOf = firstGuess(fit, m)
  // Seats beyond the pieces stand for pots that were not found: an exchange with one of them is a pot for another.
  const at = (i: number, j: number) => (i < n ? fit[i]![j]! : 0)
  const counts = pieces.map(() => new Float64Array(m))
  const shown = { sum: 0, squares: 0, count: 0 }
  let s = shrinkage.mean
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    for (let k = 0; k < m; k++) {
      const [a, b] = [Math.floor(roll() * m), Math.floor(roll() * m)]
      const [p, q] = [potOf[a]!, potOf[b]!]
      if (a === b || Math.log(1 - roll()) >= at(a, q) + at(b, p) - at(a, p) - at(b, q)) continue
      potOf[a] = q
      potOf[b] = p
    }
    if (sweep % REDRAW === 0 && n > 0) {
      s = redrawn(nodes, (at) => pieces.reduce((sum, _, i) => sum + size(i, potOf[i]!, at), 0), roll)
      refit(s)
    }
    if (sweep < UNCOUNTED) continue
    for (let i = 0; i < n; i++) counts[i]![potOf[i]!]!++
    shown.sum += s
    shown.squares += s * s
    shown.count++
  }
  const mean = shown.sum / shown.count
  return {
    pieces: pieces.map(({ id }, i) => {
      const options = pots
        .flatMap((pot, j) => (pot.taken ? [] : { potId: pot.id, sureness: counts[i]![j]! / shown.count }))
        .sort((a, b) => b.sureness - a.sureness || (a.potId < b.potId ? -1 : 1))
        .slice(0, OPTIONS)
        .filter(({ sureness }) => sureness > 0)
      return { id, options, sure: (options[0]?.sureness ?? 0) >= SURE }
    }),
    shrinkage: { mean, sd: Math.sqrt(Math.max(1e-6, shown.squares / shown.count - mean * mean)) },
  }
}

/** Each piece in turn takes the pot that fits it best of those left, the surest first. */
function firstGuess(fit: readonly Float64Array[], m: number): number[] {
  const free = new Set(Array.from({ length: m }, (_, j) => j))
  const margin = (i: number) => {
    const logs = [...fit[i]!].sort((a, b) => b - a)
    return logs[0]! - (logs[1] ?? Number.NEGATIVE_INFINITY)
  }
  const margins = fit.map((_, i) => margin(i))
  const potOf = new Array<number>(m).fill(-1)
  for (const i of fit.map((_, k) => k).sort((a, b) => margins[b]! - margins[a]!)) {
    let best = -1
    for (const j of free) if (best < 0 || fit[i]![j]! > fit[i]![best]!) best = j
    potOf[i] = best
    free.delete(best)
  }
  const left = [...free]
  return potOf.map((j) => (j < 0 ? left.pop()! : j))
}

/** A shrinkage drawn from what the pieces say of it as they are assigned. */
function redrawn(
  nodes: readonly { readonly s: number; readonly log: number }[],
  logOf: (s: number) => number,
  roll: () => number,
): number {
  const logs = nodes.map(({ s, log }) => log + logOf(s))
  const most = Math.max(...logs)
  const weights = logs.map((log) => Math.exp(log - most))
  let left = roll() * weights.reduce((a, b) => a + b, 0)
  for (const [k, weight] of weights.entries()) {
    left -= weight
    if (left <= 0) return nodes[k]!.s
  }
  return nodes.at(-1)!.s
}
