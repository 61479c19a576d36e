import { cardOf } from './bench.ts'
import type { PotState, Table } from './state.ts'
import { nextBucket } from './steps.ts'
import { isFresh, stepsOf } from './work.ts'

/** A ready call, said again until somebody answers. */
export interface ReadyCall {
  /** Changes when another pot joins, or when it is time to say it again. */
  readonly key: string
  readonly bucketLetter: string
  readonly places: readonly { readonly board: string; readonly place: number }[]
  readonly numbers: readonly number[]
}

/** What should be going on outside the state: one reconciler makes it so. */
export interface Outputs {
  /** Hands are at work or a pot waits: the screen stays on. */
  readonly awake: boolean
  readonly call?: ReadyCall
  /** Pots that want a touch. */
  readonly due: number
}

/** Minutes after it was due at which a call is said; after the last, every ten. */
const SAY_AT_MIN = [0, 1, 3, 6]
const THEN_EVERY_MIN = 10

/** What should sound and stay awake at table time `now`. */
export function outputsOf(table: Table, now: number): Outputs {
  const steps = stepsOf(table, now)
  const awake = steps.some(({ step }) => step.is !== 'kiln' && step.is !== 'stuck')
  const card = cardOf(table, now)
  const due = steps.flatMap(({ pot, step }) => (step.is === 'touch' ? [{ pot, at: step.askAt }] : []))
  const first = due.reduce<(typeof due)[number] | undefined>(
    (least, entry) => (least === undefined || entry.at < least.at ? entry : least),
    undefined,
  )
  if (!first || card.kind === 'count' || card.kind === 'out') return { awake, due: due.length }
  const into = nextBucket(table, first.pot)
  const pots = due.filter(({ pot }) => nextBucket(table, pot) === into).map(({ pot }) => pot)
  const letter = into === undefined ? undefined : table.buckets[into]?.facts.letter
  if (letter === undefined) return { awake, due: due.length }
  const times = timesSaid(now - first.at)
  return {
    awake,
    due: due.length,
    call: {
      key: `${pots.map((pot) => pot.facts.potId).join()} ${times}`,
      bucketLetter: letter,
      places: pots.map(({ facts }: PotState) => ({ board: facts.place.board, place: facts.place.spot })),
      numbers: pots.map(({ facts }) => facts.number),
    },
  }
}

/** How often a call that is so long overdue should have been said. */
function timesSaid(overdueMs: number): number {
  const min = overdueMs / 60_000
  const early = SAY_AT_MIN.filter((at) => at <= min).length
  const last = SAY_AT_MIN.at(-1) ?? 0
  return early + Math.max(0, Math.floor((min - last) / THEN_EVERY_MIN))
}

/** Nothing physical runs and nothing is typed: a new version may be taken on. */
export const isQuiet = (table: Table, now: number): boolean => {
  const { kind } = cardOf(table, now)
  return kind !== 'count' && kind !== 'out' && kind !== 'drip' && !isBusy(table, now)
}

const isBusy = (table: Table, now: number): boolean =>
  stepsOf(table, now).some(({ step }) => step.is === 'wait' || step.is === 'touch') ||
  (table.openBucket !== undefined && isFresh(table, table.openBucket, now))
