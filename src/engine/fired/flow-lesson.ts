/**
 * What the fire taught of how far each glaze, or pair, runs: ln k = u + v + phi + e, a studio's own u, a subject's v, a
 * firing's phi that all of its pots share, and e of Student's law with four degrees, so that one odd pot moves little.
 * Results are intervals as well as values. Of several subjects in the same firings each learns the firing from the
 * others. Recomputed from the results that are kept, so leaving one out is exact.
 */

import { between, inRange } from '../check.ts'
import { NORMAL_NODES, t4Cdf } from '../numeric/student.ts'
import { POT_SCALE, solved } from './lesson-solver.ts'
import { at10, type LnGrid, quantileOf } from './ln-grid.ts'
import type { LnK } from './run-curve.ts'

/** A result that teaches one subject. `heat` is the firing, or the level of it whose own cones were seen. */
export interface TaughtResult {
  readonly id: string
  readonly subject: string
  readonly heat: string
  /** The fill of the bucket it was dipped from. */
  readonly fill: string
  readonly lnK: LnK
}

/** What is known of a subject's factor before any result: mean and sd of ln, of its tiles' band. */
export interface SubjectStart {
  readonly subject: string
  readonly mean: number
  readonly sd: number
}

/** What is known of a firing's heat beside the plan: mean and sd of ln dose (`heatOf`). */
export interface HeatSeen {
  readonly heat: string
  readonly mean: number
  readonly sd: number
}

/** How many times told a subject runs, in a firing that goes as planned: 10, 50 and 90 % points. */
export interface Factor {
  readonly low: number
  readonly likely: number
  readonly high: number
}

export interface SubjectLesson {
  readonly subject: string
  readonly factor: Factor
  readonly lnMean: number
  readonly lnSd: number
  /** Ids of the results that count in it. */
  readonly results: readonly string[]
  /** Its fills run more than half as far again apart: coats differ, not the melt. Ask for a scratch before it moves. */
  readonly fillsDiffer: boolean
  /** The whole posterior of ln factor. */
  readonly grid: LnGrid
}

export interface FlowLesson {
  readonly subjects: readonly SubjectLesson[]
  /** ln factor that all subjects of the studio share. */
  readonly studio: { readonly mean: number; readonly sd: number }
}

/** Less of a law says nothing of its quantiles. */
const NO_WEIGHT = 1e-5
/** Fills further apart than this ask for a scratch. */
const FILLS_APART = Math.log(1.5)

function checkedLnK(id: string, lnK: LnK): void {
  if (lnK.kind === 'point') {
    inRange(`${id}.ln`, lnK.ln, -20, 20)
    inRange(`${id}.sd`, lnK.sd, 0, 20)
  } else if (!(lnK.low < lnK.high))
    throw new RangeError(`${id}.high is ${lnK.high}: must be above ${id}.low, ${lnK.low}`)
}

function moments({ ln, weight }: LnGrid): { readonly mean: number; readonly sd: number } {
  let [mean, square] = [0, 0]
  for (let i = 0; i < ln.length; i++) {
    mean += weight[i]! * ln[i]!
    square += weight[i]! * ln[i]! ** 2
  }
  return { mean, sd: Math.sqrt(Math.max(0, square - mean * mean)) }
}

/** Whether the fills of one subject, each by itself, tell factors that lie apart. */
function fillsApart(
  results: readonly TaughtResult[],
  start: SubjectStart,
  heats: readonly HeatSeen[],
): boolean {
  const fills = [...new Set(results.map(({ fill }) => fill))]
  if (fills.length < 2) return false
  const told = fills.map((fill) => {
    const { grids } = solved(
      results.filter((result) => result.fill === fill),
      [start],
      heats,
    )
    return quantileOf(grids[0]!, 0.5)
  })
  return Math.max(...told) - Math.min(...told) > FILLS_APART
}

const byName =
  <T>(name: (one: T) => string) =>
  (a: T, b: T): number =>
    name(a) < name(b) ? -1 : name(a) > name(b) ? 1 : 0

/**
 * What the kept results teach of each subject in `starts` (a subject without results follows the studio's others). The
 * order given does not matter. RangeError for a subject or heat of a result that is not listed, and for values out of
 * range; the field is named by the result's id.
 */
export function flowLesson(
  given: readonly TaughtResult[],
  starts: readonly SubjectStart[],
  heatsSeen: readonly HeatSeen[],
): FlowLesson {
  const results = given.toSorted(byName(({ id }) => id))
  const subjects = starts.toSorted(byName(({ subject }) => subject))
  for (const { subject, mean, sd } of subjects) {
    inRange(`${subject}.mean`, mean, -10, 10)
    between(`${subject}.sd`, sd, 0, 10)
  }
  for (const { heat, mean, sd } of heatsSeen) {
    inRange(`${heat}.mean`, mean, -10, 10)
    inRange(`${heat}.sd`, sd, 0, 10)
  }
  for (const { id, subject, heat, lnK } of results) {
    checkedLnK(id, lnK)
    if (!subjects.some((start) => start.subject === subject))
      throw new RangeError(`${id}.subject is ${subject}: must be one that is listed`)
    if (!heatsSeen.some((seen) => seen.heat === heat))
      throw new RangeError(`${id}.heat is ${heat}: must be one that is listed`)
  }
  const used = new Set(results.map(({ heat }) => heat))
  const heats = heatsSeen.filter(({ heat }) => used.has(heat)).sort(byName(({ heat }) => heat))
  const { grids, studio } = solved(results, subjects, heats)
  return {
    subjects: subjects.map((start, s): SubjectLesson => {
      const grid = grids[s]!
      const mine = results.filter(({ subject }) => subject === start.subject)
      const { mean, sd } = moments(grid)
      return {
        subject: start.subject,
        factor: at10(grid),
        lnMean: mean,
        lnSd: sd,
        results: mine.map(({ id }) => id),
        fillsDiffer: fillsApart(mine, start, heats),
        grid,
      }
    }),
    studio: moments(studio),
  }
}

/** 10, 50 and 90 % of what the next pot's ln k may be: its subject's factor, a firing to come, and a pot's own scatter. */
export function nextPot({ grid }: SubjectLesson, heat: Pick<HeatSeen, 'mean' | 'sd'>): Factor {
  const at: (readonly [ln: number, weight: number])[] = []
  for (let i = 0; i < grid.ln.length; i++)
    if (grid.weight[i]! > NO_WEIGHT)
      for (const [z, weight] of NORMAL_NODES)
        at.push([grid.ln[i]! + heat.mean + heat.sd * z, grid.weight[i]! * weight])
  const below = (x: number): number =>
    at.reduce((sum, [ln, weight]) => sum + weight * t4Cdf((x - ln) / POT_SCALE), 0)
  const [low, likely, high] = [0.1, 0.5, 0.9].map((part) => {
    let [a, b] = [grid.ln[0]! - 5, grid.ln.at(-1)! + 5]
    while (b - a > 1e-3) {
      const middle = (a + b) / 2
      if (below(middle) < part) a = middle
      else b = middle
    }
    return Math.exp((a + b) / 2)
  }) as [number, number, number]
  return { low, likely, high }
}
