import type { CoverFacts, PotFacts } from '../../../shared/nouns.ts'
import type { Cover, Profile } from '../../engine/contract.ts'
import { outlineOf } from '../../engine/shape/outline.ts'
import { skirtTopMm } from '../../engine/shape/zones.ts'
import { SIDE_PART } from '../model/halves.ts'
import type { Table } from '../model/state.ts'

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
