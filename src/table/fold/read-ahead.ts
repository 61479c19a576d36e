import type { Stamped, TableEvent } from '../../../shared/events.ts'
import { dipTimesAfter, type Mend, type MendEvent } from './dip-times.ts'
import { dipKey, hitKey } from './waiting.ts'

/** A dip that went onto another pot than was hit. */
export interface Move {
  readonly dipId: string
  readonly from: string
  readonly to: string
  /** START there would have said that the coat below was dry. */
  readonly dry: boolean
  /** START said so where it was hit: that touch goes along. */
  readonly touched: boolean
}

/** What later records say of earlier ones, read before the fold. */
export interface Ahead {
  /**
   * Hits that are as if they had never been: taken back, the START of a count that was called off, a demo that was laid
   * where there was something already.
   */
  readonly out: ReadonlySet<string>
  /** Those of them that stand as taken back. */
  readonly back: ReadonlySet<string>
  /** By dip, in order. */
  readonly mends: ReadonlyMap<string, readonly Mend[]>
  /** By the hit that started the dip. */
  readonly moves: ReadonlyMap<string, Move>
  /** How much later than taken down a START was hit, ms, by its hit. */
  readonly laterMs: ReadonlyMap<string, number>
  /** Dips and hits that there are records of, as `waiting.ts` names them; asked for late. */
  readonly there: () => ReadonlySet<string>
  /** The dip that a record means which names a pot alone, where that dip went onto another pot. */
  readonly meant: ReadonlyMap<Stamped, string>
}

export const NOTHING_AHEAD: Ahead = {
  out: new Set(),
  back: new Set(),
  mends: new Map(),
  moves: new Map(),
  laterMs: new Map(),
  there: () => new Set(),
  meant: new Map(),
}

const isMend = (event: TableEvent): event is MendEvent =>
  event.kind === 'count-stopped' ||
  event.kind === 'dose-unsure' ||
  event.kind === 'dose-settled' ||
  event.kind === 'dip-corrected'

/** Whether a record changes how earlier ones are folded. */
export const looksBack = ({ kind }: TableEvent): boolean => LOOK_BACK.has(kind)

const LOOK_BACK: ReadonlySet<TableEvent['kind']> = new Set<TableEvent['kind']>([
  'taken-back',
  'put-back',
  'count-cancelled',
  'count-stopped',
  'dose-unsure',
  'dose-settled',
  'dip-corrected',
])

/** Reads a history ahead of its fold, so many events a step. */
export function* readAhead(events: readonly Stamped[], each: number): Generator<void, Ahead> {
  const back = new Set<string>()
  for (let first = 0; first < events.length; first += each) {
    takenBack(events.slice(first, first + each), back)
    yield
  }
  const out = new Set(back)
  const started = new Map<string, Started>()
  const touchedIn = new Set<string>()
  const mends = new Map<string, Mend[]>()
  const calledOff: string[] = []
  let skewMs = 0
  let unread = each
  for (const stamped of events) {
    if (unread-- === 0) {
      yield
      unread = each
    }
    const { event, hit, from } = stamped
    if (out.has(hit)) continue
    const offMs = from ? 0 : skewMs
    if (event.kind === 'touched') touchedIn.add(hit)
    else if (event.kind === 'dipped') started.set(event.dipId, { hit, event, skewMs: offMs })
    else if (event.kind === 'count-cancelled') calledOff.push(event.dipId)
    else if (event.kind === 'clock-moved') skewMs += event.byMs
    else if (isMend(event)) {
      const mend = { event, skewMs: offMs }
      const before = mends.get(event.dipId)
      if (before) before.push(mend)
      else mends.set(event.dipId, [mend])
    }
  }
  for (const dipId of calledOff) {
    const start = started.get(dipId)
    if (start) out.add(start.hit)
  }
  const moves = new Map<string, Move>()
  const laterMs = new Map<string, number>()
  for (const [dipId, said] of mends) {
    const start = started.get(dipId)
    if (!start) continue
    const { movedMs } = dipTimesAfter(start.event, start.skewMs, said)
    if (movedMs !== 0 && !start.event.told) laterMs.set(start.hit, movedMs)
    const move = moveOf(start.event, said, touchedIn.has(start.hit))
    if (move) moves.set(start.hit, move)
  }
  const there = keysOf(events, each)
  // At once where it may take its time; else where it is asked for, which is seldom.
  let known = each < events.length ? yield* there : undefined
  return {
    out,
    back,
    mends,
    moves,
    laterMs,
    there: () => (known ??= there.next().value as Set<string>),
    meant: moves.size === 0 ? NOTHING_AHEAD.meant : meantBy(events, out),
  }
}

/** Dips and hits that there are records of, so many records a step. */
function* keysOf(events: readonly Stamped[], each: number): Generator<undefined, Set<string>> {
  const keys = new Set<string>()
  let unread = each
  for (const stamped of events) {
    if (unread-- === 0) {
      yield
      unread = each
    }
    const { event, hit } = stamped
    keys.add(hitKey(hit))
    if (event.kind === 'dipped') keys.add(dipKey(event.dipId))
  }
  return keys
}

interface Started {
  readonly hit: string
  readonly event: Extract<TableEvent, { kind: 'dipped' }>
  readonly skewMs: number
}

/** Where a dip went instead, if it did. */
function moveOf(
  { dipId, potId: from }: Started['event'],
  said: readonly Mend[],
  touched: boolean,
): Move | undefined {
  const last = said.findLast(({ event }) => event.kind === 'dip-corrected' && event.potId !== undefined)
  if (last?.event.kind !== 'dip-corrected' || last.event.potId === undefined) return undefined
  const { potId: to, dry = false } = last.event
  return to === from ? undefined : { dipId, from, to, dry, touched }
}

/** The hits that stand as taken back; `out`: by earlier events. */
export function takenBack(events: readonly Stamped[], out = new Set<string>()): Set<string> {
  for (const { event } of events) {
    if (event.kind === 'taken-back') out.add(event.hit)
    else if (event.kind === 'put-back') out.delete(event.hit)
  }
  return out
}

/**
 * Records of feet that name no dip meant the pot's latest as the phone had it then. Where that dip turned out to be
 * on another pot, they go with it.
 */
function meantBy(events: readonly Stamped[], out: ReadonlySet<string>): Map<Stamped, string> {
  const latest = new Map<string, string[]>()
  const on = new Map<string, string>()
  const meant = new Map<Stamped, string>()
  const put = (potId: string, dipId: string) => {
    const from = latest.get(on.get(dipId) ?? '')
    from?.splice(from.indexOf(dipId), 1)
    on.set(dipId, potId)
    latest.set(potId, [...(latest.get(potId) ?? []), dipId])
  }
  for (const stamped of events) {
    const { event, hit } = stamped
    if (out.has(hit)) continue
    if (event.kind === 'dipped') put(event.potId, event.dipId)
    else if (event.kind === 'dip-corrected' && event.potId !== undefined) put(event.potId, event.dipId)
    else if ((event.kind === 'sponged' || event.kind === 'set-down') && event.dipId === undefined) {
      const dipId = latest.get(event.potId)?.at(-1)
      if (dipId !== undefined) meant.set(stamped, dipId)
    }
  }
  return meant
}

/** The first place from which a history is folded anew because of these later records. */
export function foldedAnewFrom(events: readonly Stamped[], later: readonly Stamped[]): number {
  const hits = new Set<string>()
  const dips = new Set<string>()
  const unread = [...later]
  for (let stamped = unread.pop(); stamped; stamped = unread.pop()) {
    const { event } = stamped
    if (!looksBack(event)) continue
    if ('dipId' in event && event.dipId !== undefined && !dips.has(event.dipId)) {
      dips.add(event.dipId)
      const start = events.findLast(
        (other) => other.event.kind === 'dipped' && other.event.dipId === event.dipId,
      )
      if (start) hits.add(start.hit)
    }
    if ('hit' in event && !hits.has(event.hit)) {
      hits.add(event.hit)
      unread.push(...events.filter(({ hit }) => hit === event.hit))
    }
  }
  const first = events.findIndex(({ hit }) => hits.has(hit))
  return first < 0 ? events.length - later.length : Math.min(first, events.length - later.length)
}

function without<T extends object, K extends keyof T>(of: T, key: K): Omit<T, K> {
  const { [key]: _left, ...rest } = of
  return rest
}

/** A record as it turned out to have been; undefined where nothing of it was. */
export function asItWas(recorded: Stamped, ahead: Ahead): Stamped | undefined {
  const { event, hit } = recorded
  const laterMs = ahead.laterMs.get(hit)
  const stamped = laterMs === undefined ? recorded : { ...recorded, at: recorded.at + laterMs }
  const move = ahead.moves.get(hit)
  const being = (changed: TableEvent): Stamped => ({ ...stamped, event: changed })
  switch (event.kind) {
    case 'dipped': {
      const said = ahead.mends.get(event.dipId)
      if (!said) return stamped
      let { potId, bucketId, hands } = event
      for (const mend of said) {
        if (mend.event.kind !== 'dip-corrected') continue
        potId = mend.event.potId ?? potId
        bucketId = mend.event.bucketId ?? bucketId
        hands = mend.event.by ?? hands
      }
      return being({ ...event, potId, bucketId, ...(hands === undefined ? {} : { hands }) })
    }
    case 'touched':
      if (!move || !event.potIds.includes(move.from)) return stamped
      return move.dry ? being({ ...without(event, 'dipIds'), potIds: [move.to] }) : undefined
    case 'waxed':
    case 'wiped':
      return move && event.potId === move.from && event.implied ? undefined : stamped
    case 'sponged':
    case 'set-down': {
      const dipId = event.dipId ?? ahead.meant.get(recorded)
      return dipId === undefined || dipId === event.dipId ? stamped : being({ ...event, dipId })
    }
    default:
      return stamped
  }
}
