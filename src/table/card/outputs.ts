import type { Table } from '../model/state.ts'
import { type AheadCall, callsAhead } from '../steps/calls-ahead.ts'
import { panAsk } from '../steps/wax-pan.ts'
import { stepsOf } from '../steps/work.ts'
import { cardOf } from './card-now.ts'
import { panWords, type Spoken, spokenOf } from './spoken.ts'

/** A ready call, said again until somebody answers. */
export interface ReadyCall {
  /** Changes when another pot joins, or when it is time to say it again. */
  readonly key: string
  /** When it was first due, table time, ms. */
  readonly at: number
  readonly bucketId: string
  readonly bucketLetter: string
  readonly potIds: readonly string[]
  readonly places: readonly { readonly board: string; readonly place: number }[]
}

/** What should be going on outside the state: one reconciler makes it so. */
export interface Outputs {
  /** Hands are at work or a pot waits: the screen stays on. */
  readonly awake: boolean
  /** One a bucket, the longest overdue first. */
  readonly calls: readonly ReadyCall[]
  /** What the card that came wants said, once. */
  readonly say?: Spoken
  /** The wax pan wants an answer: said again with another key. */
  readonly pan: Spoken | undefined
  /** Pots that want a touch. */
  readonly due: number
}

/** Minutes after it was due at which a call is said; after the last, every ten. */
const SAY_AT_MIN = [0, 1, 3, 6]
const THEN_EVERY_MIN = 10

/** What should sound and stay awake at table time `now`. */
export function outputsOf(table: Table, now: number): Outputs {
  const steps = stepsOf(table, now)
  const pan = panWords(panAsk(table, now))
  const awake = table.pan !== undefined || steps.some(({ step }) => step.is !== 'kiln' && step.is !== 'stuck')
  const due = steps.filter(({ step }) => step.is === 'touch').length
  const card = cardOf(table, now)
  const busy = card.kind === 'count' || card.kind === 'out'
  const calls = due > 0 && !busy ? readyCalls(callsAhead(table, now), now) : []
  return { awake, calls, say: spokenOf(table, card), pan, due }
}

function readyCalls(ahead: readonly AheadCall[], now: number): readonly ReadyCall[] {
  const due = ahead.filter(({ at }) => at <= now)
  return due
    .filter(({ bucketId }, i) => due.findIndex((call) => call.bucketId === bucketId) === i)
    .map((first) => {
      const pots = due.filter(({ bucketId }) => bucketId === first.bucketId).flatMap((call) => call.pots)
      const potIds = pots.map(({ facts }) => facts.potId)
      return {
        key: `${potIds.join()} ${timesSaid(now - first.at)}`,
        at: first.at,
        bucketId: first.bucketId,
        bucketLetter: first.bucketLetter,
        potIds,
        places: pots.map(({ facts }) => ({ board: facts.place.board, place: facts.place.spot })),
      }
    })
}

/** How often a call that is so long overdue should have been said. */
function timesSaid(overdueMs: number): number {
  const min = overdueMs / 60_000
  const early = SAY_AT_MIN.filter((at) => at <= min).length
  const last = SAY_AT_MIN.at(-1) ?? 0
  return early + Math.max(0, Math.floor((min - last) / THEN_EVERY_MIN))
}
