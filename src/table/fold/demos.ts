import type { Stamped, TableEvent } from '../../../shared/events.ts'

/** Whether a table begins with it. */
const begins = ({ kind }: TableEvent): boolean => BEGINS.has(kind)
const BEGINS = new Set<TableEvent['kind']>([
  'board-set',
  'bucket-set',
  'stack-set',
  'pot-set',
  'tile-read',
  'table-cleared',
])

/**
 * The hits of demos that are not what this phone began with: they were laid on a table that they cleared, or at another phone. `laid`: those that lay one; `back`: hits
 * that were taken back, which were never there.
 */
export function demosBeside(
  laid: readonly Stamped[],
  events: readonly Stamped[],
  back: ReadonlySet<string>,
  isOwn: (stamped: Stamped) => boolean,
): readonly string[] {
  if (laid.length === 0) return []
  const begun = events.find(
    (stamped) => !back.has(stamped.hit) && isOwn(stamped) && begins(stamped.event),
  )?.hit
  return laid.map(({ hit }) => hit).filter((hit) => hit !== begun)
}
