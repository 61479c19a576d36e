/** How a zone's coats stand against the limits: fine, close or over. */

import { between } from '../check.ts'
import type { ZoneForecast } from '../contract.ts'

/** One glaze straight on another, and the thickest that both together may be, mm. */
export interface PairLimit {
  readonly over: string
  readonly under: string
  readonly limitMm: number
}

/** Thickest raw coats, mm: of all together, of single glazes by their id, and of pairs where less was found to crawl. */
export interface Limits {
  readonly stackMm: number
  readonly glazeMm: Readonly<Record<string, number>>
  readonly pairs?: readonly PairLimit[]
}

export type Grade = 'fine' | 'close' | 'over'

export interface ZoneGrade {
  readonly grade: Grade
  readonly zone: ZoneForecast
  /** What passes or comes nearest: the limit, what it is of (a glaze's id, a pair's, or the stack), and how much there is. */
  readonly of: string | 'stack'
  readonly limitMm: number
  readonly likelyMm: number
  readonly upperMm: number
}

const RANK: Record<Grade, number> = { fine: 0, close: 1, over: 2 }

/** Whether a coat of one glaze lies straight on one of another. `coats` in the order they were put on. */
export const liesOn = (
  coats: readonly { readonly glazeId: string }[],
  over: string,
  under: string,
): boolean => coats.some(({ glazeId }, i) => glazeId === over && coats[i - 1]?.glazeId === under)

/** A zone against its limits: over when the likely figure passes one, close when the upper does. */
export function gradeZone(zone: ZoneForecast, limits: Limits): ZoneGrade {
  between('stackMm', limits.stackMm, 0, 50)
  const sums = new Map<string, { likelyMm: number; upperMm: number; limitMm: number }>()
  sums.set('stack', { likelyMm: zone.likelyMm, upperMm: zone.upperMm, limitMm: limits.stackMm })
  for (const coat of zone.coats) {
    const limitMm = limits.glazeMm[coat.glazeId]
    if (limitMm === undefined) continue
    const sum = sums.get(coat.glazeId) ?? {
      likelyMm: 0,
      upperMm: 0,
      limitMm: between('glazeMm', limitMm, 0, 50),
    }
    sum.likelyMm += coat.likelyMm
    sum.upperMm += coat.upperMm
    sums.set(coat.glazeId, sum)
  }
  for (const { over, under, limitMm } of limits.pairs ?? [])
    if (liesOn(zone.coats, over, under)) {
      const both = zone.coats.filter(({ glazeId }) => glazeId === over || glazeId === under)
      const sum = (of: 'likelyMm' | 'upperMm') => both.reduce((mm, coat) => mm + coat[of], 0)
      const pair = { likelyMm: sum('likelyMm'), upperMm: sum('upperMm') }
      sums.set(`${over} over ${under}`, { ...pair, limitMm: between('limitMm', limitMm, 0, 50) })
    }
  let worst: ZoneGrade | undefined
  for (const [of, { likelyMm, upperMm, limitMm }] of sums) {
    const grade: Grade = likelyMm > limitMm ? 'over' : upperMm > limitMm ? 'close' : 'fine'
    const now: ZoneGrade = { grade, zone, of, limitMm, likelyMm, upperMm }
    if (
      worst === undefined ||
      RANK[grade] > RANK[worst.grade] ||
      (grade === worst.grade && likelyMm / limitMm > worst.likelyMm / worst.limitMm)
    )
      worst = now
  }
  return worst!
}

/** The worst zone of a pot. RangeError for a pot without zones. */
export function worstZone(zones: readonly ZoneForecast[], limits: Limits): ZoneGrade {
  const grades = zones.map((zone) => gradeZone(zone, limits))
  const worst = grades.reduce<ZoneGrade | undefined>(
    (best, grade) =>
      best === undefined ||
      RANK[grade.grade] > RANK[best.grade] ||
      (grade.grade === best.grade && grade.likelyMm / grade.limitMm > best.likelyMm / best.limitMm)
        ? grade
        : best,
    undefined,
  )
  if (!worst) throw new RangeError('zones is empty: must hold at least one zone')
  return worst
}
