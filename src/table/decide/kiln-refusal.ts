import type { KilnFacts, ShelfFacts } from '../../../shared/load.ts'
import type { Refusal } from '../model/action.ts'
import { LIMITS, type LimitedField } from '../model/limits.ts'
import { firstWrong } from './check-entry.ts'

/** Why a kiln cannot be as it was typed: field, value and range. */
export function kilnRefusal({ chamber, shelves, posts, couple, spyHoles }: KilnFacts): Refusal | undefined {
  const { heightMm } = chamber
  const [widthMm, depthMm] =
    chamber.kind === 'round' ? [chamber.diameterMm, chamber.diameterMm] : [chamber.widthMm, chamber.depthMm]
  const wrong = firstWrong([
    ['chamberMm', widthMm],
    ['chamberMm', depthMm],
    ['chamberMm', heightMm],
    ...posts.flatMap(({ lengthMm, count }): [LimitedField, number][] => [
      ['postMm', lengthMm],
      ['postCount', count],
    ]),
    ...[...(couple ? [couple] : []), ...spyHoles].flatMap(({ upMm, angleDeg }): [LimitedField, number][] => [
      ['upMm', upMm],
      ['angleDeg', angleDeg],
    ]),
    ['reachMm', couple?.reachMm],
  ])
  if (wrong) return wrong
  if (shelves.length === 0) return { code: 'missing', field: 'shelfCount' }
  const ids = new Set(shelves.map(({ id }) => id))
  if (ids.size < shelves.length) return { code: 'missing', field: 'shelfCount' }
  for (const shelf of shelves) {
    const refusal = shelfRefusal(shelf, chamber.kind, widthMm, depthMm)
    if (refusal) return refusal
  }
  const high = [...(couple ? [couple] : []), ...spyHoles].find(({ upMm }) => upMm > heightMm)
  return high && over('upMm', high.upMm, heightMm)
}

/** A shelf goes into the chamber: its corners into a round one, its sides into a box. */
function shelfRefusal(
  { kind, widthMm, depthMm, thickMm, count }: ShelfFacts,
  chamber: KilnFacts['chamber']['kind'],
  inWidthMm: number,
  inDepthMm: number,
): Refusal | undefined {
  const wrong = firstWrong([
    ['shelfMm', widthMm],
    ['shelfMm', depthMm],
    ['shelfThickMm', thickMm],
    ['shelfCount', count],
  ])
  if (wrong) return wrong
  if (widthMm > inWidthMm) return over('shelfMm', widthMm, inWidthMm)
  const isRound = kind === 'round' || kind === 'halfRound'
  if (isRound) return depthMm === widthMm ? undefined : over('shelfMm', depthMm, widthMm)
  const most =
    chamber === 'round' ? Math.floor(Math.sqrt(Math.max(0, inWidthMm ** 2 - widthMm ** 2))) : inDepthMm
  return depthMm > most ? over('shelfMm', depthMm, most) : undefined
}

const over = (field: LimitedField, value: number, most: number): Refusal => ({
  code: 'out-of-range',
  field,
  facts: { value, least: LIMITS[field].least, most },
})
