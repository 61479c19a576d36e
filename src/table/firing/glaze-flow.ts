import type { FiringFacts, TileFacts } from '../../../shared/nouns.ts'
import type { ZoneForecast } from '../../engine/contract.ts'
import { type CoatOnWall, coatsOf } from '../../engine/melt/coats.ts'
import { carriedDose, doseOfTiles, type FlowDose, runOfStripe } from '../../engine/melt/flow-tile.ts'
import type { Table } from '../model/state.ts'
import { firingOf, flowScale, sameFiring } from './firing.ts'
import { tilesOf } from './tiles.ts'

/** Tiles that were fired alike: one at least. */
interface FiredAlike {
  readonly firing: FiringFacts
  readonly tiles: TileFacts[]
}

/** One dose from tiles that were fired alike, carried over to the planned firing where that is another one. */
function doseOfGroup({ firing, tiles }: FiredAlike, planned: FiringFacts): FlowDose | undefined {
  const dose = doseOfTiles(tiles.map(({ stripes }) => ({ cone: firing.cone, make: firing.make, stripes })))
  if (sameFiring(firing, planned)) return dose
  const scale = flowScale(firing, planned)
  return scale && carriedDose(dose, scale)
}

const spread = (dose: FlowDose): number => dose.highPerMm / dose.lowPerMm

/** The dose of these tiles in a firing: of those fired that very way, else the narrowest that is carried over. */
export function doseOfAll(
  tiles: readonly TileFacts[],
  planned: FiringFacts | undefined,
): FlowDose | undefined {
  const groups: FiredAlike[] = []
  for (const tile of tiles) {
    const alike = groups.find(({ firing }) => sameFiring(firing, tile.firing))
    if (alike) alike.tiles.push(tile)
    else groups.push({ firing: tile.firing, tiles: [tile] })
  }
  const doses = groups.flatMap((group) => doseOfGroup(group, planned ?? group.firing) ?? [])
  return doses.sort((a, b) => Number(a.carried) - Number(b.carried) || spread(a) - spread(b))[0]
}

interface Kept {
  readonly firing: FiringFacts | undefined
  readonly doses: Map<string, FlowDose | undefined>
}
const kept = new WeakMap<Table['tiles'], Kept>()

function doseAmong(table: Table, bucketId: string, underId: string | undefined): FlowDose | undefined {
  let known = kept.get(table.tiles)
  if (known?.firing !== table.firing || !known) {
    known = { firing: table.firing, doses: new Map() }
    kept.set(table.tiles, known)
  }
  const key = JSON.stringify([bucketId, underId])
  if (!known.doses.has(key))
    known.doses.set(key, doseOfAll(tilesOf(table, bucketId, underId), firingOf(table)))
  return known.doses.get(key)
}

/**
 * Flow dose of a glaze where it lies on another (null: on the bare wall), for the firing to come: of tiles of that
 * very pair, else its own. Null: no tile.
 */
export function flowOf(table: Table, glazeId: string, underId: string | null): FlowDose | null {
  const pair = underId === null || underId === glazeId ? undefined : doseAmong(table, glazeId, underId)
  return pair ?? doseAmong(table, glazeId, undefined) ?? null
}

/** A dry coat to tell a dose by, mm: an ordinary dip. Common practice, no source. */
export const TELLING_MM = 0.5

/** A stripe so high that its upper edge never draws on it, mm. */
const ENDLESS_MM = 500

/** How far a lone dry coat of this thickness runs down an upright wall at a dose, mm. */
export const runAt = (dosePerMm: number, dryMm: number): number => runOfStripe(dosePerMm, dryMm, ENDLESS_MM)

/** How much farther than the mean front the worst drip goes where no tile says it. */
const USUAL_DRIP = 2

export interface MeltCoats {
  readonly coats: readonly CoatOnWall[]
  /** The worst drip factor of the tiles behind these doses. */
  readonly marginFactor: number
  /** A dose comes from tiles of another firing: a new tile is due. */
  readonly carried: boolean
}

/** Coats of a forecast as the melt sees them, with the doses of this table's tiles. */
export function meltCoats(table: Table, zones: readonly ZoneForecast[]): MeltCoats {
  const used: FlowDose[] = []
  const coats = coatsOf(zones, (glazeId, underId) => {
    const dose = flowOf(table, glazeId, underId)
    if (dose) used.push(dose)
    return dose
  })
  return {
    coats,
    marginFactor: used.length === 0 ? USUAL_DRIP : Math.max(...used.map(({ dripFactor }) => dripFactor)),
    carried: used.some(({ carried }) => carried),
  }
}
