/** Cones: reading what was typed, their order, end points by rate, and temperatures that disagree with a cone. */

import { between } from '../check.ts'
import {
  CONE_FIGURES,
  type ConeFigure,
  type ConeMake,
  type ConeMark,
  type ConeMounting,
  type ConeSeries,
} from './cone-table.ts'

export type ParsedCone =
  | { readonly ok: true; readonly cone: string }
  /** `otherMake`: a cone of the other series. `accepted` are the labels of this make, coolest first. */
  | {
      readonly ok: false
      readonly code: 'notACone' | 'otherMake'
      readonly accepted: readonly string[]
    }

/** End point at a rate. `beyondChart`: the rate lies outside the charted ones, or the list states none. */
export interface ConeTemp {
  readonly tempC: number
  readonly mark: ConeMark
  readonly beyondChart: boolean
}

export interface NearestCone extends ConeTemp {
  readonly cone: string
  /** The temperature asked about less the cone's end point, K. */
  readonly overC: number
}

/** A temperature that does not belong to the cone it was given with. Nothing is changed: it is for asking. */
export interface TempQuery {
  readonly cone: string
  readonly typedC: number
  readonly coneTempC: number
  readonly nearest: string
  readonly beyondChart: boolean
}

const MARKS: readonly ConeMark[] = ['chart', 'list', 'memory']
const weaker = (a: ConeMark, b: ConeMark): ConeMark => (MARKS.indexOf(a) > MARKS.indexOf(b) ? a : b)

/** Past this a typed temperature is asked about even when no other cone is nearer, K (tuned: a wide step). */
const FAR_C = 25
/** No kiln of the trade rises faster, degC/h (assumption); the floor only keeps the logarithm finite. */
export const RATE_C_PER_H = { above: 0, below: 3000 } as const

/** The default series of the trade where none is named: self-supporting cones of the American make. */
export const USUAL_CONES: ConeSeries = { make: 'american', mounting: 'selfSupporting' }

/** Labels of a series, coolest first. Empty when the make has no such mounting. */
export function conesOf(make: ConeMake, mounting?: ConeMounting): readonly string[] {
  const of = CONE_FIGURES.filter((f) => f.make === make && (!mounting || f.mounting === mounting))
  return [...new Set(of.map((f) => f.cone))]
}

/**
 * The cone that was typed or spoken: '06', 'cone 6', '5 1/2', '5½', 'o4'. '06' and '6' are different cones, and
 * makes are different cones too, so the make must be asked. A text that is no cone is a value, not an exception.
 */
export function parseCone(text: string, make: ConeMake): ParsedCone {
  const label = text
    .trim()
    .toLowerCase()
    .replace(/^(cone|c\/|sk|c|[△∆^#])\s*/, '')
    .replace(/\s*(½|(?<=\s)1\/2|[.,]5)$/, '.5')
    .replace(/^o(?=\d)/, '0')
    .replace(/(?<=\d)[.,]0$/, '')
  const accepted = conesOf(make)
  if (accepted.includes(label)) return { ok: true, cone: label }
  const other = conesOf(make === 'american' ? 'seger' : 'american').includes(label)
  return { ok: false, code: other ? 'otherMake' : 'notACone', accepted }
}

function orderOf(cone: string): { readonly number: number; readonly lettered: boolean } {
  const match = /^(0?)(\d{1,2}(?:\.5)?)(a?)$/.exec(cone)
  if (!match || Number(match[2]) === 0)
    throw new RangeError(`cone is ${cone}: must be a label such as 022, 06 or 6`)
  return { number: (match[1] ? -1 : 1) * Number(match[2]), lettered: match[3] === 'a' }
}

/** Below 0 when cone `a` falls before cone `b` of the same make: 022 < 06 < 05.5 < 01 < 1 < 10. */
export function compareCones(a: string, b: string): number {
  return orderOf(a).number - orderOf(b).number
}

const figuresOf = (cone: string, { make, mounting }: ConeSeries): ConeFigure[] =>
  CONE_FIGURES.filter((f) => f.cone === cone && f.make === make && f.mounting === mounting)

/**
 * End point of `cone`, degC, for a rise of `rateCPerH` over the last 100 degC: linear in the logarithm of the rate
 * between the charted ones, the nearest column beyond them. Null when this series has no such cone.
 */
export function coneTemp(cone: string, series: ConeSeries, rateCPerH: number): ConeTemp | null {
  orderOf(cone)
  between('rateCPerH', rateCPerH, RATE_C_PER_H.above, RATE_C_PER_H.below)
  const figures = figuresOf(cone, series)
  const above = figures.findIndex((f) => f.rateCPerH !== null && f.rateCPerH >= rateCPerH)
  const upper = figures[above]
  const lower = figures[above - 1]
  if (upper?.rateCPerH === rateCPerH) return { tempC: upper.tempC, mark: upper.mark, beyondChart: false }
  const end = upper ?? figures[figures.length - 1]
  if (!end) return null
  if (!upper?.rateCPerH || !lower?.rateCPerH) return { tempC: end.tempC, mark: end.mark, beyondChart: true }
  const share = Math.log(rateCPerH / lower.rateCPerH) / Math.log(upper.rateCPerH / lower.rateCPerH)
  return {
    tempC: lower.tempC + share * (upper.tempC - lower.tempC),
    mark: weaker(lower.mark, upper.mark),
    beyondChart: false,
  }
}

/** The same cone at every charted rate and mounting of its make, for a table of equivalents. */
export function coneEquivalents(cone: string, make: ConeMake): readonly ConeFigure[] {
  orderOf(cone)
  return CONE_FIGURES.filter((f) => f.cone === cone && f.make === make)
}

/** The cone one step hotter in this series (half cones skipped), or null at the top. */
export function nextCone(cone: string, series: ConeSeries): string | null {
  const hotter = conesOf(series.make, series.mounting).find(
    (c) => compareCones(c, cone) > 0 && !c.endsWith('.5'),
  )
  return hotter ?? null
}

/** The cone whose end point at this rate is nearest to `tempC` (100 to 1500 degC); null for an empty series. */
export function nearestCone(tempC: number, series: ConeSeries, rateCPerH: number): NearestCone | null {
  between('tempC', tempC, 100, 1500)
  let nearest: NearestCone | null = null
  for (const cone of conesOf(series.make, series.mounting)) {
    const end = coneTemp(cone, series, rateCPerH)
    if (!end) continue
    const overC = tempC - end.tempC
    if (!nearest || Math.abs(overC) < Math.abs(nearest.overC)) nearest = { cone, overC, ...end }
  }
  return nearest
}

/**
 * A temperature typed beside a cone: null when they go together, else what to ask. Half cones next to the cone
 * count as agreeing. Neither the temperature nor the cone is ever changed here.
 */
export function queryTemp(
  typedC: number,
  cone: string,
  series: ConeSeries,
  rateCPerH: number,
): TempQuery | null {
  const end = coneTemp(cone, series, rateCPerH)
  const nearest = nearestCone(typedC, series, rateCPerH)
  if (!end || !nearest) return null
  const same = Math.abs(compareCones(nearest.cone, cone)) <= 0.5
  if (same && Math.abs(typedC - end.tempC) <= FAR_C) return null
  return { cone, typedC, coneTempC: end.tempC, nearest: nearest.cone, beyondChart: end.beyondChart }
}
