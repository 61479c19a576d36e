/**
 * The sums behind `flowLesson`: laws on grids, and messages between subjects, firings and the studio (J. Pearl,
 * Probabilistic Reasoning in Intelligent Systems, 1988). On one subject they are exact.
 */

import { NORMAL_NODES, t4Cdf, t4Pdf } from '../numeric/student.ts'
import type { HeatSeen, SubjectStart, TaughtResult } from './flow-lesson.ts'
import type { LnGrid } from './ln-grid.ts'
import type { LnK } from './run-curve.ts'

/** Spread of studios about what is told, and scale of a pot about its subject and firing. Assumptions. */
const STUDIO_SD = 0.25
export const POT_SCALE = 0.3
const LN_NODES = 81
const STUDIO_NODES = 41
/** Grids reach so many sds. */
const REACH_SDS = 4
/** Most rounds of messages. */
const ROUNDS = 12
/** Messages, whose peak is 1, that move less are still. */
const STILL = 1e-4

const normal = (x: number, sd: number): number => Math.exp(-0.5 * (x / sd) ** 2)

/** Likelihood of a result where subject, studio and firing come to `at`, ln. */
export function likelihood(lnK: LnK, at: number): number {
  if (lnK.kind === 'range') return t4Cdf((lnK.high - at) / POT_SCALE) - t4Cdf((lnK.low - at) / POT_SCALE)
  const scale = Math.hypot(POT_SCALE, lnK.sd)
  return t4Pdf((lnK.ln - at) / scale) / scale
}

/** Results of one subject in one heat: their joint likelihood at each node of ln factor and heat, and messages. */
interface Cell {
  readonly heat: number
  readonly subject: number
  readonly like: Float64Array
  readonly toLn: Float64Array
  readonly toHeat: Float64Array
}

interface SubjectNodes {
  readonly ln: Float64Array
  readonly cells: readonly Cell[]
  /** Law of ln factor given the studio's: a row a studio node. */
  readonly given: readonly Float64Array[]
  readonly toStudio: Float64Array
}

const STUDIO_LN: readonly number[] = Array.from(
  { length: STUDIO_NODES },
  (_, k) => STUDIO_SD * REACH_SDS * ((2 * k) / (STUDIO_NODES - 1) - 1),
)

function scaled(values: Float64Array): Float64Array {
  let sum = 0
  for (const value of values) sum += value
  if (sum > 0) for (let i = 0; i < values.length; i++) values[i] = values[i]! / sum
  return values
}

/** A message with a peak of 1: of hundreds the product stays a number. */
function peaked(values: Float64Array): Float64Array {
  let most = 0
  for (const value of values) most = Math.max(most, value)
  if (most > 0) for (let i = 0; i < values.length; i++) values[i] = values[i]! / most
  return values
}

function lnNodes({ mean, sd }: SubjectStart): Float64Array {
  const reach = REACH_SDS * Math.hypot(sd, STUDIO_SD)
  return Float64Array.from({ length: LN_NODES }, (_, i) => mean + reach * ((2 * i) / (LN_NODES - 1) - 1))
}

function cellOf(
  subject: number,
  heat: number,
  ln: Float64Array,
  seen: HeatSeen,
  results: readonly TaughtResult[],
): Cell {
  const nodes = NORMAL_NODES.length
  const like = new Float64Array(LN_NODES * nodes).fill(1)
  for (const { lnK } of results) {
    let most = 0
    for (let i = 0; i < LN_NODES; i++)
      for (let j = 0; j < nodes; j++) {
        const at = i * nodes + j
        like[at] = like[at]! * likelihood(lnK, ln[i]! + seen.mean + seen.sd * NORMAL_NODES[j]![0])
        most = Math.max(most, like[at]!)
      }
    if (most > 0) for (let at = 0; at < like.length; at++) like[at] = like[at]! / most
  }
  return {
    subject,
    heat,
    like,
    toLn: new Float64Array(LN_NODES).fill(1),
    toHeat: new Float64Array(nodes).fill(1),
  }
}

/** Product of messages but that of `but`. */
function product(length: number, messages: readonly Float64Array[], but: Float64Array | null): Float64Array {
  const out = new Float64Array(length).fill(1)
  for (const message of messages)
    if (message !== but) for (let i = 0; i < length; i++) out[i] = out[i]! * message[i]!
  return scaled(out)
}

/** What the studio and its other subjects say of ln factor before its own results. */
function before(nodes: SubjectNodes, all: readonly SubjectNodes[]): Float64Array {
  const studio = product(
    STUDIO_NODES,
    all.map(({ toStudio }) => toStudio),
    nodes.toStudio,
  )
  const out = new Float64Array(LN_NODES)
  for (let k = 0; k < STUDIO_NODES; k++) {
    const weight = studio[k]! * normal(STUDIO_LN[k]!, STUDIO_SD)
    const given = nodes.given[k]!
    for (let i = 0; i < LN_NODES; i++) out[i] = out[i]! + weight * given[i]!
  }
  return scaled(out)
}

/** A product of messages with one of them taken out again. */
const without = (all: Float64Array, own: Float64Array): Float64Array =>
  all.map((value, i) => (own[i]! > 0 ? value / own[i]! : 0))

const apart = (a: Float64Array, b: Float64Array): number =>
  a.reduce((most, value, i) => Math.max(most, Math.abs(value - b[i]!)), 0)

/**
 * One round of messages: factors to firings and the studio, then firings to factors. Returns the most that a message
 * to a firing moved.
 */
function round(
  all: readonly SubjectNodes[],
  cells: readonly Cell[],
  heats: readonly (readonly Cell[])[],
): number {
  const nodes = NORMAL_NODES.length
  const laws = all.map((own) =>
    product(LN_NODES, [before(own, all), ...own.cells.map(({ toLn }) => toLn)], null),
  )
  let moved = 0
  for (const cell of cells) {
    const rest = without(laws[cell.subject]!, cell.toLn)
    const was = cell.toHeat.slice()
    cell.toHeat.fill(0)
    for (let i = 0; i < LN_NODES; i++)
      for (let j = 0; j < nodes; j++) cell.toHeat[j] = cell.toHeat[j]! + rest[i]! * cell.like[i * nodes + j]!
    moved = Math.max(moved, apart(peaked(cell.toHeat), was))
  }
  for (const cell of cells) {
    const others = product(
      nodes,
      heats[cell.heat]!.map(({ toHeat }) => toHeat),
      cell.toHeat,
    )
    cell.toLn.fill(0)
    for (let i = 0; i < LN_NODES; i++)
      for (let j = 0; j < nodes; j++)
        cell.toLn[i] = cell.toLn[i]! + NORMAL_NODES[j]![1] * others[j]! * cell.like[i * nodes + j]!
    peaked(cell.toLn)
  }
  for (const own of all) {
    const seen = product(
      LN_NODES,
      own.cells.map(({ toLn }) => toLn),
      null,
    )
    own.given.forEach((given, k) => {
      let sum = 0
      for (let i = 0; i < LN_NODES; i++) sum += given[i]! * seen[i]!
      own.toStudio[k] = sum
    })
    peaked(own.toStudio)
  }
  return moved
}

/** The posteriors of each subject's ln factor, in the order of `starts`, and of the studio's. All are sorted by name already. */
export function solved(
  results: readonly TaughtResult[],
  starts: readonly SubjectStart[],
  heats: readonly HeatSeen[],
): { readonly grids: readonly LnGrid[]; readonly studio: LnGrid } {
  const byHeat: Cell[][] = heats.map(() => [])
  const all = starts.map((start, s): SubjectNodes => {
    const ln = lnNodes(start)
    const own = results.filter(({ subject }) => subject === start.subject)
    const cells = heats.flatMap((seen, h) => {
      const mine = own.filter(({ heat }) => heat === seen.heat)
      return mine.length > 0 ? [cellOf(s, h, ln, seen, mine)] : []
    })
    for (const cell of cells) byHeat[cell.heat]!.push(cell)
    const given = STUDIO_LN.map((u) =>
      scaled(Float64Array.from(ln, (value) => normal(value - u - start.mean, start.sd))),
    )
    return { ln, cells, given, toStudio: new Float64Array(STUDIO_NODES).fill(1) }
  })
  const cells = byHeat.flat()
  const rounds = all.length === 1 ? 1 : ROUNDS
  for (let r = 0; r < rounds && cells.length > 0; r++) if (round(all, cells, byHeat) < STILL) break
  const grids = all.map((own): LnGrid => {
    const weight = product(LN_NODES, [before(own, all), ...own.cells.map(({ toLn }) => toLn)], null)
    return { ln: own.ln, weight }
  })
  const studio = product(
    STUDIO_NODES,
    [Float64Array.from(STUDIO_LN, (u) => normal(u, STUDIO_SD)), ...all.map(({ toStudio }) => toStudio)],
    null,
  )
  return { grids, studio: { ln: Float64Array.from(STUDIO_LN), weight: studio } }
}
