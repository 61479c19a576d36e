/**
 * How far a fired pot's lowest edge would have run had all its doses been k times what was told, and which k its result
 * speaks of. One pass with stops serves the whole curve, since firings add. It is steep where an upper coat catches the
 * edge of the one below: then *did not run* and *on the shelf* are nearly all that a result can be, and both count.
 */

import { inRange } from '../check.ts'
import type { Profile } from '../contract.ts'
import { type CoatOnWall, checkedCoats, coatsOn, layCoats, MOST_DOSE_PER_MM } from '../melt/coats.ts'
import { flow, frontMm } from '../melt/flow.ts'
import { LEAST_SLOPE } from '../melt/melt.ts'
import { downToMm, downwards, pathAlong } from '../melt/path.ts'
import { type Subject, subjectCoats, subjectKey } from './subjects.ts'

/** A pot as it went into the kiln: coats as done, in the order they were put on, with the doses that were told. */
export interface FiredPot {
  readonly profile: Profile
  readonly coats: readonly CoatOnWall[]
}

/** What was seen of the run after the firing, mm along the wall. */
export type RunSeen =
  /** Ran, and was measured. */
  | { readonly kind: 'measured'; readonly mm: number }
  /** Did not run: under 1 mm. */
  | { readonly kind: 'none' }
  /** Came no farther than this; how far nobody looked. */
  | { readonly kind: 'within'; readonly mm: number }
  /** Reached the shelf. */
  | { readonly kind: 'shelf' }
  /** Ran, not measured: over 1 mm, and not to the shelf. */
  | { readonly kind: 'some' }

/** What a result says of ln k: a value with its reading error (sd), or the ends between which it lies. */
export type LnK =
  | { readonly kind: 'point'; readonly ln: number; readonly sd: number }
  | { readonly kind: 'range'; readonly low: number; readonly high: number }

/** Run of the lowest edge at each stop; both rise. `roomMm` is the bare wall from that edge to the shelf. */
export interface RunCurve {
  readonly roomMm: number
  readonly lnK: readonly number[]
  readonly runMm: readonly number[]
}

/** Less is no run to the eye, mm. */
export const FIRST_MM = 1
/** What a ruler on a rounded edge leaves, sd, mm (assumption). */
const READING_MM = 0.5
const STOPS = 41
const LEAST_K = 0.02
const MOST_K = 50
const STOP_LN = Math.log(MOST_K / LEAST_K) / (STOPS - 1)
const LN_K: readonly number[] = Array.from({ length: STOPS }, (_, i) => Math.log(LEAST_K) + i * STOP_LN)
/** Doses are raised by this to see what follows them, logarithm. */
const NUDGE_LN = 0.2
/** A subject that decides so much of a run is taught by it. Our choice. */
export const TEACHES_SHARE = 0.7

/**
 * The curve of a pot, or null where it has none: no coat outside, a glaze there without a dose, or no wall left below the
 * edge. RangeError for thickness, height or dose out of range.
 */
export function runCurve({ profile, coats }: FiredPot): RunCurve | null {
  const outside = coatsOn(checkedCoats(coats), 'outside')
  if (outside.length === 0 || outside.some(({ dose }) => dose === null)) return null
  const line = downwards(profile, 'outside')
  const edgeMm = Math.max(0, ...outside.map((coat) => downToMm(line, coat.fromMm)))
  const path = pathAlong(line, edgeMm, LEAST_SLOPE)
  const roomMm = path.lengthMm - edgeMm
  if (roomMm < FIRST_MM) return null
  const melt = layCoats(path, line, outside, false)
  const before = frontMm(melt)
  const runMm: number[] = []
  let far = 0
  let k = 0
  for (const ln of LN_K) {
    if (far < roomMm) {
      flow(melt, Math.exp(ln) - k)
      k = Math.exp(ln)
      far = Math.max(far, frontMm(melt) - before, ...melt.edges.map((edge) => edge.atMm - edgeMm))
    }
    runMm.push(far)
  }
  return { roomMm, lnK: LN_K, runMm }
}

/** ln k at which a pot has run `mm` (above 0, at most its room); Infinity where no k that counts takes it there. */
export function lnKAt({ lnK, runMm, roomMm }: RunCurve, mm: number): number {
  inRange('mm', mm, Number.MIN_VALUE, roomMm)
  const next = runMm.findIndex((run) => run >= mm)
  if (next < 0) return Number.POSITIVE_INFINITY
  const b = runMm[next]!
  // Below the first stop a film runs in proportion.
  if (next === 0) return lnK[0]! + Math.log(mm / b)
  const a = runMm[next - 1]!
  const share = a > 0 ? Math.log(mm / a) / Math.log(b / a) : mm / b
  return lnK[next - 1]! + share * STOP_LN
}

/** Run at ln k, mm, the room at most: the way back. */
export function runAt({ lnK, runMm, roomMm }: RunCurve, ln: number): number {
  const x = (ln - lnK[0]!) / STOP_LN
  if (x <= 0) return Math.min(roomMm, runMm[0]! * Math.exp(ln - lnK[0]!))
  const i = Math.min(Math.floor(x), STOPS - 2)
  const share = Math.min(1, x - i)
  const [a, b] = [runMm[i]!, runMm[i + 1]!]
  return Math.min(roomMm, a > 0 ? a * (b / a) ** share : b * share)
}

/** What was seen, with a measure that says no more than one of the other kinds taken as that kind. */
function plain(seen: RunSeen, { roomMm, runMm }: RunCurve): RunSeen {
  if (seen.kind === 'within') {
    inRange('mm', seen.mm, 0, 1000)
    // What no factor that counts takes farther says no more than that.
    const mm = Math.min(seen.mm, roomMm, runMm.at(-1)!)
    return mm <= FIRST_MM ? { kind: 'none' } : { kind: 'within', mm }
  }
  if (seen.kind !== 'measured') return seen
  inRange('mm', seen.mm, 0, 1000)
  if (seen.mm < FIRST_MM) return { kind: 'none' }
  return seen.mm >= roomMm ? { kind: 'shelf' } : seen
}

/** What a result says of ln k on its curve. RangeError for a measure that is no length. */
export function lnKOf(curve: RunCurve, given: RunSeen): LnK {
  const seen = plain(given, curve)
  const first = lnKAt(curve, FIRST_MM)
  const shelf = lnKAt(curve, curve.roomMm)
  switch (seen.kind) {
    case 'none':
      return { kind: 'range', low: Number.NEGATIVE_INFINITY, high: first }
    case 'within':
      return { kind: 'range', low: Number.NEGATIVE_INFINITY, high: lnKAt(curve, seen.mm) }
    case 'shelf':
      return { kind: 'range', low: Math.min(shelf, LN_K[STOPS - 1]!), high: Number.POSITIVE_INFINITY }
    case 'some':
      return { kind: 'range', low: Math.min(first, LN_K[STOPS - 1]!), high: shelf }
    case 'measured': {
      const ln = lnKAt(curve, seen.mm)
      const [low, high] = [seen.mm - READING_MM, Math.min(curve.roomMm, seen.mm + READING_MM)]
      const reach = (lnKAt(curve, high) - lnKAt(curve, low)) / (high - low)
      // Farther than the firing's fiftyfold takes it: no more than that is known.
      if (!Number.isFinite(reach))
        return { kind: 'range', low: Math.min(ln, LN_K[STOPS - 1]!), high: Number.POSITIVE_INFINITY }
      return { kind: 'point', ln, sd: reach * READING_MM }
    }
  }
}

/** How far the run lies at which a result decides, mm. */
function decidesAt(curve: RunCurve, given: RunSeen): number {
  const seen = plain(given, curve)
  switch (seen.kind) {
    case 'none':
      return FIRST_MM
    case 'shelf':
      return curve.roomMm
    case 'some':
      return Math.sqrt(FIRST_MM * curve.roomMm)
    case 'measured':
    case 'within':
      return seen.mm
  }
}

/** ln k at which a pot would have run far enough to be seen: past 1 mm, or past where it was looked at. */
export function seenFromLn(curve: RunCurve, given: RunSeen): number {
  const seen = plain(given, curve)
  return lnKAt(curve, seen.kind === 'within' ? seen.mm : FIRST_MM)
}

/** A subject and its part in a run, 0 to 1; the parts of a pot sum to 1. */
export interface Share {
  readonly subject: Subject
  readonly share: number
}

const nudged = (pot: FiredPot, of: Subject, ln: number): FiredPot => {
  const mine = new Set(
    subjectCoats(pot.coats).flatMap(({ coat, subject }) =>
      subjectKey(subject) === subjectKey(of) ? [coat] : [],
    ),
  )
  const raise = (dosePerMm: number) => Math.min(MOST_DOSE_PER_MM, dosePerMm * Math.exp(ln))
  const coats = pot.coats.map((coat) =>
    mine.has(coat) && coat.dose
      ? {
          ...coat,
          dose: { likelyPerMm: raise(coat.dose.likelyPerMm), highPerMm: raise(coat.dose.highPerMm) },
        }
      : coat,
  )
  return { ...pot, coats }
}

/**
 * Whose dose a run hangs on: d ln R/d ln P of each subject at the run that a result is about, by how much sooner that run
 * is reached with the dose raised. Empty where the pot has no curve, or never runs so far.
 */
export function sharesOf(pot: FiredPot, curve: RunCurve, seen: RunSeen): readonly Share[] {
  const subjects = new Map(subjectCoats(pot.coats).map(({ subject }) => [subjectKey(subject), subject]))
  const mm = decidesAt(curve, seen)
  const told = lnKAt(curve, mm)
  if (!Number.isFinite(told)) return []
  const shares = [...subjects.values()].map((subject): Share => {
    const raised = subjects.size === 1 ? null : runCurve(nudged(pot, subject, NUDGE_LN))
    const sooner = raised ? told - lnKAt(raised, Math.min(mm, raised.roomMm)) : NUDGE_LN
    return { subject, share: Math.max(0, sooner / NUDGE_LN) }
  })
  const sum = shares.reduce((total, { share }) => total + share, 0)
  return sum > 0 ? shares.map(({ subject, share }) => ({ subject, share: share / sum })) : []
}

/** The one subject that a run teaches; null where more than one could have done it. */
export const taughtBy = (shares: readonly Share[]): Subject | null =>
  shares.find(({ share }) => share >= TEACHES_SHARE)?.subject ?? null

/**
 * ln of the factor on one subject's dose, all others as told, at which a pot reaches the shelf; within so many stops of the
 * curve, else Infinity. For what a tile would decide.
 */
export function lnToShelf(pot: FiredPot, subject: Subject): number {
  const over = (ln: number): boolean => {
    const curve = runCurve(nudged(pot, subject, ln))
    return curve !== null && runAt(curve, 0) >= curve.roomMm
  }
  let [low, high] = [LN_K[0]!, LN_K[STOPS - 1]!]
  if (!over(high)) return Number.POSITIVE_INFINITY
  if (over(low)) return low
  while (high - low > 0.02) {
    const middle = (low + high) / 2
    if (over(middle)) high = middle
    else low = middle
  }
  return high
}
