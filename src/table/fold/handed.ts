import type { TableEvent } from '../../../shared/events.ts'
import { knew, placed } from './knew.ts'
import type { Meeting, Written } from './seen.ts'

/** What an event says the whole of, by name. */
function thingOf(event: TableEvent): string | undefined {
  switch (event.kind) {
    case 'bucket-set':
      return `bucket ${event.bucket.bucketId}`
    case 'stack-set':
      return `stack ${event.stack.stackId}`
    case 'pot-set':
      return `pot ${event.pot.potId}`
    case 'plan-changed':
      return `plan ${event.potId}`
    case 'board-set':
      return 'board'
    default:
      return undefined
  }
}

/** What an event takes away, by the same name. */
function goneWith(event: TableEvent): string | undefined {
  if (event.kind === 'bucket-gone') return `bucket ${event.bucketId}`
  return event.kind === 'stack-gone' ? `stack ${event.stackId}` : undefined
}

/**
 * Tells, asked in their order, events from those that repeat, as it was handed on, what somebody's own word stands on: an
 * older plan on paper says nothing against what was changed since.
 */
export function isNoEcho(
  stands: (stamped: Written) => boolean,
  met: readonly Meeting[],
): (stamped: Written) => boolean {
  const said = new Map<string, Written>()
  return (stamped) => {
    const { event, from } = stamped
    if (!stands(stamped)) return true
    if (event.kind === 'table-cleared' && from === undefined)
      for (const [thing, word] of said)
        if (!event.read || knew(met, placed(stamped), placed(word))) said.delete(thing)
    said.delete(goneWith(event) ?? '')
    const thing = thingOf(event)
    if (thing === undefined) return true
    if (event.handed || (event.anew && from !== undefined)) return !said.has(thing)
    if (event.anew) return true
    said.set(thing, stamped)
    return true
  }
}
