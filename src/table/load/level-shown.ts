import { type LevelState, type LoadState, levelKey } from '../model/load-state.ts'
import { type LoadStage, levelsOf } from './loads.ts'

/** The level that is shown: one that is looked at by its key, else the next to be loaded. */
export const levelShown = (load: LoadState, stage: LoadStage, looked?: string): LevelState | undefined =>
  levelsOf(load).find((level) => levelKey(level) === looked) ??
  (stage.is === 'shelf' ? stage.level : undefined)

/** Length of the posts under a level, mm; 0 where it is on stilts. Half shelves begin over the whole ones. */
export function postsUnderMm({ levels }: LoadState, { column, storey }: LevelState): number {
  const whole = Object.values(levels).filter((level) => level.column === 'whole')
  const top = whole.toSorted((a, b) => b.storey - a.storey)[0]
  const below = levels[levelKey({ column, storey: storey - 1 })] ?? (column === 'whole' ? undefined : top)
  return below?.postMm.reduce((sum, one) => sum + one, 0) ?? 0
}
