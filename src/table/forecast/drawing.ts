import type { CoverFacts, Pattern, PotFacts } from '../../../shared/nouns.ts'
import type { OutlinePoint } from '../../engine/contract.ts'
import { halfAt, OVERLAP } from '../model/halves.ts'
import { coatsOn, nextCoat, planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { coverOn, profileOf } from './shape-inputs.ts'

export interface DrawnBand {
  readonly pattern: Pattern
  readonly fromMm: number
  readonly toMm: number
  readonly planned: boolean
  /** Left and right end against the pot's widest radius, -1 to 1; left out, all of it. */
  readonly across?: readonly [number, number]
}

export interface Drawing {
  readonly outer: readonly OutlinePoint[]
  readonly footLineMm: number
  readonly bands: readonly DrawnBand[]
}

const ACROSS = [
  [-1, OVERLAP],
  [-OVERLAP, 1],
] as const

/** A pot to scale with the coats that are on and, where asked, the one that comes next. */
export function drawingOf(table: Table, pot: PotState, next: 'with-next' | 'as-is'): Drawing {
  const bands: DrawnBand[] = []
  const lay = (bucketId: string, cover: CoverFacts, coat: number, planned: boolean) => {
    const pattern = table.buckets[bucketId]?.facts.pattern
    const span = spanOf(pot.facts, cover)
    const half = halfAt(table, pot, coat, cover)
    const across = half === undefined ? {} : { across: ACROSS[half] }
    if (pattern && span) bands.push({ pattern, ...span, planned, ...across })
  }
  for (const dip of coatsOn(pot)) lay(dip.bucketId, dip.cover, dip.coat, false)
  const coming = planOf(table, pot)[nextCoat(pot)]
  if (next === 'with-next' && coming) lay(coming.bucketId, coming.cover, nextCoat(pot), true)
  return { outer: profileOf(pot.facts).outer, footLineMm: pot.facts.shape.footLineMm, bands }
}

/** Stretch of the outside that a coat covers; nothing for a pouring of the inside. */
export function spanOf(pot: PotFacts, cover: CoverFacts): { fromMm: number; toMm: number } | undefined {
  const { footLineMm, heightMm } = pot.shape
  const on = coverOn(pot, cover)
  switch (on.kind) {
    case 'full':
      return { fromMm: footLineMm, toMm: heightMm }
    case 'downTo':
      return { fromMm: Math.max(on.edgeUpMm, footLineMm), toMm: heightMm }
    case 'upTo':
      return { fromMm: footLineMm, toMm: on.edgeUpMm }
    case 'collar':
      return { fromMm: Math.max(footLineMm, heightMm - on.depthMm), toMm: heightMm }
    case 'inside':
      return undefined
  }
}
