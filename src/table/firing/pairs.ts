import type { PairFacts } from '../../../shared/nouns.ts'
import type { GlazePair } from '../../engine/melt/coats.ts'
import { pairKey } from '../model/pair-key.ts'
import type { Table } from '../model/state.ts'
import { tilesOf } from './tiles.ts'

export interface Pair extends PairFacts {
  readonly is: 'proved' | 'untried' | 'went-wrong'
  /** Of those proved, the flow tiles. */
  readonly tiles: number
}

/** What is known of one glaze over another, by hand and by tile. One that went wrong outweighs those that did not. */
export function pairOf(table: Table, overId: string, underId: string): Pair {
  const known = table.pairs[pairKey({ overId, underId })]
  const tiles = tilesOf(table, overId, underId).length
  const proved = (known?.proved ?? 0) + tiles
  const wrong = known?.wrong ?? 0
  return {
    overId,
    underId,
    proved,
    wrong,
    tiles,
    is: wrong > 0 ? 'went-wrong' : proved > 0 ? 'proved' : 'untried',
  }
}

const RANK: readonly Pair['is'][] = ['went-wrong', 'proved', 'untried']

/** Every other glaze over this one: what went wrong first, then the proved by their count, then the untried. */
export const pairsOver = (table: Table, underId: string): readonly Pair[] =>
  Object.keys(table.buckets)
    .filter((overId) => overId !== underId)
    .map((overId) => pairOf(table, overId, underId))
    .sort((a, b) => RANK.indexOf(a.is) - RANK.indexOf(b.is) || b.proved - a.proved)

/** Pairs that were fired and came out well, as the melt asks for them. */
export const pairsProved = (table: Table): readonly GlazePair[] =>
  Object.keys(table.buckets).flatMap((under) =>
    pairsOver(table, under).flatMap(({ is, overId }) => (is === 'proved' ? [{ over: overId, under }] : [])),
  )
