import type { TableEvent } from '../../../shared/events.ts'
import { isSame } from '../model/same.ts'
import { knew, type Placed, placed } from './knew.ts'
import type { Meeting, Written } from './seen.ts'

/** What an event says the whole of, by name, and how it is. */
function thingOf(event: TableEvent): readonly [name: string, facts: unknown] | undefined {
  switch (event.kind) {
    case 'bucket-set':
      return [`bucket ${event.bucket.bucketId}`, event.bucket]
    case 'stack-set':
      return [`stack ${event.stack.stackId}`, event.stack]
    case 'pot-set':
      return [`pot ${event.pot.potId}`, event.pot]
    case 'plan-changed':
      return [`plan ${event.potId}`, event.coats]
    case 'board-set':
      return ['board', event.board]
    default:
      return undefined
  }
}

/** What an event takes away, by the same name. */
function goneWith(event: TableEvent): string | undefined {
  if (event.kind === 'bucket-gone') return `bucket ${event.bucketId}`
  return event.kind === 'stack-gone' ? `stack ${event.stackId}` : undefined
}

/** A word of somebody's own. */
interface Word extends Placed {
  readonly facts: unknown
}

/**
 * Tells, asked in their order, events from those that repeat, as it was handed on, what somebody's own word stands on: an
 * older plan on paper says nothing against what was changed since. Nor does it on the phone that took it, once that knows that whoever
 * said so says otherwise by then.
 */
export function isNoEcho(
  stands: (stamped: Written) => boolean,
  met: readonly Meeting[],
): (stamped: Written) => boolean {
  const said = new Map<string, readonly Word[]>()
  return (stamped) => {
    const { event, from } = stamped
    if (!stands(stamped)) return true
    const word = placed(stamped)
    if (event.kind === 'table-cleared' && from === undefined)
      for (const [thing, words] of said) {
        const left = event.read ? words.filter((other) => !knew(met, word, other)) : []
        if (left.length > 0) said.set(thing, left)
        else said.delete(thing)
      }
    said.delete(goneWith(event) ?? '')
    const [thing, facts] = thingOf(event) ?? []
    if (thing === undefined) return true
    const before = said.get(thing) ?? []
    if (event.handed || (event.anew && from !== undefined)) return before.length === 0
    if (event.anew) {
      const last = before.at(-1)
      const isOld = last?.from !== undefined && !isSame(last.facts, facts)
      return !(isOld && before.some((other) => isSame(other.facts, facts)))
    }
    said.set(thing, [...before, { ...word, facts }])
    return true
  }
}
