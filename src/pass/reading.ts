/** What a phone makes of the codes it sees of others. Nothing of them is stored before all of it is here. */

import { type AnyEvent, type JournalRecord, MOST_APART_MS } from '../../shared/record.ts'
import { blocksOf, type Gathering, gathering } from './blocks.ts'
import { readColumns } from './columns.ts'
import { type Block, readFrame, sumOf } from './frame.ts'
import { type ReadHandout, readHandout } from './handout.ts'
import { covers, type Head, type Hello, holds, lacking, readHello } from './heads.ts'

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
  /** All is here: records to be joined with the journal. Told again of each further code of it. */
  | {
      readonly is: 'whole'
      readonly records: readonly JournalRecord<AnyEvent>[]
      readonly met: Met
    }
  /** Stacks with their buckets, or a class, not examined yet. Told again as above. */
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
  /** The other phone that was heard last, once it said who it is. */
  readonly met: Met | undefined
  /** The camera is opened anew, over another phone maybe. */
  begin(): void
  /** After each code that was read. `nowMs`: this phone's clock as it saw it. */
  take(text: string, nowMs: number): Told
  /** What this phone has and the other lacks, as far as it said. */
  theyLack(): readonly JournalRecord<AnyEvent>[]
  /** Whether all that the other has is here. */
  isClosed(): boolean
}

/** Something that is shown in blocks. */
interface Thing {
  readonly key: number
  readonly got: Gathering
  last: number
  /** What it came to, once all of it is here. */
  made?: Extract<Told, { is: 'handout' | 'newer' }> | readonly JournalRecord<AnyEvent>[]
  /** Whose it is: who said who it is right after a block of it. No block says so itself. */
  by?: Met
}

export function reading({ phone, records }: Own): Reading {
  const things = new Map<number, Thing>()
  let met: Met | undefined
  /** Of the block that was seen last, until somebody said who it is. */
  let unsaid: Thing | undefined
  const heard = (hello: Hello, nowMs: number): Told => {
    const { clockMs, heads } = hello
    if (hello.phone === phone) return { is: 'own' }
    const aheadMs = clockMs - nowMs
    if (Math.abs(aheadMs) > MOST_APART_MS) return { is: 'clock', aheadMs }
    met = { phone: hello.phone, aheadMs, heads }
    const known = holds(records(), heads)
    const thing = unsaid
    if (thing) {
      thing.by = met
      const told = toldOf(thing, false)
      if (thing.by) unsaid = undefined
      if (told.is === 'whole' && !known) return told
    }
    return { is: known ? 'known' : 'hello', met }
  }
  const thingOf = ({ of, length, body }: Block, nowMs: number) => {
    for (const [id, { last }] of things) if (nowMs - last > KEPT_MS) things.delete(id)
    const key = of * 2 ** 10 + body.length
    const thing = things.get(key) ?? { key, got: gathering(length, body.length), last: nowMs }
    things.delete(key)
    things.set(key, thing)
    for (const id of things.keys()) if (things.size > THINGS_MOST) things.delete(id)
    thing.last = nowMs
    return thing
  }
  /** What a thing came to by now; `fresh`: the last code told something new of it. */
  const toldOf = (thing: Thing, fresh: boolean): Told => {
    const { made, got } = thing
    if (made && 'is' in made) return made
    // Who lacks what it holds never showed it.
    if (made && thing.by && !covers(thing.by.heads, made)) delete thing.by
    if (!made || !thing.by) return { is: 'part', known: got.known, of: got.of, fresh }
    met = thing.by
    return { is: 'whole', records: made, met }
  }
  const block = (frame: Block, nowMs: number): Told => {
    if (blocksOf(frame.length, frame.body.length) > BLOCKS_MOST) return { is: 'nothing' }
    const thing = thingOf(frame, nowMs)
    unsaid = thing
    const { got } = thing
    const fresh = !thing.made && got.take(frame.index, frame.body)
    const bytes = thing.made ? undefined : got.whole()
    if (!bytes) return toldOf(thing, fresh)
    const made = sumOf(bytes) === frame.of ? madeOf(bytes) : undefined
    if (made) {
      thing.made = made
      return toldOf(thing, fresh)
    }
    things.delete(thing.key)
    unsaid = undefined
    return { is: 'damaged' }
  }
  return {
    get met() {
      return met
    },
    begin() {
      unsaid = undefined
    },
    theyLack: () => (met ? lacking(records(), met.heads) : []),
    isClosed: () => met !== undefined && holds(records(), met.heads),
    take(text, nowMs) {
      const frame = readFrame(text)
      if (frame?.kind === 'block') return block(frame, nowMs)
      if (frame?.kind === 'hello') {
        const hello = readHello(frame.body)
        return hello ? heard(hello, nowMs) : { is: 'nothing' }
      }
      return (frame && handed(frame.body)) ?? { is: 'nothing' }
    },
  }
}

function handed(bytes: Uint8Array): Extract<Told, { is: 'handout' | 'newer' }> | undefined {
  const read = readHandout(bytes)
  return read === 'newer' ? { is: 'newer' } : read && { is: 'handout', read }
}

function madeOf(bytes: Uint8Array): Thing['made'] | undefined {
  const read = readColumns(bytes)
  return read === 'newer' ? { is: 'newer' } : (read ?? handed(bytes))
}
