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
 * said so says otherwise by then, or took it back.
 */
export function isNoEcho(
  stands: (stamped: Written) => boolean,
  met: readonly Meeting[],
): (stamped: Written) => boolean {
  const said = new Map<string, readonly Word[]>()
  /** Words that were taken back. */
  const unsaid = new Map<string, readonly Word[]>()
  const names = new Map<string, string>()
  /** Up to which order a phone cleared its table. */
  const cleared = new Map<string | undefined, number>()
  const byName = (facts: unknown): unknown =>
    JSON.parse(
      JSON.stringify(facts, (key, value) =>
        key === 'stackId' || key === 'bucketId' ? (names.get(value) ?? value) : value,
      ),
    )
  return (stamped) => {
    const { event, from } = stamped
    const [thing, facts] = thingOf(event) ?? []
    const word = placed(stamped)
    const isOwn = !(event.handed || event.anew)
    if (!stands(stamped)) {
      if (thing !== undefined && isOwn) unsaid.set(thing, [...(unsaid.get(thing) ?? []), { ...word, facts }])
      return true
    }
    if (event.kind === 'stack-set') nameOnce(names, event.stack.stackId, event.stack.name)
    if (event.kind === 'bucket-set') nameOnce(names, event.bucket.bucketId, event.bucket.name)
    if (event.kind === 'table-cleared') {
      cleared.set(from, word.order)
      if (from === undefined)
        for (const [thing, words] of said) {
          const left = event.read ? words.filter((other) => !knew(met, word, other)) : []
          if (left.length > 0) said.set(thing, left)
          else said.delete(thing)
        }
    }
    said.delete(goneWith(event) ?? '')
    if (thing === undefined) return true
    const before = said.get(thing) ?? []
    if (event.handed || (event.anew && from !== undefined)) {
      // What it said before it cleared its table stands there no more.
      const until = cleared.get(from) ?? Number.NEGATIVE_INFINITY
      return !before.some((other) => other.from !== from || other.order > until)
    }
    if (event.anew) {
      const last = before.at(-1)
      const isOld = last?.from !== undefined && !isSame(last.facts, facts)
      // Whoever took it unread names the stacks and buckets of its own table.
      const repeats = (other: Word) =>
        isSame(other.facts, facts) || (!knew(met, word, other) && isSame(byName(other.facts), byName(facts)))
      return !(isOld && [...before, ...(unsaid.get(thing) ?? [])].some(repeats))
    }
    said.set(thing, [...before, { ...word, facts }])
    return true
  }
}

/** The first name that was given to it, as names are told from one another. */
function nameOnce(names: Map<string, string>, id: string, name: string): void {
  if (!names.has(id)) names.set(id, name.trim().toLocaleLowerCase())
}
