import type { PotFacts } from '../../../shared/nouns.ts'
import { collarPour, HAND_MM } from '../../engine/bucket/collar.ts'
import { widestRadiusMm } from '../../engine/shape/areas.ts'
import { pressurePa } from '../forecast/air-inputs.ts'
import { profileOf } from '../forecast/shape-inputs.ts'
import type { Table } from '../model/state.ts'

/** A collar that waits for a pour. */
export interface Collar {
  readonly potId: string
  readonly depthMm: number
}

/** A collar vessel to be filled: litres to pour and the level before the pot goes in. */
export interface Decant {
  readonly litres: number
  readonly levelMm: number
  /** The room's own, a wider one that this rim needs, or a jug to pour from where no vessel as wide as its bucket takes it. */
  readonly vessel: 'own' | 'jug' | { readonly wideMm: number }
}

/** Rim to the vessel's floor at the deepest, mm. Assumption. */
const FLOOR_GAP_MM = 10
/** A collar vessel is low and straight; higher than any collar and gap. Assumption. */
const VESSEL_HIGH_MM = 400

/** Rims wider than any vessel have their collar poured from a jug of this much, litres. Assumption. */
const JUG_LITRES = 0.5

/** Enough for the one among these collars that needs most, in one vessel that takes them all. */
export function mostDecant(table: Table, bucketId: string, collars: readonly Collar[]): Decant | undefined {
  const bucket = table.buckets[bucketId]
  if (!bucket) return undefined
  const rims = collars.flatMap(({ potId, depthMm }) => {
    const facts = table.pots[potId]?.facts
    return facts ? [{ facts, depthMm: Math.min(depthMm, facts.shape.heightMm) }] : []
  })
  const { collarVesselMm } = table.settings
  const needsMm = Math.max(0, ...rims.map(vesselFor))
  if (needsMm > Math.max(collarVesselMm, bucket.facts.insideMm))
    return { litres: JUG_LITRES, levelMm: 0, vessel: 'jug' }
  const wideMm = Math.max(collarVesselMm, needsMm)
  const vessel = needsMm > collarVesselMm ? { wideMm } : ('own' as const)
  return rims
    .map((rim) => ({ ...decantFor(table, rim, wideMm, bucket.gramsPerMl), vessel }))
    .sort((a, b) => b.litres - a.litres)[0]
}

interface Rim {
  readonly facts: PotFacts
  readonly depthMm: number
}

/** Inside of the narrowest vessel that this rim goes into by hand, mm, to the centimetre. */
function vesselFor({ facts, depthMm }: Rim): number {
  const { heightMm } = facts.shape
  const widest = widestRadiusMm(profileOf(facts), heightMm - depthMm, heightMm)
  return Math.ceil((widest + HAND_MM) / 5) * 10
}

/** What to pour into a vessel so that this rim goes in. */
function decantFor(table: Table, { facts, depthMm }: Rim, wideMm: number, gramsPerMl: number) {
  const pour = collarPour({
    vessel: { heightMm: VESSEL_HIGH_MM, floorWideMm: wideMm, mouthWideMm: wideMm },
    profile: profileOf(facts),
    collarMm: depthMm,
    floorGapMm: FLOOR_GAP_MM,
    gramsPerMl,
    pressurePa: pressurePa(table),
    takesMl: 0,
  })
  return { litres: pour.pourMl / 1000, levelMm: pour.lineMm }
}
