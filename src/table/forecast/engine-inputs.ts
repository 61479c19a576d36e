import type {
  AirFacts,
  BoardFacts,
  BucketFacts,
  CoverFacts,
  Draught,
  PotFacts,
} from '../../../shared/nouns.ts'
import { pressureAtAltitudePa } from '../../engine/air/vapour.ts'
import type { Air, Body, Cover, Profile, Slop } from '../../engine/contract.ts'
import { outlineOf } from '../../engine/shape/outline.ts'
import { skirtTopMm } from '../../engine/shape/zones.ts'
import { clingsAt } from '../../engine/slop/film.ts'
import { nearestSlop } from '../../engine/slop/slop.ts'
import { bisqueOf } from '../../engine/wall/body.ts'
import { type PickUp, pinPickUp } from '../../engine/wall/calibrate.ts'
import { DEFAULT_AIR } from '../model/defaults.ts'
import { SIDE_PART } from '../model/halves.ts'
import type { AirSpell, BucketState, Table } from '../model/state.ts'

/** Air speed at the pots by how it feels, m/s; assumptions bracketed by indoor-air practice. */
const SPEED_MPS: Record<Draught, number> = { still: 0.08, room: 0.15, window: 0.5, fan: 1.5, fanClose: 3 }

/** The day's air in the engine's units. */
export const airOf = (facts: AirFacts): Air => ({
  tempC: facts.tempC,
  rh: facts.rh,
  speedMps: SPEED_MPS[facts.draught],
  pressurePa: pressureAtAltitudePa(facts.altitudeM ?? 0),
  ...(facts.cloth ? { factor: facts.cloth.factor } : {}),
})

/** Pressure of the air that was noted last, Pa. */
export const pressurePa = (table: Table): number => airOf(table.air.at(-1)?.air ?? DEFAULT_AIR).pressurePa

/** The air at a moment: the last said before it, else the first said at all, else an ordinary room. */
export function airAt(spells: readonly AirSpell[], at: number): AirFacts {
  let air = spells[0]?.air ?? DEFAULT_AIR
  for (const spell of spells) if (spell.at <= at) air = spell.air
  return air
}

const profiles = new WeakMap<PotFacts['shape'], Profile>()
/** By the measures: alike pots share one. */
const alike = new Map<string, Profile>()
const ALIKE_KEPT = 100

/** Outline of a pot, kept per shape. */
export function profileOf(pot: PotFacts): Profile {
  let profile = profiles.get(pot.shape)
  if (!profile) {
    const measures = JSON.stringify(pot.shape)
    profile = alike.get(measures) ?? outlineOf(pot.shape)
    if (alike.size >= ALIKE_KEPT) alike.clear()
    alike.set(measures, profile)
    profiles.set(pot.shape, profile)
  }
  return profile
}

/** The clay of a pot, or of the board, as the engine takes it. */
export function bodyOf({ board }: Table, pot?: PotFacts): Body {
  const { absorption, sorptivityMmPerSqrtS } = board
  const dipped = sorptivityMmPerSqrtS === undefined ? undefined : { absorption, sorptivityMmPerSqrtS }
  return bisqueOf(pot?.absorption ?? absorption, dipped)
}

const pins = new WeakMap<BucketFacts, { readonly board: BoardFacts; readonly pickUp: PickUp | undefined }>()

/** What the scratch of a bucket says of its pick-up, on the board's own clay; undefined without one. */
export function pickUpOfPin(table: Table, facts: BucketFacts): PickUp | undefined {
  if (facts.pinMm === undefined) return undefined
  const before = pins.get(facts)
  if (before?.board === table.board) return before.pickUp
  const slip = nearestSlop(facts.targetGramsPerMl, facts.solidsGravity)
  let pickUp: PickUp | undefined
  try {
    pickUp = pinPickUp(slip, facts.pinMm, bodyOf(table))
  } catch (error) {
    // Clay that the tile would fill, or a coat thinner than its film: such a scratch says nothing.
    if (!(error instanceof RangeError)) throw error
  }
  pins.set(facts, { board: table.board, pickUp })
  return pickUp
}

/** What clings of this slip, from the slide that was weighed at the bucket's target; nothing without one. */
function clinging(slip: Slop, facts: BucketFacts): Pick<Slop, 'clingsGramsPerCm2'> {
  const { clingsGramsPerCm2: weighed, targetGramsPerMl, solidsGravity } = facts
  if (weighed === undefined) return {}
  const target = nearestSlop(targetGramsPerMl, solidsGravity).gramsPerMl
  return { clingsGramsPerCm2: Math.min(MOST_CLINGS, clingsAt(slip, weighed, target)) }
}

/** The engine takes no heavier film, g/cm2. */
const MOST_CLINGS = 1

/** The slip of a bucket at a density, as the person's own scratch and slide say where there are any. */
export function slopOf(table: Table, { facts }: BucketState, gramsPerMl: number): Slop {
  const slip = nearestSlop(gramsPerMl, facts.solidsGravity)
  const pickUp = pickUpOfPin(table, facts)
  return {
    ...slip,
    ...(pickUp ? { pickUpFactor: pickUp.factor, pickUpSd: pickUp.sd } : {}),
    ...clinging(slip, facts),
  }
}

/** A coat's cover on this very pot. A full dip of a pot whose inside was poured reaches the outside only. */
export function coverOn(pot: PotFacts, cover: CoverFacts): Cover {
  switch (cover.kind) {
    case 'toSkirt':
      return { kind: 'downTo', edgeUpMm: skirtTopMm(profileOf(pot)) }
    case 'full':
      return pot.pourInsideFirst ? { kind: 'upTo', edgeUpMm: pot.shape.heightMm } : cover
    case 'downTo':
    case 'upTo':
      return { kind: cover.kind, edgeUpMm: Math.min(cover.edgeUpMm, pot.shape.heightMm) }
    case 'collar':
      return { kind: 'collar', depthMm: Math.min(cover.depthMm, pot.shape.heightMm) }
    case 'inside':
      return cover
    // As if all round: `halves` says where it reaches.
    case 'side':
      return { kind: 'full' }
  }
}

/** Diameter at the widest, mm. */
export const widestMm = ({ shape }: PotFacts): number => Math.max(shape.rimMm, shape.bellyMm ?? 0)

/** Length of wall that goes under, for the time it takes to lower. */
export function immersedMm(pot: PotFacts, cover: CoverFacts): number {
  const on = coverOn(pot, cover)
  if (cover.kind === 'side') return widestMm(pot) * SIDE_PART
  switch (on.kind) {
    case 'downTo':
      return pot.shape.heightMm - on.edgeUpMm
    case 'upTo':
      return on.edgeUpMm
    case 'collar':
      return on.depthMm
    case 'inside':
      return 0
    case 'full':
      return pot.shape.heightMm
  }
}

/** Seconds from the rim's first touch to fully under, at the person's own speed. */
export const lowerS = (table: Table, pot: PotFacts, cover: CoverFacts): number =>
  Math.round((immersedMm(pot, cover) / table.settings.lowerMmPerS) * 10) / 10
