/** How a zone's coats stand against the limits: fine, close or over. */

import { between } from '../check.ts'
import type { ZoneForecast } from '../contract.ts'

/** Thickest raw coats, mm: of all together, and of single glazes by their id. */
export interface Limits {
  readonly stackMm: number
  readonly glazeMm: Readonly<Record<string, number>>
}

export type Grade = 'fine' | 'close' | 'over'

export interface ZoneGrade {
  readonly grade: Grade
  readonly zone: ZoneForecast
  /** What passes or comes nearest: the limit, what it is of (a glaze's id, or the stack), and how much there is. */
  readonly of: string | 'stack'
  readonly limitMm: number
  readonly likelyMm: number
  readonly upperMm: number
}

const RANK: Record<Grade, number> = { fine: 0, close: 1, over: 2 }

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
