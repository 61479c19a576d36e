import type { PotFacts } from '../../shared/nouns.ts'
import { collarPour } from '../engine/collar.ts'
import type { Collar, Decant } from './card.ts'
import { pressurePa, profileOf } from './clay.ts'
import type { Table } from './state.ts'

/** Rim to the vessel's floor at the deepest, mm. Assumption. */
const FLOOR_GAP_MM = 10
/** A collar vessel is low and straight; higher than any collar and gap. Assumption. */
const VESSEL_HIGH_MM = 400

/** Enough for the one among these collars that needs most. */
export function mostDecant(table: Table, bucketId: string, collars: readonly Collar[]): Decant | undefined {
  const bucket = table.buckets[bucketId]
  if (!bucket) return undefined
  return collars
    .flatMap(({ potId, depthMm }) => {
      const pot = table.pots[potId]
      return pot ? [decantFor(table, pot.facts, depthMm, bucket.gramsPerMl)] : []
    })
    .sort((a, b) => b.litres - a.litres)[0]
}

/** What to pour into the collar vessel so that this rim goes in `depthMm` deep. */
function decantFor(table: Table, pot: PotFacts, depthMm: number, gramsPerMl: number): Decant {
  const wideMm = table.settings.collarVesselMm
  const pour = collarPour({
    vessel: { heightMm: VESSEL_HIGH_MM, floorWideMm: wideMm, mouthWideMm: wideMm },
    profile: profileOf(pot),
    collarMm: Math.min(depthMm, pot.shape.heightMm),
    floorGapMm: FLOOR_GAP_MM,
    gramsPerMl,
    pressurePa: pressurePa(table),
    takesMl: 0,
  })
  return { litres: pour.pourMl / 1000, levelMm: pour.lineMm, narrow: pour.misfit === 'narrow' }
}
