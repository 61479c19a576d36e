import type { ConeMake, FiringFacts, KilnReading } from '../../../shared/nouns.ts'
import type { ConeFigure, ConeSeries } from '../../engine/melt/cone-table.ts'
import {
  coneEquivalents,
  conesOf,
  coneTemp,
  nextCone,
  type ParsedCone,
  parseCone,
  queryTemp,
  type TempQuery,
  USUAL_CONES,
} from '../../engine/melt/cones.ts'
import {
  type ConeReached,
  coneOfLog,
  doseScale,
  type Firing,
  firingToCone,
  type Scale,
} from '../../engine/melt/firing.ts'
import { LEAST_READINGS } from '../model/cone.ts'
import type { Table } from '../model/state.ts'

export { type ParsedCone, parseCone }

export const MAKES: readonly ConeMake[] = ['american', 'seger']

/** What a firing is where nobody said: 60 degC/h is the middle column of the cone chart. */
export const USUAL_FIRING: FiringFacts = { cone: '6', make: 'american', riseCPerH: 60, holdMin: 0 }

const seriesOf = (make: ConeMake): ConeSeries =>
  make === 'american' ? USUAL_CONES : { make, mounting: 'unstated' }

/** The glaze firing to come: as said, else as the latest flow tile was fired. */
export const firingOf = (table: Table): FiringFacts | undefined =>
  table.firing ?? Object.values(table.tiles).at(-1)?.firing

/** Where the cone of a firing falls at its own rise, degC; `sure` is false beyond the chart's rates. */
export function endOf({ cone, make, riseCPerH }: FiringFacts): { tempC: number; sure: boolean } | undefined {
  const end = coneTemp(cone, seriesOf(make), riseCPerH)
  return end ? { tempC: end.tempC, sure: !end.beyondChart } : undefined
}

/** Where the same cone falls at the charted rises next to that of a firing: the slower and the faster one, if any. */
export function besideRise({ cone, make, riseCPerH }: FiringFacts): readonly ConeFigure[] {
  const { mounting } = seriesOf(make)
  const rates = coneEquivalents(cone, make)
    .filter((row) => row.mounting === mounting && row.rateCPerH !== null)
    .toSorted((a, b) => (a.rateCPerH ?? 0) - (b.rateCPerH ?? 0))
  const slower = rates.findLast(({ rateCPerH }) => (rateCPerH ?? 0) < riseCPerH)
  const faster = rates.find(({ rateCPerH }) => (rateCPerH ?? 0) > riseCPerH)
  return [slower, faster].filter((row) => row !== undefined)
}

/** A top temperature that doesn't belong to the firing's cone; undefined where none was given or it fits. */
export const topQuery = ({ topC, cone, make, riseCPerH }: FiringFacts): TempQuery | undefined =>
  topC === undefined ? undefined : (queryTemp(topC, cone, seriesOf(make), riseCPerH) ?? undefined)

/** The same firing one cone hotter; undefined at the top of the series. */
export function oneOver(firing: FiringFacts): FiringFacts | undefined {
  const cone = nextCone(firing.cone, seriesOf(firing.make))
  return cone === null ? undefined : { ...firing, cone }
}

/** The cone before that of a firing, half cones skipped; undefined at the bottom of the series. */
export function coneUnder({ cone, make }: FiringFacts): string | undefined {
  const all = conesOf(make, seriesOf(make).mounting)
  return all.slice(0, Math.max(0, all.indexOf(cone))).findLast((one) => !one.endsWith('.5'))
}

function heatOf(firing: FiringFacts): Firing | null {
  const { cone, make, riseCPerH, holdMin } = firing
  const heat = firingToCone(cone, seriesOf(make), riseCPerH)
  return heat && { ...heat, holdMin }
}

/** Whether a tile of one firing speaks for the other without being carried over. */
export const sameFiring = (a: FiringFacts, b: FiringFacts): boolean =>
  a.cone === b.cone && a.make === b.make && a.riseCPerH === b.riseCPerH && a.holdMin === b.holdMin

/** How much more a glaze flows in the planned firing than in the tested one. Undefined for a cone of no series. */
export function flowScale(tested: FiringFacts, planned: FiringFacts): Scale | undefined {
  const [before, after] = [heatOf(tested), heatOf(planned)]
  return before && after ? doseScale(before, after) : undefined
}

/** The cone that a log's heat brought down; undefined for too short a log. */
export const reachedBy = (log: readonly KilnReading[]): ConeReached | undefined =>
  log.length < LEAST_READINGS ? undefined : coneOfLog(log)

const READING = /^(\d{1,2})[:.](\d{2})\s+(\d{2,4})\s*(°?\s*[cf])?$/iu
const DAY_MIN = 24 * 60

/**
 * Readings as they stand in a firing book: "14:00 1050, 15:10 1160 C". A clock that falls has passed midnight.
 * Undefined when a part of it can't be read. `usual` is the unit of a bare number.
 */
export function readLog(text: string, usual: 'C' | 'F'): readonly KilnReading[] | undefined {
  const log: KilnReading[] = []
  let first: number | undefined
  let before = 0
  for (const part of text.split(/[,;\n]+/)) {
    if (part.trim() === '') continue
    const found = READING.exec(part.trim())
    if (!found) return undefined
    const [, hour, minute, number, unit] = found
    if (Number(hour) > 23 || Number(minute) > 59) return undefined
    let at = Number(hour) * 60 + Number(minute)
    while (at < before) at += DAY_MIN
    before = at
    first ??= at
    const fahrenheit = (unit ?? usual).toUpperCase().endsWith('F')
    log.push({ atMin: at - first, tempC: fahrenheit ? (Number(number) - 32) / 1.8 : Number(number) })
  }
  return log
}
