/** What a phone makes of the codes it sees of another. Nothing of them is stored before all of it is here. */

import { type AnyEvent, type JournalRecord, MOST_APART_MS } from '../../shared/record.ts'
import { blocksOf, type Gathering, gathering } from './blocks.ts'
import { readColumns } from './columns.ts'
import { readFrame, sumOf } from './frame.ts'
import { type ReadHandout, readHandout } from './handout.ts'
import { type Head, type Hello, holds, lacking, readHello } from './heads.ts'

/** So long is kept what was read of something that broke off. */
const KEPT_MS = 600_000
/** More blocks would take minutes to show, and more memory to solve for than a phone has to spare. */
export const BLOCKS_MOST = 4096
/** Blocks of several things at once: what is shown anew is another thing. */
const THINGS_MOST = 4

export interface Met {
  readonly phone: string
  /** Its clock beyond this phone's, ms. */
  readonly aheadMs: number
  readonly heads: readonly Head[]
}

export type Told =
  /** Nothing that could be read, or no code of this app. */
  | { readonly is: 'nothing' }
  /** It shows what is here already. */
  | { readonly is: 'known'; readonly met: Met }
  | { readonly is: 'own' }
  /** Its clock is more than a day off. */
  | { readonly is: 'clock'; readonly aheadMs: number }
  | { readonly is: 'hello'; readonly met: Met }
  | { readonly is: 'part'; readonly known: number; readonly of: number; readonly fresh: boolean }
  /** All is here: records to be joined with the journal. */
  | {
      readonly is: 'whole'
      readonly records: readonly JournalRecord<AnyEvent>[]
      readonly met: Met
    }
  /** Stacks with their buckets, or a class, not examined yet. */
  | { readonly is: 'handout'; readonly read: ReadHandout }
  /** What only a newer program knows. */
  | { readonly is: 'newer' }
  /** All came, and does not make what was shown. */
  | { readonly is: 'damaged' }

interface Own {
  readonly phone: string
  readonly records: () => readonly JournalRecord<AnyEvent>[]
}

export interface Reading {
  /** The other phone, once it said who it is. */
  readonly met: Met | undefined
  /** After each code that was read. `nowMs`: this phone's clock as it saw it. */
  take(text: string, nowMs: number): Told
  /** What this phone has and the other lacks, as far as it said. */
  theyLack(): readonly JournalRecord<AnyEvent>[]
  /** Whether all that the other has is here. */
  isClosed(): boolean
}

export function reading({ phone, records }: Own): Reading {
  const things = new Map<number, { readonly got: Gathering; last: number; done: boolean }>()
  let met: Met | undefined
  /** All of it came before the other phone said who it is. */
  let nameless: readonly JournalRecord<AnyEvent>[] | undefined
  const heard = (hello: Hello, nowMs: number): Told => {
    const { clockMs, heads } = hello
    if (hello.phone === phone) return { is: 'own' }
    const aheadMs = clockMs - nowMs
    if (Math.abs(aheadMs) > MOST_APART_MS) return { is: 'clock', aheadMs }
    met = { phone: hello.phone, aheadMs, heads }
    const waited = nameless
    nameless = undefined
    if (waited) return { is: 'whole', records: waited, met }
    return holds(records(), heads) ? { is: 'known', met } : { is: 'hello', met }
  }
  const thingOf = (of: number, length: number, size: number, nowMs: number) => {
    for (const [id, { last }] of things) if (nowMs - last > KEPT_MS) things.delete(id)
    const key = of * 2 ** 10 + size
    const thing = things.get(key) ?? { got: gathering(length, size), last: nowMs, done: false }
    things.delete(key)
    things.set(key, thing)
    for (const id of things.keys()) if (things.size > THINGS_MOST) things.delete(id)
    thing.last = nowMs
    return thing
  }
  return {
    get met() {
      return met
    },
    theyLack: () => (met ? lacking(records(), met.heads) : []),
    isClosed: () => met !== undefined && holds(records(), met.heads),
    take(text, nowMs) {
      const frame = readFrame(text)
      if (frame?.kind === 'hello') {
        const hello = readHello(frame.body)
        return hello ? heard(hello, nowMs) : { is: 'nothing' }
      }
      if (frame?.kind === 'handout') {
        const read = readHandout(frame.body)
        return read === 'newer' ? { is: 'newer' } : read ? { is: 'handout', read } : { is: 'nothing' }
      }
      if (frame?.kind !== 'block') return { is: 'nothing' }
      if (blocksOf(frame.length, frame.body.length) > BLOCKS_MOST) return { is: 'nothing' }
      const thing = thingOf(frame.of, frame.length, frame.body.length, nowMs)
      const { got } = thing
      const fresh = !thing.done && got.take(frame.index, frame.body)
      const bytes = thing.done ? undefined : got.whole()
      if (!bytes) return { is: 'part', known: got.known, of: got.of, fresh }
      const right = sumOf(bytes) === frame.of
      const whole = right ? readColumns(bytes) : undefined
      const handed = right && !whole ? readHandout(bytes) : undefined
      if (handed) {
        thing.done = true
        return handed === 'newer' ? { is: 'newer' } : { is: 'handout', read: handed }
      }
      if (!whole) {
        things.clear()
        return { is: 'damaged' }
      }
      thing.done = true
      if (met) return { is: 'whole', records: whole, met }
      nameless = whole
      return { is: 'part', known: got.known, of: got.of, fresh }
    },
  }
}
