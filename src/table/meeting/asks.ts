/** What is asked once phones have met: from what is seen of all they wrote, nothing of it stored. */

import type { TableEvent } from '../../../shared/events.ts'
import { apart, knew } from '../fold/knew.ts'
import { takenBack } from '../fold/read-ahead.ts'
import { wordsOn } from '../fold/removals.ts'
import type { Meeting, Seen, Written } from '../fold/seen.ts'
import type { Ask, ThingFacts, TwiceDipped } from '../model/ask.ts'
import { arePieces } from '../model/pieces.ts'
import { samePlace } from '../model/places.ts'
import { potsOnTable } from '../model/plan.ts'
import { isSame } from '../model/same.ts'
import type { BucketState, PotState, Table } from '../model/state.ts'
import { needsBucket, needsStack } from '../model/uses.ts'
import { dippedByOld, mendedApart, restackedApart } from './crossed.ts'
import { ofTheTable } from './of-table.ts'
import { open, type Placed, saidIn } from './said.ts'

/**
 * What is to be settled, the gravest first: what went onto a pot, then what is said of things, then twins, and what only
 * needs to be read. `read`: the keys of what was.
 */
export function asksOf(table: Table, { said, met }: Seen, read: ReadonlySet<string> = NONE): readonly Ask[] {
  if (!said.some(({ from }) => from !== undefined)) return twinsOf(table)
  const back = takenBack(said)
  const standing = said.filter(({ hit }) => !back.has(hit))
  const events = [...saidIn(standing)]
  const { asks, heard } = ofTheTable(table, events, met)
  const all = [...dippedByOld(table, events, met), ...heard].filter(({ key }) => !read.has(key))
  return [
    ...coats(table, standing, met),
    ...takenOff(table, standing, met),
    ...mendedApart(table, events, met),
    ...changes(table, standing, undone(said, back), met),
    ...restackedApart(table, events, met),
    ...asks,
    ...twinsOf(table),
    ...(all.length > 0 ? [{ is: 'heard', all } as const] : []),
  ]
}

const NONE: ReadonlySet<string> = new Set()

/** Coats that were dipped on two phones. */
function coats(table: Table, events: readonly Written[], met: readonly Meeting[]): Ask[] {
  const settled = new Set<string>()
  const homes = new Map(
    potsOnTable(table).flatMap((pot) => pot.dips.map(({ dipId }) => [dipId, pot] as const)),
  )
  const dipped = new Map<string, (TwiceDipped & Placed & { readonly bucketId: string })[]>()
  for (const [event, said, hit] of saidIn(events)) {
    if (event.kind === 'both-dipped') settled.add([...event.dipIds].sort().join())
    if (event.kind !== 'dipped') continue
    const home = homes.get(event.dipId)
    if (!home || isOff(home, event.dipId)) continue
    const key = `${home.facts.potId} ${event.coat}`
    dipped.set(key, [
      ...(dipped.get(key) ?? []),
      { ...said, hit, dipId: event.dipId, bucketId: event.bucketId },
    ])
  }
  return [...dipped].flatMap(([key, dips]) =>
    dips.flatMap((one, i) =>
      dips.slice(i + 1).flatMap((other): Ask[] => {
        const known = settled.has([one.dipId, other.dipId].sort().join())
        if (known || !apart(met, one, other)) return []
        const [potId = ''] = key.split(' ')
        return [{ is: 'coat', potId, bucketId: one.bucketId, dips: [one, other] }]
      }),
    ),
  )
}

/** Whether a coat was washed off since. */
const isOff = ({ dips, washedAt }: PotState, dipId: string): boolean =>
  washedAt !== undefined && dips.some((dip) => dip.dipId === dipId && dip.outAt <= washedAt)

type Thing = Extract<ThingFacts, { is: 'pot' | 'stack' | 'bucket' | 'plan' }>

const thingOf = (event: TableEvent): Thing | undefined => {
  switch (event.kind) {
    case 'pot-set':
      return { is: 'pot', facts: event.pot }
    case 'stack-set':
      return { is: 'stack', facts: event.stack }
    case 'bucket-set':
      return { is: 'bucket', facts: event.bucket }
    case 'plan-changed':
      return { is: 'plan', facts: { potId: event.potId, coats: event.coats } }
    default:
      return undefined
  }
}

function keyOf({ is, facts }: Thing): string {
  return `${is} ${is === 'stack' ? facts.stackId : is === 'bucket' ? facts.bucketId : facts.potId}`
}

/** Pots, buckets and stacks that one phone took off the table while another was at work on them, or with them. */
function takenOff(table: Table, events: readonly Written[], met: readonly Meeting[]): Ask[] {
  const words = new Map<string, (Placed & { readonly hit: string; readonly isGone: boolean })[]>()
  for (const [event, said, hit] of saidIn(events))
    for (const { thing, isGone } of wordsOn(event)) {
      const before = words.get(thing)?.filter(({ from }) => from !== said.from) ?? []
      words.set(thing, [...before, { ...said, hit, isGone }])
    }
  const hitsOn = (potId: string) =>
    events.flatMap(({ event, hit }) => (event.kind === 'pot-gone' && event.potId === potId ? [hit] : []))
  return [...words].flatMap(([thing, all]): Ask[] => {
    const last = open(met, all)
    const gone = last.find(({ isGone }) => isGone)
    const used = last.find(({ isGone }) => !isGone)
    if (!gone || !used) return []
    const id = thing.slice(thing.indexOf(' ') + 1)
    if (thing.startsWith('pot '))
      return table.pots[id]?.gone ? [{ is: 'gone', potId: id, hits: hitsOn(id), gone, used }] : []
    const bucket = thing.startsWith('bucket ') ? table.buckets[id]?.facts : undefined
    const stack = thing.startsWith('stack ') ? table.stacks[id] : undefined
    const neededBy = bucket ? needsBucket(table, id) : needsStack(table, id)
    const needed = neededBy === undefined ? {} : { neededBy }
    if (bucket) return [{ is: 'removed', thing: { is: 'bucket', facts: bucket }, gone, used, ...needed }]
    return stack ? [{ is: 'removed', thing: { is: 'stack', facts: stack }, gone, used, ...needed }] : []
  })
}

/** A word that was taken back, as the one that stood before it: said when it was taken back. */
interface Undone {
  readonly way: Thing & Placed
  /** The word itself. */
  readonly word: Placed
}

/** They, by their thing. */
function undone(said: readonly Written[], back: ReadonlySet<string>): ReadonlyMap<string, readonly Undone[]> {
  const found = new Map<string, Undone[]>()
  if (back.size === 0) return found
  const standing = new Map<string, Thing>()
  const words = new Map<string, { readonly before: Thing; readonly word: Placed }[]>()
  for (const [event, placed, hit] of saidIn(said)) {
    const thing = thingOf(event)
    const key = thing ? keyOf(thing) : ''
    const before = standing.get(key)
    if (event.kind === 'taken-back' && back.has(event.hit) && !back.has(hit))
      for (const one of words.get(event.hit) ?? []) {
        const of = keyOf(one.before)
        found.set(of, [...(found.get(of) ?? []), { way: { ...one.before, ...placed }, word: one.word }])
      }
    else if (thing && !back.has(hit)) standing.set(key, thing)
    else if (thing && before) words.set(hit, [...(words.get(hit) ?? []), { before, word: placed }])
  }
  return found
}

/**
 * Things that phones changed apart: what each said of them last, and nobody since who knew of it. That a phone took a word back
 * counts where another built on that word.
 */
function changes(
  table: Table,
  events: readonly Written[],
  taken: ReadonlyMap<string, readonly Undone[]>,
  met: readonly Meeting[],
): Ask[] {
  const things = new Map<string, Map<string | undefined, Thing & Placed>>()
  for (const [event, said] of saidIn(events)) {
    const thing = thingOf(event)
    if (!thing || event.handed || event.anew) continue
    const key = keyOf(thing)
    const ways = things.get(key) ?? new Map()
    things.set(key, ways.set(said.from, { ...thing, ...said }))
  }
  const stands = ({ is, facts }: Thing): boolean => {
    if (is === 'pot' || is === 'plan') return table.pots[facts.potId]?.gone === false
    return is === 'stack' ? facts.stackId in table.stacks : facts.bucketId in table.buckets
  }
  return [...things].flatMap(([key, ways]): Ask[] => {
    const last = [...ways.values()]
    const back = (taken.get(key) ?? []).filter(({ way, word }) =>
      last.some((other) => other.from !== way.from && knew(met, other, word) && !knew(met, other, way)),
    )
    const said = open(met, [...last, ...back.map(({ way }) => way)])
    const cautions = [...new Set(said.flatMap((way) => (way.is === 'bucket' ? way.facts.cautions : [])))]
    // Whichever it is, what one phone knows to be harmful stays.
    const all = said.map((way) => (way.is === 'bucket' ? { ...way, facts: { ...way.facts, cautions } } : way))
    const differ = all.filter((way, i) => all.findIndex((other) => isSame(other.facts, way.facts)) === i)
    const [one] = differ
    return one && differ.length > 1 && stands(one) ? [{ is: 'changed', ways: differ }] : []
  })
}

/** Pots of one number or on one place, buckets of one letter: of phones that met, or of a plan that was handed on. */
export function twinsOf(table: Table): Ask[] {
  const pots = potsOnTable(table)
  const buckets = Object.values(table.buckets)
  const asks = pairs(pots, (a, b) => a.facts.number === b.facts.number && !arePieces(a.facts, b.facts)).map(
    ([a, b]): Ask => ({ is: 'number', potIds: [a.facts.potId, b.facts.potId] }),
  )
  for (const [a, b] of pairs(pots, (one, two) => samePlace(one.facts.place, two.facts.place)))
    asks.push({ is: 'place', potIds: [a.facts.potId, b.facts.potId] })
  for (const [a, b] of pairs<BucketState>(buckets, (one, two) => one.facts.letter === two.facts.letter))
    asks.push({ is: 'letter', bucketIds: [a.facts.bucketId, b.facts.bucketId] })
  return asks
}

/** Those that are alike, own ones before those of other phones. */
function pairs<T extends object>(of: readonly T[], alike: (a: T, b: T) => boolean): (readonly [T, T])[] {
  const own = [...of].sort((a, b) => Number('from' in a) - Number('from' in b))
  return own.flatMap((one, i) =>
    own.slice(i + 1).flatMap((other) => (alike(one, other) ? [[one, other] as const] : [])),
  )
}
