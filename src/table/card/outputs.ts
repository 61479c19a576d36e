import { byPlace } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { type AheadCall, callsAhead } from '../steps/calls-ahead.ts'
import { panAsk } from '../steps/wax-pan.ts'
import { stepsOf } from '../steps/work.ts'
import { CARD_ROWS, type Card } from './card.ts'
import { type Line, panWords, type Spoken, spokenOf } from './spoken.ts'

/** A ready call, made again until somebody answers. */
export interface ReadyCall {
  /** When it was first due, table time, ms. */
  readonly at: number
  readonly bucketId: string
  readonly bucketLetter: string
  /** In the order of places, as `places`. */
  readonly potIds: readonly string[]
  readonly places: readonly { readonly board: string; readonly place: number }[]
  /** The card asks for these pots: their places are said. Other pots are called by the two notes of their bucket. */
  readonly onCard: boolean
}

/** What should be going on outside the state: one reconciler makes it so. */
export interface Outputs {
  /** Hands are at work or a pot waits: the screen stays on. */
  readonly awake: boolean
  /** One a bucket: the card's own first, then the longest overdue. */
  readonly calls: readonly ReadyCall[]
  /** What the card that came and the last hit want said, once. */
  readonly say: Spoken
  /** The wax pan wants an answer: said again with another key. */
  readonly pan: Line | undefined
}

/** What should sound and stay awake at table time `now`, beside the card that shows. */
export function outputsOf(table: Table, now: number, card: Card): Outputs {
  const steps = stepsOf(table, now)
  const pan = panWords(panAsk(table, now))
  const ends = CARD_ROWS[card.kind]?.ends === true || card.kind === 'return'
  const awake =
    table.pan !== undefined || ends || steps.some(({ step }) => step.is !== 'kiln' && step.is !== 'stuck')
  const busy = card.kind === 'count' || card.kind === 'out'
  const calls = busy ? [] : readyCalls(table, callsAhead(table, now), now, card)
  return { awake, calls, say: spokenOf(table, card, now), pan }
}

function readyCalls(
  table: Table,
  ahead: readonly AheadCall[],
  now: number,
  card: Card,
): readonly ReadyCall[] {
  const due = ahead.filter(({ at }) => at <= now)
  const groups = new Map<string, { readonly first: AheadCall; readonly pots: PotState[] }>()
  for (const call of due) {
    const group = groups.get(call.bucketId)
    if (group) group.pots.push(...call.pots)
    else groups.set(call.bucketId, { first: call, pots: [...call.pots] })
  }
  const calls = [...groups.values()].map(({ first, pots }): ReadyCall => {
    const onCard = card.kind === 'ready' && card.bucketId === first.bucketId
    // A card that asks for several asks for those as well that are due within a minute.
    const asked = (onCard ? card.potIds.flatMap((potId) => table.pots[potId] ?? []) : [...pots]).sort(byPlace)
    const potIds = asked.map(({ facts }) => facts.potId)
    return {
      at: first.at,
      bucketId: first.bucketId,
      bucketLetter: first.bucketLetter,
      potIds,
      places: asked.map(({ facts }) => ({ board: facts.place.board, place: facts.place.spot })),
      onCard,
    }
  })
  return [...calls.filter(({ onCard }) => onCard), ...calls.filter(({ onCard }) => !onCard)]
}
