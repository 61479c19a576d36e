/** Buckets and stacks that one phone took off the table while another had them in use. */

import type { TableEvent } from '../../../shared/events.ts'
import { knew, type Placed, placed } from './knew.ts'
import type { Meeting, Written } from './seen.ts'

/** What an event says of a thing by its name: that it is on the table, or off it. */
export interface WordOn {
  readonly thing: string
  readonly isGone: boolean
}

const potKey = (potId: string): string => `pot ${potId}`
const bucketKey = (bucketId: string): string => `bucket ${bucketId}`
const stackKey = (stackId: string): string => `stack ${stackId}`

/** What an event says of pots, buckets and stacks being on the table. Taken as it was handed on, it is nobody's word. */
export function wordsOn(event: TableEvent): readonly WordOn[] {
  if (event.handed || event.anew) return []
  const used = (...things: readonly string[]) => things.map((thing) => ({ thing, isGone: false }))
  switch (event.kind) {
    case 'pot-gone':
      return [{ thing: potKey(event.potId), isGone: true }]
    case 'bucket-gone':
      return [{ thing: bucketKey(event.bucketId), isGone: true }]
    case 'stack-gone':
      return [{ thing: stackKey(event.stackId), isGone: true }]
    case 'pot-set':
      return used(potKey(event.pot.potId), stackKey(event.pot.stackId))
    case 'bucket-set':
      return used(bucketKey(event.bucket.bucketId))
    case 'stack-set':
      return used(
        stackKey(event.stack.stackId),
        ...event.stack.coats.map(({ bucketId }) => bucketKey(bucketId)),
      )
    case 'plan-changed':
      return used(potKey(event.potId), ...event.coats.map(({ bucketId }) => bucketKey(bucketId)))
    case 'dipped':
      return used(potKey(event.potId), bucketKey(event.bucketId))
    case 'taken-back':
      return event.there === undefined ? [] : used(potKey(event.there))
    case 'waxed':
    case 'wiped':
      return used(potKey(event.potId))
    case 'stirred':
    case 'decanted':
    case 'density-read':
    case 'filled':
    case 'level-read':
    case 'sieved':
      return used(bucketKey(event.bucketId))
    default:
      return []
  }
}

const isRemoval = ({ event }: Pick<Written, 'event'>): boolean =>
  event.kind === 'bucket-gone' || event.kind === 'stack-gone'

/** Whether any bucket or stack was ever taken off. */
export const anyRemoved = (events: readonly Pick<Written, 'event'>[]): boolean => events.some(isRemoval)

/**
 * Events in their order without those that took a bucket or a stack off by a hand that did not know of what another did with
 * it, nor that one of this: it stays until somebody who knows of both says so.
 */
export function withoutBlindRemovals(
  events: readonly Written[],
  met: readonly Meeting[],
  stands: (stamped: Written) => boolean,
): readonly Written[] {
  const removed = new Map<string, Placed[]>()
  for (const stamped of events) {
    if (!isRemoval(stamped) || !stands(stamped)) continue
    const [word] = wordsOn(stamped.event)
    if (word) removed.set(word.thing, [])
  }
  if (removed.size === 0) return events
  for (const stamped of events) {
    if (!stands(stamped)) continue
    for (const { thing, isGone } of wordsOn(stamped.event))
      if (!isGone) removed.get(thing)?.push(placed(stamped))
  }
  return events.filter((stamped) => {
    if (!isRemoval(stamped) || !stands(stamped)) return true
    const word = placed(stamped)
    const used = removed.get(wordsOn(stamped.event)[0]?.thing ?? '') ?? []
    const known = knownBy(met, word)
    return !used.some(
      (other) => other.from !== word.from && other.order > known(other.from) && !knew(met, other, word),
    )
  })
}

/** Up to which order whoever said a word had taken in by then what each phone said: a year's coats are asked of it. */
function knownBy(met: readonly Meeting[], word: Placed): (of: string | undefined) => number {
  const upTo = new Map<string | undefined, number>()
  for (const { by, of, upTo: to, order } of met)
    if (by === word.from && order < word.order) upTo.set(of, Math.max(to, upTo.get(of) ?? 0))
  return (of) => upTo.get(of) ?? Number.NEGATIVE_INFINITY
}
