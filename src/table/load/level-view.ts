import type { Column, LoadedKind, ShelfFacts } from '../../../shared/load.ts'
import { CLEARANCES } from '../../engine/kiln/contract.ts'
import { gapMm, type Trouble } from '../../engine/kiln/gaps.ts'
import { slabRadiusMm } from '../../engine/kiln/items.ts'
import { inOrder } from '../../engine/kiln/places.ts'
import { POST_RADIUS_MM } from '../../engine/kiln/region.ts'
import type { LevelState, LoadState } from '../model/load-state.ts'
import { thingOf } from '../model/load-things.ts'
import type { Table } from '../model/state.ts'
import { troublesOf } from './kiln-space.ts'
import { thingsOn } from './loads.ts'
import { CONES, TILE } from './specials.ts'
import { runOf, sizeOf } from './to-load.ts'

/** Something on a level as it is drawn: two discs about one axis, mm. */
export interface Shown {
  readonly key: string
  readonly what: LoadedKind
  readonly potId?: string
  /** The pot's number; none of the others. */
  readonly number?: number
  readonly xMm: number
  readonly yMm: number
  readonly bellyRadiusMm: number
  /** What lies on the shelf: a foot, or the slab under it. */
  readonly footRadiusMm: number
  /** Without its slab. */
  readonly heightMm: number
  readonly onSlab: boolean
  /** Its place as it is, or as it would be loaded now; none of a cone set. */
  readonly place?: string
}

/** Two neighbours and what is between them, mm; negative where they would be in each other. */
export interface Gap {
  readonly a: Shown
  /** What it is near to: another thing, else a post. */
  readonly b?: Shown
  readonly post?: { readonly xMm: number; readonly yMm: number }
  readonly mm: number
}

export interface LevelView {
  readonly shelf: ShelfFacts
  readonly things: readonly Shown[]
  /** The nearest two. */
  readonly nearest?: Gap
  /** Those nearer than {@link GAP_MM}, the nearest first. */
  readonly tight: readonly Gap[]
  /** What but a neighbour is against something here, the gravest of each. */
  readonly against: readonly (Trouble & { readonly one: Shown })[]
}

/** Pots stand no nearer to each other, mm. */
export const GAP_MM = CLEARANCES.gapMm
/** Nearer than this, either way, is a touch: nobody sees half a mm. */
export const TOUCH_MM = 0.5
/** The first shelf's underside above the floor, mm. */
export const FIRST_SHELF_MM = CLEARANCES.firstShelfMm
/** A gap that was proposed is not called too small for a thousandth of it. */
const GAP_SLACK_MM = 0.1

const reachOf = (one: Shown): number => Math.max(one.bellyRadiusMm, one.footRadiusMm)

/** Radius of what lies on the shelf of a thing, mm: a foot, the slab under it, a dish. */
export function liesMm(table: Table, key: string, slab: boolean): number {
  const { what, potId } = thingOf(key)
  if (what !== 'pot') return (what === 'tile' ? TILE : CONES).radiusMm
  const pot = table.pots[potId ?? '']
  if (!pot) return 0
  const { footRadiusMm } = sizeOf(table, pot)
  return slab ? slabRadiusMm(footRadiusMm, runOf(table, pot).marginShelfMl) : footRadiusMm
}

/** A level with what stands on it; undefined where its shelf is none of the kiln's. */
export function levelView(table: Table, load: LoadState, level: LevelState): LevelView | undefined {
  const shelf = load.kiln.shelves.find(({ id }) => id === level.shelfId)
  if (!shelf) return undefined
  const bare = thingsOn(load, level).flatMap(([key, { what, potId, xMm, yMm, slab, place }]): Shown[] => {
    const at = { key, what, xMm, yMm, onSlab: slab, ...(place === undefined ? {} : { place }) }
    if (what !== 'pot') {
      const { radiusMm, heightMm } = what === 'tile' ? TILE : CONES
      return [{ ...at, bellyRadiusMm: radiusMm, footRadiusMm: radiusMm, heightMm }]
    }
    const pot = potId === undefined ? undefined : table.pots[potId]
    // What broke before the fire stands nowhere; what is gone since then stood in it.
    if (!pot || potId === undefined || (pot.gone && load.litAt === undefined)) return []
    const footRadiusMm = liesMm(table, key, slab)
    return [{ ...at, ...sizeOf(table, pot), potId, number: pot.facts.number, footRadiusMm }]
  })
  const things = level.loadedAt === undefined ? numbered(level, shelf, bare) : bare
  const gaps: Gap[] = things.flatMap((a, i) => things.slice(i + 1).map((b) => ({ a, b, mm: gapMm(a, b) })))
  const posts = level.postMm.length > 0 ? level.posts : []
  for (const a of things)
    for (const post of posts) {
      const farMm = Math.hypot(a.xMm - post.xMm, a.yMm - post.yMm)
      gaps.push({ a, post, mm: farMm - reachOf(a) - POST_RADIUS_MM })
    }
  gaps.sort((a, b) => a.mm - b.mm)
  return {
    shelf,
    things,
    ...(gaps[0] ? { nearest: gaps[0] } : {}),
    tight: gaps.filter(({ mm }) => mm < GAP_MM - GAP_SLACK_MM),
    against: things.flatMap((one) => {
      const [worst] = troublesOf(load, level, one)
      return worst ? [{ ...worst, one }] : []
    }),
  }
}

/** With the places they would have if the level were loaded now: a cone set has none. */
function numbered(level: LevelState, shelf: ShelfFacts, things: readonly Shown[]): readonly Shown[] {
  const placed = inOrder(
    shelf,
    things.filter(({ what }) => what !== 'cones'),
  ).map((one, i) => ({ ...one, place: `${level.number}.${i + 1}` }))
  return [...placed, ...things.filter(({ what }) => what === 'cones')]
}

/** The nearest spot at which a foot lies on the shelf, 5 mm inside its edge; what is wider stands in its middle. */
export function onShelf(
  shelf: ShelfFacts,
  column: Column,
  footRadiusMm: number,
  at: { readonly xMm: number; readonly yMm: number },
): { readonly xMm: number; readonly yMm: number } {
  const inset = footRadiusMm + CLEARANCES.edgeMm
  const half = shelf.kind === 'halfRound' || shelf.kind === 'halfBox'
  const clamp = (value: number, least: number, most: number): number =>
    least > most ? (least + most) / 2 : Math.min(most, Math.max(least, value))
  const [wide, deep] = [shelf.widthMm / 2 - inset, shelf.depthMm / 2 - inset]
  const xMm = clamp(
    at.xMm,
    half && column === 'right' ? inset : -wide,
    half && column === 'left' ? -inset : wide,
  )
  const yMm = clamp(at.yMm, -deep, deep)
  if (shelf.kind === 'box' || shelf.kind === 'halfBox') return { xMm, yMm }
  const far = Math.hypot(xMm, yMm)
  const most = Math.max(0, shelf.widthMm / 2 - inset)
  if (far <= most) return { xMm, yMm }
  // Along the rim where the cut of a half leaves room, else towards the front or back of the cut.
  const left = Math.sqrt(Math.max(0, most ** 2 - xMm ** 2))
  return half
    ? { xMm: Math.sign(xMm) * Math.min(Math.abs(xMm), most), yMm: clamp(yMm, -left, left) }
    : { xMm: (xMm / far) * most, yMm: (yMm / far) * most }
}
