import type { PairFacts } from '../../../shared/nouns.ts'
import {
  type Evidence,
  mayBeClear,
  type PairFired,
  type PairShown,
  pairShown,
} from '../../engine/fired/proven.ts'
import type { GlazePair } from '../../engine/melt/coats.ts'
import { tilesOf } from '../firing/tiles.ts'
import { pairKey } from '../model/pair-key.ts'
import type { PotState, Table } from '../model/state.ts'
import { pairsOn } from './fired-coats.ts'
import { factorsOf } from './lesson.ts'
import { type JudgedPot, judgedPots, maySpeak, resultOf, subjectOf } from './results.ts'

export interface Pair extends PairFacts {
  readonly is: 'proved' | 'untried' | 'went-wrong'
  /** Of those proved, the flow tiles. */
  readonly tiles: number
  /** Of those proved and of those that went wrong, what was counted by hand. */
  readonly byHand: { readonly proved: number; readonly wrong: number }
  /** Fired pots that speak for it and against it, by their ids. */
  readonly good: readonly string[]
  readonly bad: readonly string[]
}

interface Kept {
  /** What coats are computed from. */
  readonly of: readonly unknown[]
  readonly judged: readonly JudgedPot[]
  readonly carriers: ReadonlyMap<string, readonly JudgedPot[]>
  /** What they have shown, by pair, as it is asked for. */
  readonly shown: Map<string, PairShown>
}
/** By the tiles, which change seldom: the judged pots themselves are compared. */
const kept = new WeakMap<Table['tiles'], Kept>()

const alike = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i])

/** Judged pots that say something, by the pairs they carry. */
function carriersIn(table: Table): Kept {
  const judged = judgedPots(table)
  const of = [table.board, table.settings, ...Object.values(table.buckets).map(({ facts }) => facts)]
  const before = kept.get(table.tiles)
  if (before && alike(before.judged, judged) && alike(before.of, of)) return before
  const carriers = new Map<string, JudgedPot[]>()
  for (const one of judged) {
    if (!maySpeak(one)) continue
    for (const { over, under } of pairsOn(one.pot)) {
      const key = pairKey({ overId: over, underId: under })
      carriers.set(key, [...(carriers.get(key) ?? []), one])
    }
  }
  const now: Kept = { of, judged, carriers, shown: new Map() }
  kept.set(table.tiles, now)
  return now
}

const potId = (pot: PotState): string => pot.facts.potId

/** A fired pot as the pair's witness. Whose run it was is asked of those alone that ran. */
function firedWith(table: Table, judged: JudgedPot, pair: GlazePair): PairFired {
  const { pot, found, load, heat, pastFoot } = judged
  const ran = pastFoot === true || found.stuck !== undefined
  const owner = ran ? resultOf(table, judged).subject : undefined
  return {
    id: potId(pot),
    firing: load?.loadId ?? '',
    pastFoot: pastFoot === true,
    stuck: found.stuck !== undefined,
    faulty: found.faults.length > 0 || pastFoot === undefined || found.run === undefined,
    crawled: found.faults.includes('crawled'),
    short: heat?.short === true,
    others: owner !== undefined && !(owner.over === pair.over && owner.under === pair.under),
  }
}

function shownOf(table: Table, pair: GlazePair): PairShown {
  const { carriers, shown } = carriersIn(table)
  const key = pairKey({ overId: pair.over, underId: pair.under })
  let known = shown.get(key)
  if (!known) {
    known = pairShown((carriers.get(key) ?? []).map((one) => firedWith(table, one, pair)))
    shown.set(key, known)
  }
  return known
}

/**
 * What is known of one glaze over another: by fired pots, by tile, and by the hand that counted before. One that went wrong
 * outweighs those that did not; good pots of one firing prove nothing yet.
 */
export function pairOf(table: Table, overId: string, underId: string): Pair {
  const known = table.pairs[pairKey({ overId, underId })]
  const byHand = { proved: known?.proved ?? 0, wrong: known?.wrong ?? 0 }
  const tiles = tilesOf(table, overId, underId).length
  const pair = { over: overId, under: underId }
  const shown = shownOf(table, pair)
  const wrong = byHand.wrong + shown.bad.length
  const proved = byHand.proved + tiles + shown.firings
  const enough = byHand.proved + tiles > 0 || shown.is === 'proved'
  return {
    overId,
    underId,
    proved,
    wrong,
    tiles,
    byHand,
    good: shown.good,
    bad: shown.bad,
    is: wrong > 0 ? 'went-wrong' : enough ? 'proved' : 'untried',
  }
}

/** What was seen so far of a pair that does not count as proved: untried only where no pot of it was fired. */
export function pairSoFar(table: Table, overId: string, underId: string): 'went-wrong' | 'fired' | 'untried' {
  const { wrong, proved } = pairOf(table, overId, underId)
  if (wrong > 0) return 'went-wrong'
  return proved > 0 || carriersIn(table).carriers.has(pairKey({ overId, underId })) ? 'fired' : 'untried'
}

const RANK: readonly Pair['is'][] = ['went-wrong', 'proved', 'untried']

/** Every other glaze over this one: what went wrong first, then the proved by their count, then the untried. */
export const pairsOver = (table: Table, underId: string): readonly Pair[] =>
  Object.keys(table.buckets)
    .filter((overId) => overId !== underId)
    .map((overId) => pairOf(table, overId, underId))
    .sort((a, b) => RANK.indexOf(a.is) - RANK.indexOf(b.is) || b.proved - a.proved)

/** Whether results alone are grounds to call a pot with this pair clear: its run was seen, or could have been. */
function isGrounded(table: Table, { overId, underId, tiles, byHand }: Pair): boolean {
  if (tiles + byHand.proved > 0) return true
  const subject = subjectOf(overId, underId)
  const factor = factorsOf(table).find((one) => one.key === subject && one.cone === undefined)
  const evidence = (factor?.results ?? []).flatMap(({ seen, load, firstLn }): Evidence[] =>
    seen && load ? [{ firing: load.loadId, seen, firstLn }] : [],
  )
  return factor !== undefined && mayBeClear(false, evidence, factor.lnMean)
}

/** Pairs that were fired, came out well and have grounds, as the melt asks for them. */
export const pairsProved = (table: Table): readonly GlazePair[] =>
  Object.keys(table.buckets).flatMap((under) =>
    pairsOver(table, under).flatMap((pair) =>
      pair.is === 'proved' && isGrounded(table, pair) ? [{ over: pair.overId, under }] : [],
    ),
  )
