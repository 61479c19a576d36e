/** What would clear the foot: the edge higher, the coat thinner, the coat left out, or a slab to catch the run. */

import { type CoatOnWall, pairsOf } from './coats.ts'
import { type FootRoomInput, footRoom, type RunVerdict } from './melt.ts'

/** The smallest changes to a dip that come to a verdict; null where none of that kind does. */
export interface Mend {
  /** Lowest edge of the dip, mm above the shelf. */
  readonly edgeUpMm: number | null
  /** Share of the dip's planned thickness: the caller turns it into seconds. */
  readonly thicknessShare: number | null
  /** Thickest dry coat of the dip anywhere on the outside at that share, mm. */
  readonly thickestMm: number | null
}

export interface RunRemedies {
  /** What clears the foot; null when it is clear, or would not be without the dip either. */
  readonly clear: Mend | null
  /** What at least keeps the margin off the shelf; null unless the dip takes it there. */
  readonly near: Mend | null
  /** How the pot stands without the dip. */
  readonly without: RunVerdict
  /** Melt a catch slab must hold with the margin used up, mL; null when the pot is clear without one. */
  readonly slabMl: number | null
  /** Glazes whose flow must be tested before anything can clear. */
  readonly testFirst: readonly string[]
}

/** Edges are set to half a millimetre at best. */
const EDGE_STEP_MM = 0.5
/** Less of a coat than this is a line, not a remedy, mm (ours). */
const LEAST_BAND_MM = 10
const SHARE_STEPS = 64

/** The largest whole number in [0, most] that passes, if 0 passes and passing stops once. */
function largest(most: number, passes: (n: number) => boolean): number {
  let [low, high] = [0, most + 1]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (passes(middle)) low = middle
    else high = middle
  }
  return low
}

const raised = (coats: readonly CoatOnWall[], dipId: string, upMm: number): readonly CoatOnWall[] =>
  coats.flatMap((coat) => {
    if (coat.dipId !== dipId || coat.face !== 'outside' || coat.fromMm >= upMm) return [coat]
    return coat.toMm > upMm ? [{ ...coat, fromMm: upMm }] : []
  })

const thinned = (coats: readonly CoatOnWall[], dipId: string, share: number): readonly CoatOnWall[] =>
  coats.map((coat) =>
    coat.dipId === dipId && coat.face === 'outside'
      ? { ...coat, likelyMm: coat.likelyMm * share, upperMm: coat.upperMm * share }
      : coat,
  )

/** A dip of a pot, and how the pot stands with other coats. Pairs count as tried: no edge or thickness cures that. */
interface Asked {
  readonly fromMm: number
  readonly toMm: number
  readonly mine: readonly CoatOnWall[]
  readonly verdictOf: (coats: readonly CoatOnWall[]) => RunVerdict
  readonly before: RunVerdict
  readonly without: RunVerdict
}

function asked(input: FootRoomInput, dipId: string): Asked {
  const mine = input.coats.filter((coat) => coat.dipId === dipId && coat.face === 'outside')
  if (mine.length === 0) throw new RangeError(`dipId is ${dipId}: must be a dip on the outside`)
  const provedPairs = pairsOf(input.coats)
  const verdictOf = (coats: readonly CoatOnWall[]): RunVerdict =>
    footRoom({ ...input, coats, provedPairs }).verdict
  return {
    mine,
    fromMm: Math.min(...mine.map((coat) => coat.fromMm)),
    toMm: Math.max(...mine.map((coat) => coat.toMm)),
    verdictOf,
    before: verdictOf(input.coats),
    without: verdictOf(input.coats.filter((coat) => coat.dipId !== dipId || coat.face !== 'outside')),
  }
}

type Passes = (verdict: RunVerdict) => boolean
const isClear: Passes = (verdict) => verdict === 'clear'
const isOff: Passes = (verdict) => verdict === 'clear' || verdict === 'near'

/** The lowest edge that passes, mm above the shelf; null where none leaves enough of the coat. */
function edgeFor(input: FootRoomInput, dipId: string, { fromMm, toMm, verdictOf }: Asked, passes: Passes) {
  const steps = Math.ceil((toMm - fromMm) / EDGE_STEP_MM)
  const down = largest(steps - 1, (n) =>
    passes(verdictOf(raised(input.coats, dipId, toMm - n * EDGE_STEP_MM))),
  )
  return down * EDGE_STEP_MM >= LEAST_BAND_MM ? toMm - down * EDGE_STEP_MM : null
}

function mendFor(input: FootRoomInput, dipId: string, pot: Asked, passes: Passes): Mend {
  const parts = largest(SHARE_STEPS - 1, (n) =>
    passes(pot.verdictOf(thinned(input.coats, dipId, n / SHARE_STEPS))),
  )
  const share = parts / SHARE_STEPS
  return {
    edgeUpMm: edgeFor(input, dipId, pot, passes),
    thicknessShare: parts > 0 ? share : null,
    thickestMm: parts > 0 ? share * Math.max(...pot.mine.map((coat) => coat.likelyMm)) : null,
  }
}

/**
 * Remedies for one dip of a pot, each run through `footRoom` again. That a pair is untried stays to be said.
 * RangeError as for `footRoom`, and for a dip not on the outside.
 */
export function runRemedies(input: FootRoomInput, dipId: string): RunRemedies {
  const pot = asked(input, dipId)
  const { before, without } = pot
  const now = footRoom(input)
  return {
    clear: isClear(without) && !isClear(before) ? mendFor(input, dipId, pot, isClear) : null,
    near: isOff(without) && before === 'over' ? mendFor(input, dipId, pot, isOff) : null,
    without,
    slabMl: now.verdict === 'clear' ? null : now.marginShelfMl,
    testFirst: now.untestedGlazes,
  }
}

/**
 * The lowest edge of a dip that takes its pot off the shelf, or clears it where it is near; null when none does or
 * none is needed. The edge of `runRemedies` alone, in a third of its time: for a warning before a dip.
 */
export function lowestEdge(
  input: FootRoomInput,
  dipId: string,
): { readonly edgeUpMm: number; readonly reaches: 'clear' | 'near' } | null {
  const pot = asked(input, dipId)
  const reaches = isOff(pot.without) && pot.before === 'over' ? 'near' : 'clear'
  if (reaches === 'clear' && (!isClear(pot.without) || isClear(pot.before))) return null
  const edgeUpMm = edgeFor(input, dipId, pot, reaches === 'near' ? isOff : isClear)
  return edgeUpMm === null ? null : { edgeUpMm, reaches }
}
