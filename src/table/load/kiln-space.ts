import type { KilnFacts } from '../../../shared/load.ts'
import { CLEARANCES, type Kiln } from '../../engine/kiln/contract.ts'
import { type Trouble, troublesAt } from '../../engine/kiln/gaps.ts'
import { SLAB_HIGH_MM } from '../../engine/kiln/items.ts'
import { holeAt } from '../../engine/kiln/riders.ts'
import { type InKiln, type LevelState, type LoadState, levelKey } from '../model/load-state.ts'
import type { Shown } from './level-view.ts'

/** A kiln as the engine has it. */
export const engineKiln = ({ kilnId, chamber, shelves, posts, couple, spyHoles }: KilnFacts): Kiln => ({
  id: kilnId,
  chamber,
  shelves,
  posts,
  thermocouple: couple ?? null,
  spyHoles,
  clearances: CLEARANCES,
})

const sum = (pieces: readonly number[]): number => pieces.reduce((all, one) => all + one, 0)

/** From the underside of a column's first shelf to that of the one at `storey`, mm; half shelves begin over the whole ones. */
function underMm({ kiln, levels }: LoadState, column: InKiln['column'], storey: number): number {
  const below = Object.values(levels).filter(
    (level) =>
      (level.column === column && level.storey < storey) || (column !== 'whole' && level.column === 'whole'),
  )
  const thick = (id: string) => kiln.shelves.find((shelf) => shelf.id === id)?.thickMm ?? 0
  return below.reduce(
    (high, level) => high + thick(level.shelfId) + sum(level.postMm),
    CLEARANCES.firstShelfMm,
  )
}

/** The face of a level above the chamber's floor, and from there to what is over it, mm. */
export function spaceOn(
  load: LoadState,
  level: LevelState,
): { readonly upMm: number; readonly freeMm: number } {
  const { kiln } = load
  const thickMm = kiln.shelves.find(({ id }) => id === level.shelfId)?.thickMm ?? 0
  const upMm = underMm(load, level.column, level.storey) + thickMm
  const open = kiln.chamber.heightMm - CLEARANCES.lidMm - upMm
  return { upMm, freeMm: level.postMm.length > 0 ? sum(level.postMm) : open }
}

/** Two discs about one axis, mm; the height is without a slab. */
type Stands = Pick<Shown, 'xMm' | 'yMm' | 'bellyRadiusMm' | 'footRadiusMm' | 'heightMm' | 'onSlab'>

/** What but its neighbours is against something at its place, the gravest first. */
export const troublesOf = (load: LoadState, level: LevelState, one: Stands): readonly Trouble[] =>
  troublesAt(
    engineKiln(load.kiln),
    { ...level, ...spaceOn(load, level) },
    { ...one, heightMm: one.heightMm + (one.onSlab ? SLAB_HIGH_MM : 0) },
  )

/** Whether a spy hole looks in where the cone set stands; undefined while it stands nowhere. */
export function conesSeen(load: LoadState): boolean | undefined {
  const cones = load.things['~cones']
  const level = cones && load.levels[levelKey(cones)]
  if (!level) return undefined
  const { upMm, freeMm } = spaceOn(load, level)
  return holeAt(engineKiln(load.kiln), { upMm, column: level.column }, freeMm) !== undefined
}
