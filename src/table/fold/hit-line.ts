import type { Stamped, TableEvent } from '../../../shared/events.ts'
import { dipOf } from '../model/change.ts'
import type { HitLine, Table } from '../model/state.ts'
import { tableTime } from './table-time.ts'

/** What no person would name as the last thing done; a hit taken back and put back is its own again. */
const UNNAMED = new Set<TableEvent['kind']>([
  'clock-moved',
  'dose-unsure',
  'settings-set',
  'demo-laid',
  'taken-back',
  'put-back',
  'met',
  'was-named',
  'both-dipped',
])

/** How take back names the hit of an event: the last one that was not implied does. What another phone did, it may not. */
export function hitLine(table: Table, stamped: Stamped): HitLine | undefined {
  const { event, hit, from } = stamped
  if (from || UNNAMED.has(event.kind) || ('implied' in event && event.implied)) return undefined
  const dipId = 'dipId' in event ? event.dipId : undefined
  const of = 'potId' in event ? event.potId : 'potIds' in event ? event.potIds[0] : undefined
  const potId = of ?? (dipId === undefined ? undefined : dipOf(table, dipId)?.pot.facts.potId)
  const bucketId = 'bucketId' in event ? event.bucketId : undefined
  const many = 'potIds' in event && event.potIds.length > 1 ? { potIds: event.potIds } : {}
  const hands = event.hands === 1 ? { hands: event.hands } : {}
  const logged = event.kind === 'dipped' && event.told ? { logged: true as const } : {}
  const takenIn = event.kind === 'lesson-dropped' && !event.dropped ? { takenIn: true as const } : {}
  return {
    hit,
    at: tableTime(table, stamped),
    kind: event.kind,
    potId,
    bucketId,
    ...many,
    ...hands,
    ...logged,
    ...takenIn,
  }
}
