import type { Pattern, Place } from '../../../shared/nouns.ts'
import { coatsOn, nextCoat, planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { type PotTileName, STEP_ROWS } from '../steps/step-rows.ts'
import { dueAt, type Step } from '../steps/steps.ts'
import { stepsOf } from '../steps/work.ts'
import type { Card } from './card.ts'

/** What a tile says of its pot. `untilMs` is table time; `Infinity` is never in this air. */
export type PotTileState =
  | { readonly is: 'wait'; readonly untilMs: number }
  | { readonly is: Exclude<PotTileName, 'wait' | 'kiln'> }
  | { readonly is: 'kiln'; readonly dryMs: number; readonly dryByMs: number }

export interface CoatBand {
  readonly pattern: Pattern
  readonly on: boolean
}

export interface TileOfPot {
  readonly potId: string
  readonly number: number
  /** It is the lid of the pot of that number. */
  readonly lid: boolean
  readonly place: Place
  readonly bands: readonly CoatBand[]
  readonly state: PotTileState
}

export interface BoardView {
  readonly tiles: readonly TileOfPot[]
  readonly waiting: number
  readonly ready: number
}

/** Every pot on the table as a tile, in the order of places, with what the card asks for next marked. */
export function boardView(table: Table, card: Card, nowMs: number): BoardView {
  const steps = stepsOf(table, nowMs)
  const next = potOf(card)
  const tiles = steps.map(({ pot, step }): TileOfPot => {
    const { potId, number, place } = pot.facts
    const state: PotTileState = pot.later && step.is !== 'kiln' ? { is: 'later' } : potTileState(step)
    const asked = potId === next && ACTIVE.has(state.is)
    return {
      potId,
      number,
      lid: pot.facts.lidOf !== undefined,
      place,
      bands: bandsOf(table, pot),
      state: asked ? { is: 'next' } : state,
    }
  })
  const count = (is: PotTileState['is']) => tiles.filter(({ state }) => state.is === is).length
  return { tiles, waiting: count('wait'), ready: count('ready') }
}

/** States in which the hands could take the pot: one of them is next. */
const ACTIVE: ReadonlySet<PotTileState['is']> = new Set(['dip'])

const potOf = (card: Card): string | undefined =>
  card.kind === 'armed' ? card.armed.potId : 'potId' in card ? card.potId : undefined

/** What the board says of a step. */
export function potTileState(step: Step): PotTileState {
  const { tile } = STEP_ROWS[step.is]
  if (tile === 'wait') return { is: tile, untilMs: dueAt(step) }
  if (tile === 'kiln') {
    const dry = step.is === 'kiln' ? step.dry : { likely: Infinity, upper: Infinity }
    return { is: tile, dryMs: dry.likely, dryByMs: dry.upper }
  }
  return { is: tile }
}

/** The coats of a pot in order: those on it, then those to come. */
export function bandsOf(table: Table, pot: PotState): CoatBand[] {
  const band = (bucketId: string, on: boolean): CoatBand[] => {
    const pattern = table.buckets[bucketId]?.facts.pattern
    return pattern ? [{ pattern, on }] : []
  }
  return [
    ...coatsOn(pot).flatMap((dip) => band(dip.bucketId, true)),
    ...planOf(table, pot)
      .slice(nextCoat(pot))
      .flatMap((coat) => band(coat.bucketId, false)),
  ]
}
