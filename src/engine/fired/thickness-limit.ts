/** How thick a glaze can go on before it crawls, from pots that crawled and pots that held, on a grid of ln h*. */

import { between, inRange } from '../check.ts'
import { normalCdf } from '../numeric/spread.ts'
import { at10, type LnGrid, quantileOf } from './ln-grid.ts'

/** A fired pot at its thickest dry coat of the glaze, mm. */
export interface CrawlSeen {
  readonly id: string
  readonly mm: number
  readonly crawled: boolean
}

export interface ThicknessLimit {
  /** 10, 50 and 90 % points of the thickness at which one pot in two crawls, mm. */
  readonly mm: { readonly low: number; readonly likely: number; readonly high: number }
  /** What is offered as the glaze's limit: four in five that it lies higher, mm. */
  readonly offeredMm: number
  readonly lnSd: number
  readonly results: readonly string[]
}

/** A stated limit against the glaze's own, sd of ln; pots about it; what a coat's thickness is known to. Assumptions. */
const STATED_SD = 0.35
const POT_SD = 0.15
const COAT_SD = 0.12
/** Pots that crawl for another reason than thickness, and thick ones that hold. Assumptions. */
const ODD = 0.015
const NODES = 121
const REACH_SDS = 4
const OFFERED = 0.2

/** Chance that a coat of `mm` crawls where the limit is `limitMm`. */
const crawls = (lnMm: number, lnLimit: number): number =>
  ODD + (1 - 2 * ODD) * normalCdf((lnMm - lnLimit) / Math.hypot(POT_SD, COAT_SD))

/**
 * The limit of a glaze from its stated one (mm dry) and what was seen. The order does not matter. RangeError for a limit or
 * thickness of 0 or less, or past 20 mm.
 */
export function thicknessLimit(statedMm: number, given: readonly CrawlSeen[]): ThicknessLimit {
  between('statedMm', statedMm, 0, 20)
  const seen = given.toSorted((a, b) => (a.id < b.id ? -1 : 1))
  for (const { id, mm } of seen) inRange(`${id}.mm`, mm, 0.001, 20)
  const reach = STATED_SD * REACH_SDS
  const ln = Float64Array.from(
    { length: NODES },
    (_, i) => Math.log(statedMm) + reach * ((2 * i) / (NODES - 1) - 1),
  )
  const weight = ln.map((at) => {
    let log = -0.5 * ((at - Math.log(statedMm)) / STATED_SD) ** 2
    for (const { mm, crawled } of seen) {
      const chance = crawls(Math.log(mm), at)
      log += Math.log(crawled ? chance : 1 - chance)
    }
    return log
  })
  const most = Math.max(...weight)
  let sum = 0
  for (let i = 0; i < NODES; i++) sum += weight[i] = Math.exp(weight[i]! - most)
  let [mean, square] = [0, 0]
  for (let i = 0; i < NODES; i++) {
    weight[i] = weight[i]! / sum
    mean += weight[i]! * ln[i]!
    square += weight[i]! * ln[i]! ** 2
  }
  const grid: LnGrid = { ln, weight }
  return {
    mm: at10(grid),
    offeredMm: Math.exp(quantileOf(grid, OFFERED)),
    lnSd: Math.sqrt(Math.max(0, square - mean * mean)),
    results: seen.map(({ id }) => id),
  }
}
