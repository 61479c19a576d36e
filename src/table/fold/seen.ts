/** What several phones wrote, as one of them sees it: before it is folded. */

import type { Stamped, TableEvent } from '../../../shared/events.ts'
import { phoneOfWriter } from '../../../shared/record.ts'
import { ofTable } from '../model/whose-setting.ts'
import { contradicted, isAnswer } from './answers.ts'
import { withCautions } from './cautions.ts'
import { isTaken, withClears } from './clears.ts'
import { demosBeside } from './demos.ts'
import { isNoEcho } from './handed.ts'
import { takenBack } from './read-ahead.ts'
import { anyRemoved, setsUp, takenOffInstead, withoutBlindRemovals } from './removals.ts'
import './by-others.ts'

/** A record as far as it is seen; `order` as the journal gave it. */
export type Written = Stamped & { readonly order?: number }

/** A phone took in what another had written up to an order: `by` one, `of` another; left out, the one that sees. */
export interface Meeting {
  readonly by?: string
  readonly of?: string
  readonly upTo: number
  /** The order of the record that says so. */
  readonly order: number
}

/** The records of all phones as one of them sees them. */
export interface Seen {
  readonly events: readonly Written[]
  /** They, and what is without effect until somebody says which of two words on a thing stands. */
  readonly said: readonly Written[]
  readonly met: readonly Meeting[]
  /**
   * Whether these further ones, of which the last is a hit of the phone whose clock's jumps are `skewMs`, come after all that
   * is seen, as they are.
   */
  goesOn(next: readonly Written[], skewMs: number): boolean
}

/** The name before the dot of a writer's. */
export const phoneOf = ({ writer = '' }: Pick<Stamped, 'writer'>): string => phoneOfWriter(writer)

/**
 * A journal as `phone` sees it. Its own records are as they are. Those of others bear `from`, have their moments in this
 * phone's table time, and lack what is theirs alone: what they hold and chose, their settings, their pan, their demo. All
 * are in the order in which they happened, as far as clocks were compared; what was written after something was seen never
 * comes before it. The same for the same records, whatever came first.
 */
export function seenFrom(records: readonly Written[], phone: string): Seen {
  const steps = seenSteps(records, phone)
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}

/** What is said of phones, clocks, hits and tables, to be known before the rest is read; with its place in the journal. */
type Word = readonly [at: number, record: Written]
const WORDS: ReadonlySet<string> = new Set<TableEvent['kind']>([
  'taken-back',
  'put-back',
  'met',
  'clock-moved',
  'was-named',
  'demo-laid',
  'both-dipped',
  'table-cleared',
])

const NONE: ReadonlySet<string> = new Set()

/** So many records are a few ms of a slow phone. */
const EACH = 100

/** The same, with a pause wherever a moment's work is done. */
export function* seenSteps(records: readonly Written[], phone: string): Generator<void, Seen, undefined> {
  const words: Word[] = []
  for (const [i, record] of records.entries()) {
    if (i % EACH === 0) yield
    if (WORDS.has(record.event.kind)) words.push([i, record])
  }
  let back = takenBack(words.map(([, record]) => record))
  const stands = ({ hit }: Stamped) => !back.has(hit)
  const nameAt = names(words, stands, phone)
  const clocks = clocksMet(words, phone, stands, nameAt)
  const isOwn = (stamped: Stamped) => phoneOf(stamped) === phone || stamped.writer === undefined
  yield
  const laid = words.map(([, record]) => record).filter(({ event }) => event.kind === 'demo-laid')
  const demos = new Set(demosBeside(laid, records, back, isOwn))
  const skews = new Map<string, number>()
  const latest = new Map<string, { readonly key: number; readonly order: number }>()
  let untilMs = Number.NEGATIVE_INFINITY
  const met: Meeting[] = []
  const keyed: { readonly key: number; readonly stamped: Written }[] = []
  for (const [i, record] of records.entries()) {
    if (i % EACH === 0) yield
    const name = record.writer === undefined ? phone : nameAt(record, i)
    const { event, order = 0, at } = record
    const skewMs = (skews.get(name) ?? 0) + (event.kind === 'clock-moved' && stands(record) ? event.byMs : 0)
    skews.set(name, skewMs)
    const steadyMs = at - skewMs
    const shiftMs = name === phone ? skewMs : skewMs + aheadAt(clocks.get(name), steadyMs)
    // An order beyond its clock and its phone's last says that it was written after others' had been seen.
    const last = latest.get(name) ?? { key: Number.NEGATIVE_INFINITY, order: 0 }
    const saw = order > Math.max(Math.floor(steadyMs), last.order + 1)
    const key = Math.max(at - shiftMs, saw ? untilMs : last.key)
    latest.set(name, { key, order })
    untilMs = Math.max(untilMs, key)
    if (event.kind === 'met' && stands(record)) {
      const of = nameAt({ ...record, writer: event.phone }, i)
      met.push({
        ...(name === phone ? {} : { by: name }),
        ...(of === phone ? {} : { of }),
        upTo: event.upTo,
        order,
      })
    }
    if (demos.has(record.hit)) continue
    if (name === phone) keyed.push({ key, stamped: record })
    else {
      const theirs = ofOthers(event, shiftMs, shiftMs - skewMs)
      if (theirs) keyed.push({ key, stamped: { ...record, at: at - shiftMs, from: name, event: theirs } })
    }
  }
  keyed.sort((a, b) => a.key - b.key)
  yield
  const answered = words.some(([, record]) => isAnswer(record))
  const idle = answered ? contradicted(keyed, met, stands) : NONE
  const instead = takenOffInstead(keyed, back)
  const isIdle = ({ id }: Stamped) => idle.has(id) || instead.has(id)
  if (idle.size + instead.size > 0)
    back = takenBack(words.flatMap(([, record]) => (isIdle(record) ? [] : [record])))
  yield
  const isWord = isNoEcho(stands, met)
  const cautioned = withCautions(met, stands)
  const told: Written[] = []
  const taken: Written[] = []
  /** Hits that others look back at: what is seen of them, and what there is. */
  const asked = new Set<string>()
  for (const [i, { stamped: record }] of keyed.entries()) {
    if (i % EACH === 0) yield
    if (idle.has(record.id)) continue
    for (const stamped of instead.get(record.id) ?? [record]) {
      if (isTaken(stamped)) taken.push(stamped)
      if (!isWord(stamped)) continue
      told.push(cautioned(stamped))
      if ('hit' in stamped.event) asked.add(stamped.event.hit)
    }
  }
  // A hit of which nothing is seen is not seen to be taken back.
  const unseen = new Set<string>()
  for (const [i, { hit }] of records.entries()) {
    if (i % EACH === 0) yield
    if (asked.has(hit)) unseen.add(hit)
  }
  for (const [i, { hit }] of told.entries()) {
    if (i % EACH === 0) yield
    unseen.delete(hit)
  }
  yield
  const clears = words.flatMap(([, { event, id }]) => (event.kind === 'table-cleared' ? [id] : []))
  const whole = yield* withClears(told, new Set(clears), taken, met, stands)
  const said = whole.filter(({ event }) => !('hit' in event && unseen.has(event.hit)))
  yield
  const events = withoutBlindRemovals(said, met, stands)
  const removed = anyRemoved(said)
  return {
    events,
    said,
    met,
    goesOn: (next, skewMs) =>
      next.every(({ event, at, order = 0, writer }) => {
        const isOwn = writer === undefined || phoneOf({ writer }) === phone
        // What tells phones or clocks apart is seen anew, and what cautions or a thing taken off may stand on.
        const onThings =
          event.kind === 'bucket-set' || event.kind === 'bucket-gone' || event.kind === 'stack-gone'
        const anew = 'phone' in event || 'byMs' in event || event.kind === 'table-cleared'
        const onDips = event.kind === 'both-dipped' || 'wentOn' in event
        const isOld = removed || answered || clears.length > 0
        const back = 'hit' in event && (isOld || told.some((of) => of.hit === event.hit && setsUp(of.event)))
        const isPlain = isOwn && !(anew || onThings || onDips || back)
        const saw = order > Math.max(Math.floor(at - skewMs), (latest.get(phone)?.order ?? 0) + 1)
        return isPlain && (saw || at - skewMs >= untilMs)
      }),
  }
}

/** Whose the record at a place of the journal is. */
type NameAt = (stamped: Stamped, at: number) => string

/**
 * Records by the name of their writer, or the name that it had later. `phone` takes its own word on its names, and nobody
 * else's on the one it has.
 */
function names(words: readonly Word[], stands: (stamped: Stamped) => boolean, phone: string): NameAt {
  const later = new Map<string, { readonly until: number; readonly name: string }>()
  const nameAt: NameAt = (stamped, at) => {
    let name = phoneOf(stamped)
    for (let next = later.get(name); next && at < next.until; next = later.get(name)) name = next.name
    return name
  }
  const believe = (own: boolean) => {
    for (const [i, stamped] of [...words].reverse()) {
      if (stamped.event.kind !== 'was-named' || !stands(stamped)) continue
      const name = nameAt(stamped, i)
      const { phone: former } = stamped.event
      if ((name === phone) !== own || former === phone) continue
      // Nobody was named as they are, in a circle neither.
      if (name !== former && !later.has(former) && !isNamed(later, name, former))
        later.set(former, { until: i, name })
    }
  }
  believe(true)
  believe(false)
  return nameAt
}

/** Whether `name` comes to be called `wanted`. */
function isNamed(
  later: ReadonlyMap<string, { readonly name: string }>,
  name: string,
  wanted: string,
): boolean {
  let at: string | undefined = name
  while (at !== undefined && at !== wanted) at = later.get(at)?.name
  return at === wanted
}

/** A comparison of clocks: until then, by the other phone's clock, it was so far ahead, ms. */
interface ClockMet {
  readonly untilMs: number
  readonly aheadMs: number
}

/**
 * What a phone knows of the others' clocks, by their names: as it compared them itself, else as a phone did that it
 * compared.
 */
function clocksMet(
  words: readonly Word[],
  phone: string,
  stands: (stamped: Stamped) => boolean,
  nameAt: NameAt,
): ReadonlyMap<string, readonly ClockMet[]> {
  const skews = new Map<string, number>()
  const compared = new Map<
    string,
    { readonly of: string; readonly atMs: number; readonly aheadMs: number }[]
  >()
  for (const [i, stamped] of words) {
    const { event, at } = stamped
    if ((event.kind !== 'met' && event.kind !== 'clock-moved') || !stands(stamped)) continue
    const by = stamped.writer === undefined ? phone : nameAt(stamped, i)
    const skewMs = skews.get(by) ?? 0
    if (event.kind === 'clock-moved') skews.set(by, skewMs + event.byMs)
    else if (event.aheadMs !== undefined) {
      // Under the name that it had, and under the one that it has since.
      const named = [event.phone, nameAt({ ...stamped, writer: event.phone }, -1)]
      const found = [...new Set(named)].map((of) => ({ of, atMs: at - skewMs, aheadMs: event.aheadMs ?? 0 }))
      compared.set(by, [...(compared.get(by) ?? []), ...found])
    }
  }
  const clocks = new Map<string, ClockMet[]>()
  const known = [phone]
  for (const by of known) {
    const found = new Map<string, ClockMet[]>()
    for (const { of, atMs, aheadMs } of compared.get(by) ?? []) {
      if (of === phone || clocks.has(of)) continue
      const met = { untilMs: atMs + aheadMs, aheadMs: aheadMs + aheadAt(clocks.get(by), atMs) }
      found.set(of, [...(found.get(of) ?? []), met])
    }
    for (const [of, mets] of found) {
      clocks.set(of, mets)
      known.push(of)
    }
  }
  return clocks
}

/**
 * How far a phone's clock was ahead when it showed `steadyMs`: as the next comparison after it found, or the last one; what
 * lies before an earlier one is not moved by a later. 0 where clocks were never compared.
 */
const aheadAt = (clocks: readonly ClockMet[] = [], steadyMs: number): number =>
  (clocks.find(({ untilMs }) => steadyMs <= untilMs) ?? clocks.at(-1))?.aheadMs ?? 0

/** What another phone's record says on this one's table, `shiftMs` off its clock; undefined where nothing. */
function ofOthers(event: TableEvent, shiftMs: number, aheadMs: number): TableEvent | undefined {
  const { hands: _hands, ...said } = event
  const shifted: TableEvent =
    'outAt' in said && said.outAt !== undefined ? { ...said, outAt: said.outAt - shiftMs } : said
  switch (shifted.kind) {
    case 'held':
    case 'resumed':
    case 'picked':
    case 'wax-pan':
    case 'clock-moved':
    case 'met':
    case 'was-named':
      return undefined
    case 'settings-set': {
      const settings = ofTable(shifted.settings)
      return Object.keys(settings).length > 0 ? { ...shifted, settings } : undefined
    }
    case 'dip-corrected': {
      const { by: _by, ...mend } = shifted
      return mend
    }
    // Somebody else's by the plan: off that phone alone.
    case 'pot-gone':
      return shifted.handed ? undefined : shifted
    case 'air-set': {
      const { hung, cold, ...air } = shifted.air
      return {
        ...shifted,
        air: {
          ...air,
          ...(hung ? { hung: { ...hung, at: hung.at - aheadMs } } : {}),
          ...(cold ? { cold: { ...cold, at: cold.at - aheadMs } } : {}),
        },
      }
    }
    default:
      return shifted
  }
}
