/** Foot room: will the melt of these coats reach the foot line or the shelf, and on what grounds. */

import { inRange } from '../check.ts'
import type { OutlinePoint, Profile } from '../contract.ts'
import { type CoatOnWall, checkedCoats, coatsOn, type GlazePair, layCoats, untriedPairs } from './coats.ts'
import { flow, frontMm, type Melt, toMl, volumeFrom } from './flow.ts'
import { downToMm, downwards, type MeltPath, pathAlong } from './path.ts'

export {
  type CoatOnWall,
  coatsOf,
  type DoseBand,
  type GlazePair,
  pairsOf,
  untriedPairs,
} from './coats.ts'

export type RunVerdict = 'clear' | 'near' | 'over' | 'unknown'
/** What keeps a verdict from being green: a glaze without a flow test, a pair never fired, a wall too level. */
export type RunDoubt = 'noTest' | 'untriedPair' | 'flat'

export interface FootRoomInput {
  readonly profile: Profile
  /** In the order they were put on. */
  readonly coats: readonly CoatOnWall[]
  readonly footLineMm: number
  /** How much farther than the mean front the worst drip may go: 2, or the drip factor of the tile (1 to 5). */
  readonly marginFactor: number
  readonly provedPairs: readonly GlazePair[]
}

/** Lengths in mm along the outside wall, volumes of melt in mL. Show lengths under 5 mm as "about". */
export interface FootRoom {
  readonly verdict: RunVerdict
  readonly doubts: readonly RunDoubt[]
  readonly untestedGlazes: readonly string[]
  readonly untried: readonly GlazePair[]
  /** Bare wall from the lowest glazed edge to the shelf. */
  readonly roomMm: number
  /** Expected run of the lowest edge; without a test of every glaze it counts the tested ones only. */
  readonly runMm: number
  /** The same with the upper thickness and the upper dose. */
  readonly upperRunMm: number
  /** The run with its margin, of the edge that comes nearest to the shelf: what the verdict goes by. */
  readonly marginRunMm: number
  /** The same of the upper estimate; without its own margin once the likely run is over. */
  readonly upperMarginRunMm: number
  /** How far the line of an upper coat slides down over the one below it. */
  readonly overlapSlideMm: number
  readonly pastFootMl: number
  readonly onShelfMl: number
  /** Onto the shelf when the margin is used up: what a catch slab has to hold. */
  readonly marginShelfMl: number
  /** Melt left on the uppermost 3 mm of wall. */
  readonly rimMeltMm: number
  /** Thickest melt hanging under a wall that leans in towards the foot; from 1.5 mm it may drop off. */
  readonly hangingMm: number
}

/** sin 10 deg: nearer to level than this the melt's own depth drives it and the film law ends (lubrication scaling). */
export const LEAST_SLOPE = Math.sin((10 * Math.PI) / 180)
/** Mean rise over length of the outside below which a pot is a flat: 30 deg (ours). */
const FLAT_RISE = 0.5
const RIM_MM = 3
/** A metric drop, mL: less melt on the shelf is the scheme's own smear. */
const DROP_ML = 0.05

interface Fired {
  readonly runMm: number
  readonly marginFrontMm: number
  readonly slideMm: number
  readonly pastFootMl: number
  readonly onShelfMl: number
  readonly marginShelfMl: number
  readonly rimMeltMm: number
  readonly hangingMm: number
}

interface Wall {
  readonly line: readonly OutlinePoint[]
  readonly path: MeltPath
  readonly edgeMm: number
  readonly footMm: number
}

function rimMelt({ path, thickMm }: Melt): number {
  let [volume, area] = [0, 0]
  for (let i = 0; i < path.cells && path.faceMm[i]! < RIM_MM; i++) {
    volume += thickMm[i]! * path.areaMm2[i]!
    area += path.areaMm2[i]!
  }
  return volume / area
}

function hanging({ path, thickMm }: Melt): number {
  let thickest = 0
  for (let i = 1; i < path.cells; i++)
    if (path.radiusMm[i]! < path.radiusMm[i - 1]! - 1e-9) thickest = Math.max(thickest, thickMm[i]!)
  return thickest
}

/** The whole firing, then on until the margin is used up: the same steps serve both answers. */
function fire(wall: Wall, coats: readonly CoatOnWall[], upper: boolean, marginFactor: number): Fired {
  const melt = layCoats(wall.path, wall.line, coats, upper)
  const before = frontMm(melt)
  flow(melt, 1)
  // Where an overlap line comes right behind it, the front can't be read off the melt any more: its edge stands in.
  const runOf = (): number =>
    Math.max(0, frontMm(melt) - before, ...melt.edges.map((edge) => edge.atMm - wall.edgeMm))
  const runMm = runOf()
  const over = melt.edges.filter((edge) => edge.startMm < wall.edgeMm - 1e-6)
  const footCell = wall.path.faceMm.findIndex((s) => s >= wall.footMm - 1e-6)
  const once = {
    runMm,
    slideMm: Math.max(0, ...over.map((edge) => edge.atMm - edge.startMm)),
    pastFootMl: toMl(volumeFrom(melt, footCell) + melt.gone),
    onShelfMl: toMl(melt.gone),
    rimMeltMm: rimMelt(melt),
    hangingMm: hanging(melt),
  }
  // A coat laid over another is owed the margin it would need alone, so that a coat below never takes it away.
  const fronts = over.map((edge) => edge.startMm + marginFactor * edge.bareRunMm)
  flow(melt, marginFactor - 1)
  const marginFrontMm = wall.edgeMm + Math.max(marginFactor * runMm, runOf())
  return { ...once, marginFrontMm: Math.max(marginFrontMm, ...fronts), marginShelfMl: toMl(melt.gone) }
}

/** A wide open shape whose outside is nearer to level than to upright. */
const isFlat = (line: readonly OutlinePoint[], lengthMm: number): boolean =>
  line[0]!.zMm - line[line.length - 1]!.zMm < FLAT_RISE * lengthMm

/** Share of the bare wall that a run with its margin may take before it is called near. Our choice. */
const NEAR_SHARE = 0.5

function grade(wall: Wall, likely: Fired, upper: Fired): 'clear' | 'near' | 'over' {
  const shelf = wall.path.lengthMm - 1e-9
  if (likely.marginFrontMm >= shelf || likely.marginShelfMl >= DROP_ML) return 'over'
  const roomMm = wall.path.lengthMm - wall.edgeMm
  const near = likely.marginFrontMm - wall.edgeMm >= NEAR_SHARE * roomMm - 1e-9
  // Of the upper estimate only that it reaches the shelf by itself counts: a wide band is no run.
  return near || wall.edgeMm > wall.footMm + 1e-6 || wall.edgeMm + upper.runMm >= shelf ? 'near' : 'clear'
}

/** `over` stands on what is known; anything less is unknown while a glaze is untested or the wall too level. */
function verdictOf(known: 'clear' | 'near' | 'over', doubts: readonly RunDoubt[]): RunVerdict {
  if (doubts.includes('flat')) return 'unknown'
  if (known === 'over' || doubts.length === 0) return known
  return known === 'near' && !doubts.includes('noTest') ? 'near' : 'unknown'
}

const BARE: Omit<Fired, 'marginFrontMm'> = {
  runMm: 0,
  slideMm: 0,
  pastFootMl: 0,
  onShelfMl: 0,
  marginShelfMl: 0,
  rimMeltMm: 0,
  hangingMm: 0,
}

/**
 * Foot room of one pot's outside after a firing. Over: the likely run with its margin reaches the shelf. Near: it
 * takes half of the bare wall below the lowest edge or more, or the upper estimate reaches the shelf without a
 * margin, or glaze lies below the foot line. Unknown: no grounds to say clear. Where glazes overlap the larger dose
 * holds.
 * RangeError for thickness, dose, margin or foot line out of range.
 */
export function footRoom(input: FootRoomInput): FootRoom {
  const { profile, coats, footLineMm, marginFactor, provedPairs } = input
  checkedCoats(coats)
  inRange('footLineMm', footLineMm, 0, 1000)
  inRange('marginFactor', marginFactor, 1, 5)
  const line = downwards(profile, 'outside')
  const outside = coatsOn(coats, 'outside')
  const edgeMm = Math.max(0, ...outside.map((coat) => downToMm(line, coat.fromMm)))
  const path = pathAlong(line, edgeMm, LEAST_SLOPE)
  const wall: Wall = { line, path, edgeMm, footMm: downToMm(line, footLineMm) }
  const untestedGlazes = [...new Set(outside.filter((c) => !c.dose).map((c) => c.glazeId))]
  const untried = untriedPairs(outside, provedPairs)
  const doubts: RunDoubt[] = []
  if (untestedGlazes.length > 0) doubts.push('noTest')
  if (untried.length > 0) doubts.push('untriedPair')
  if (outside.length > 0 && isFlat(line, path.lengthMm)) doubts.push('flat')
  const bare = { ...BARE, marginFrontMm: edgeMm }
  const likely = outside.length > 0 ? fire(wall, outside, false, marginFactor) : bare
  // Once the likely run is over, the upper one need not use up its margin as well.
  const spent = likely.marginFrontMm >= path.lengthMm
  const upper = outside.length > 0 ? fire(wall, outside, true, spent ? 1 : marginFactor) : bare
  const known = outside.length > 0 ? grade(wall, likely, upper) : 'clear'
  return {
    verdict: verdictOf(known, doubts),
    doubts,
    untestedGlazes,
    untried,
    roomMm: path.lengthMm - edgeMm,
    runMm: likely.runMm,
    upperRunMm: upper.runMm,
    marginRunMm: likely.marginFrontMm - edgeMm,
    upperMarginRunMm: Math.max(likely.marginFrontMm, upper.marginFrontMm) - edgeMm,
    overlapSlideMm: likely.slideMm,
    pastFootMl: likely.pastFootMl,
    onShelfMl: likely.onShelfMl,
    marginShelfMl: likely.marginShelfMl,
    rimMeltMm: likely.rimMeltMm,
    hangingMm: likely.hangingMm,
  }
}
