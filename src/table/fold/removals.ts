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
    case 'dip-corrected':
      return used(
        ...(event.potId === undefined ? [] : [potKey(event.potId)]),
        ...(event.bucketId === undefined ? [] : [bucketKey(event.bucketId)]),
      )
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

/** What an event sets up, by its name, and what takes it off the table. */
function setUp(event: TableEvent): readonly [thing: string, gone: TableEvent] | undefined {
  switch (event.kind) {
    case 'pot-set':
      return [potKey(event.pot.potId), { kind: 'pot-gone', potId: event.pot.potId }]
    case 'bucket-set':
      return [bucketKey(event.bucket.bucketId), { kind: 'bucket-gone', bucketId: event.bucket.bucketId }]
    case 'stack-set':
      return [stackKey(event.stack.stackId), { kind: 'stack-gone', stackId: event.stack.stackId }]
    default:
      return undefined
  }
}

/** Whether an event may set up what others work with. */
export const setsUp = (event: TableEvent): boolean => setUp(event) !== undefined

/** A hit that was taken back, and by which things came onto the table. */
interface Brought {
  readonly hit: string
  readonly from: string | undefined
  readonly gone: TableEvent[]
  /** All that its events name. */
  readonly names: string[]
}

/**
 * By their ids, records that take back the setting up of what another phone worked with, each as what takes it off the table
 * instead: so no coat is lost with it, and it is asked about where it was not known. What such a thing stands on stays. `back`: the hits that stand as taken back.
 */
export function takenOffInstead(
  keyed: readonly { readonly stamped: Written }[],
  back: ReadonlySet<string>,
): ReadonlyMap<string, readonly Written[]> {
  const instead = new Map<string, readonly Written[]>()
  if (back.size === 0) return instead
  const there = new Set<string>()
  const hits = new Map<string, Brought>()
  const by = new Map<string, Brought[]>()
  const backs = new Map<string, Written[]>()
  const used = new Set<Brought>()
  for (const { stamped } of keyed) {
    const { event, hit, from } = stamped
    if (event.kind === 'taken-back') backs.set(event.hit, [...(backs.get(event.hit) ?? []), stamped])
    else if (event.kind === 'put-back') backs.delete(event.hit)
    const [thing = '', gone] = setUp(event) ?? []
    if (!back.has(hit)) {
      if (gone) there.add(thing)
      if (by.size > 0)
        for (const word of wordsOn(event))
          for (const brought of by.get(word.thing) ?? [])
            if (!word.isGone && brought.from !== from) used.add(brought)
    } else if (gone) {
      const brought = hits.get(hit) ?? { hit, from, gone: [], names: [] }
      hits.set(hit, brought)
      brought.names.push(...wordsOn({ ...event, handed: undefined }).map((word) => word.thing))
      if (there.has(thing)) continue
      brought.gone.push(gone)
      by.set(thing, [...(by.get(thing) ?? []), brought])
    }
  }
  const worked = new Set(used)
  for (const brought of used) {
    // Pots first, then their stacks, then the buckets.
    const gone = [...brought.gone].sort((a, b) => (a.kind < b.kind ? 1 : -1))
    for (const said of backs.get(brought.hit) ?? [])
      instead.set(said.id, worked.has(brought) ? gone.map((event) => ({ ...said, event })) : [])
    for (const thing of brought.names) for (const under of by.get(thing) ?? []) used.add(under)
  }
  return instead
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
