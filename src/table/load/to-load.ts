import type { PotToLoad, Risk } from '../../engine/kiln/contract.ts'
import { footOf } from '../fired/foot.ts'
import { zonesAtEnd } from '../forecast/hypothetical-dip.ts'
import { profileOf, widestMm } from '../forecast/shape-inputs.ts'
import type { LoadState } from '../model/load-state.ts'
import { nextCoat, planOf, potsOnTable } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { stepOf } from '../steps/steps.ts'
import { candled, loadsOf } from './loads.ts'

const MIN_MS = 60_000
/** So near to the shelf the outside is its foot; none is taken for a point, mm. */
const ON_GROUND_MM = 0.5
const LEAST_FOOT_MM = 5

/** When the kiln is to go on: as said, else once it is loaded from now on. Table time, ms. */
export function lightingAt(table: Table, now: number): number {
  const { kilnOnAt, loadMin } = table.settings
  return Math.max(kilnOnAt === null ? 0 : kilnOnAt - table.skewMs, now + loadMin * MIN_MS)
}

/** The lid of a jar that goes into the kiln with it. */
const lidOn = (table: Table, jar: PotState): PotState | undefined =>
  potsOnTable(table).find(({ facts }) => facts.lidOf === jar.facts.potId)

/** Whether a lid rides on its jar: it is no thing of its own in the kiln. */
export const rides = (table: Table, { facts }: PotState): boolean =>
  facts.lidOf !== undefined && table.pots[facts.lidOf]?.gone === false

/** Whether all coats of a pot are on, so that it can be for the kiln. */
const isGlazed = (table: Table, pot: PotState): boolean => {
  const plan = planOf(table, pot)
  return plan.length > 0 && !pot.uncounted && nextCoat(pot) >= plan.length
}

/** What keeps a pot out of today's fire: its foot was not checked, or it will be wet when the kiln goes on. */
function notYet(table: Table, load: LoadState, pot: PotState, now: number): PotToLoad['notYet'] {
  if (pot.footSignedAt === undefined) return 'foot'
  if (candled(table, load)) return undefined
  const step = stepOf(table, pot, now)
  return step.is === 'kiln' && step.dry.likely <= lightingAt(table, now) ? undefined : 'wet'
}

interface Run {
  readonly risk: Risk
  readonly marginShelfMl: number
}

/** By pot, with what else it hangs on: the melt is not computed anew with every hit. */
const runs = new WeakMap<PotState, { readonly of: readonly unknown[]; readonly run: Run }>()

/** How likely a pot's glaze comes down to the shelf, and how much of it when its margin is used up, mL. */
export function runOf(table: Table, pot: PotState): Run {
  const of = [table.tiles, table.firing, table.pairs, table.air, table.buckets, table.stacks]
  const kept = runs.get(pot)
  if (kept?.of.every((part, i) => part === of[i])) return kept.run
  const zones = zonesAtEnd(table, pot)
  const room = zones && footOf(table, pot, zones).room
  const run: Run = room
    ? { risk: room.verdict, marginShelfMl: room.marginShelfMl }
    : { risk: 'unknown', marginShelfMl: 0 }
  runs.set(pot, { of, run })
  return run
}

/** What a pot takes up in the kiln, its lid on it, without a slab. */
export function sizeOf(
  table: Table,
  pot: PotState,
): Pick<PotToLoad, 'bellyRadiusMm' | 'footRadiusMm' | 'heightMm'> {
  const { facts } = pot
  const lid = lidOn(table, pot)?.facts
  const onGround = profileOf(facts).outer.filter(({ zMm }) => zMm < ON_GROUND_MM)
  const footMm = Math.max(...onGround.map(({ rMm }) => rMm))
  return {
    bellyRadiusMm: Math.max(widestMm(facts), lid ? widestMm(lid) : 0) / 2,
    footRadiusMm: Math.max(LEAST_FOOT_MM, footMm),
    heightMm: facts.shape.heightMm + (lid ? lid.shape.heightMm - (facts.shape.galleryMm ?? 0) : 0),
  }
}

/** A pot as it goes into the kiln with a load, its lid on it. `now`: table time, ms. */
export function toLoad(table: Table, load: LoadState, pot: PotState, now: number): PotToLoad {
  const lid = lidOn(table, pot)
  const held = notYet(table, load, pot, now) ?? (lid && notYet(table, load, lid, now))
  return {
    id: pot.facts.potId,
    ...sizeOf(table, pot),
    onSlab: pot.slab === true,
    ...runOf(table, pot),
    ...(held ? { notYet: held } : {}),
  }
}

/**
 * Pots for a load: those whose coats are all on, that are in no other load and not kept for a later firing. What keeps one
 * out is said of it.
 */
export function potsForLoad(table: Table, loadId: string): readonly PotState[] {
  const elsewhere = new Set(
    loadsOf(table)
      .filter((load) => load.loadId !== loadId)
      .flatMap(({ things }) => Object.keys(things)),
  )
  const here = table.loads?.[loadId]?.things ?? {}
  return potsOnTable(table).filter(
    (pot) =>
      here[pot.facts.potId] !== undefined ||
      (!rides(table, pot) && !pot.later && isGlazed(table, pot) && !elsewhere.has(pot.facts.potId)),
  )
}

/** Pots of a load that are in no place of it. */
export const potsLeftOut = (table: Table, load: LoadState): readonly PotState[] =>
  potsForLoad(table, load.loadId).filter(({ facts }) => load.things[facts.potId] === undefined)
