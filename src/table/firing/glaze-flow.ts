import type { FiringFacts, TileFacts } from '../../../shared/nouns.ts'
import type { ZoneForecast } from '../../engine/contract.ts'
import { type CoatOnWall, coatsOf, MOST_DOSE_PER_MM } from '../../engine/melt/coats.ts'
import type { Scale } from '../../engine/melt/firing.ts'
import { carriedDose, doseOfTiles, type FlowDose, runOfStripe } from '../../engine/melt/flow-tile.ts'
import type { Table } from '../model/state.ts'
import { lessonOf, type TakenLesson } from '../model/taken.ts'
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
  readonly of: readonly unknown[]
  readonly doses: Map<string, FlowDose | null>
}
const told = new WeakMap<Table['tiles'], Map<string, FlowDose | null>>()
const taught = new WeakMap<Table['tiles'], Kept>()

/** A dose by its key among those kept, or made now. */
function among(doses: Map<string, FlowDose | null>, key: string, make: () => FlowDose | null) {
  let dose = doses.get(key)
  if (dose === undefined) {
    dose = make()
    doses.set(key, dose)
  }
  return dose
}

/** What tiles of a glaze alone, or of it over another, tell for a firing. Null: no tile. */
function ofTiles(
  table: Table,
  glazeId: string,
  underId: string | undefined,
  firing: FiringFacts | undefined,
): FlowDose | null {
  let known = told.get(table.tiles)
  if (!known) {
    known = new Map()
    told.set(table.tiles, known)
  }
  const key = JSON.stringify([glazeId, underId, firing])
  return among(known, key, () => doseOfAll(tilesOf(table, glazeId, underId), firing) ?? null)
}

const overOther = (glazeId: string, underId: string | null): string | undefined =>
  underId === null || underId === glazeId ? undefined : underId

/** Whether a tile of this very glaze, or pair, was read. */
export const hasTile = (table: Table, glazeId: string, underId: string | null): boolean =>
  tilesOf(table, glazeId, overOther(glazeId, underId)).length > 0

/**
 * Flow dose of a glaze where it lies on another (null: on the bare wall) as tiles tell it for a firing, whatever results
 * taught since: of tiles of that very pair, else the larger of the two glazes' own. Null: no tile.
 */
export function toldFlowOf(
  table: Table,
  glazeId: string,
  underId: string | null,
  firing: FiringFacts | undefined = firingOf(table),
): FlowDose | null {
  const other = overOther(glazeId, underId)
  const own = ofTiles(table, glazeId, undefined, firing)
  if (other === undefined) return own
  const pair = ofTiles(table, glazeId, other, firing)
  const under = ofTiles(table, other, undefined, firing)
  return pair ?? (own && under && under.likelyPerMm > own.likelyPerMm ? under : own)
}

const capped = (dosePerMm: number): number => Math.min(MOST_DOSE_PER_MM, dosePerMm)

/**
 * How much wider a lesson's range gets in a firing that none of the kilns opened by then had been planned as; none where
 * one had.
 */
function widened(
  table: Table,
  { at }: TakenLesson,
  firing: FiringFacts | undefined,
): Pick<Scale, 'low' | 'high'> {
  const before = Object.values(table.loads ?? {}).filter(
    ({ openedAt }) => openedAt !== undefined && openedAt <= at,
  )
  const last = before.at(-1)
  if (
    !last ||
    !firing ||
    before.some((load) => load.firing.cone === firing.cone && load.firing.make === firing.make)
  )
    return { low: 1, high: 1 }
  const scale = flowScale(last.firing, firing)
  return scale ? { low: scale.low / scale.likely, high: scale.high / scale.likely } : { low: 1, high: 1 }
}

/** A dose with what the person took of results in it. */
function withLesson(table: Table, dose: FlowDose, lesson: TakenLesson): FlowDose {
  const { low, high } = widened(table, lesson, firingOf(table))
  return {
    ...dose,
    likelyPerMm: capped(dose.likelyPerMm * lesson.factor),
    lowPerMm: capped(dose.likelyPerMm * lesson.low * low),
    highPerMm: capped(dose.likelyPerMm * lesson.high * high),
    carried: dose.carried || high > 1,
    ...(lesson.drip === undefined ? {} : { dripFactor: lesson.drip }),
  }
}

/** A glaze alone with what was taken of it. */
function ownNow(table: Table, glazeId: string): FlowDose | null {
  const own = ofTiles(table, glazeId, undefined, firingOf(table))
  const lesson = lessonOf(table, { bucketId: glazeId })
  return own && lesson ? withLesson(table, own, lesson) : own
}

/** A glaze alone as its pairs without a tile are planned by it: that it runs farther holds for them, that it runs less does not. */
function ownInPairs(table: Table, glazeId: string): FlowDose | null {
  const own = ofTiles(table, glazeId, undefined, firingOf(table))
  const now = ownNow(table, glazeId)
  if (!own || !now) return own
  const dose = now.likelyPerMm > own.likelyPerMm ? now : own
  return { ...dose, dripFactor: Math.max(own.dripFactor, now.dripFactor) }
}

function flowNow(table: Table, glazeId: string, underId: string | null): FlowDose | null {
  const other = overOther(glazeId, underId)
  if (other === undefined) return ownNow(table, glazeId)
  const lesson = lessonOf(table, { bucketId: glazeId, underId: other })
  const told = toldFlowOf(table, glazeId, other)
  if (told && lesson) return withLesson(table, told, lesson)
  return ofTiles(table, glazeId, other, firingOf(table)) ?? ownInPairs(table, glazeId)
}

/**
 * Flow dose of a glaze where it lies on another (null: on the bare wall), for the firing to come, with the lessons that the
 * person took: of tiles of that very pair, else its own. Null: no tile.
 */
export function flowOf(table: Table, glazeId: string, underId: string | null): FlowDose | null {
  const of = [table.firing, table.taken, table.loads]
  let known = taught.get(table.tiles)
  if (!known?.of.every((one, i) => one === of[i])) {
    known = { of, doses: new Map() }
    taught.set(table.tiles, known)
  }
  return among(known.doses, JSON.stringify([glazeId, underId]), () => flowNow(table, glazeId, underId))
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
