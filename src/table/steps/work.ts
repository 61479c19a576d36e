import { TOGETHER_MS } from '../forecast/forecast.ts'
import { nextCoat, planOf, potsOnTable } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { HAND_STEPS, type HandStepName, handStepsOf } from './step-rows.ts'
import { nextBucket, type Step, stepOf } from './steps.ts'

export interface AtStep {
  readonly pot: PotState
  readonly step: Step
}

const latest = new WeakMap<Table, { readonly now: number; readonly steps: readonly AtStep[] }>()

/** Every pot on the table with the step it is at. Card, hands line and calls ask for the same moment. */
export function stepsOf(table: Table, now: number): readonly AtStep[] {
  const before = latest.get(table)
  if (before?.now === now) return before.steps
  const steps = potsOnTable(table).map((pot) => ({ pot, step: stepOf(table, pot, now) }))
  latest.set(table, { now, steps })
  return steps
}

/** Coats still to come: the longest chain goes first. */
const coatsLeft = (table: Table, pot: PotState): number => planOf(table, pot).length - nextCoat(pot)

/** More than so many have no room on a card: the others are called when these are answered. */
export const MOST_TOGETHER = 6

/** The next thing a pair of hands can do with a pot, in one of the orders that a table works through. */
export type Work =
  | { readonly is: 'touch'; readonly bucketId: string; readonly pots: readonly PotState[] }
  | { readonly is: 'dip'; readonly pot: PotState; readonly bucketId: string }
  | { readonly is: HandStepName; readonly pot: PotState; readonly left: number }

/**
 * What the hands do next. A simple rule: first the bucket that is open (touch what is due for it, dip what can be
 * dipped), then touch what is due at all, then wax and wipe, then open the bucket on the longest chain, then
 * sign off feet. Among equals the pot with most coats to come, then the order of places.
 */
export function nextWork(table: Table, steps: readonly AtStep[], now: number): Work | undefined {
  const open = table.openBucket
  const due = (bucketId: string | undefined) => dueFor(table, steps, bucketId, now)
  const dip = (bucketId: string | undefined): Work | undefined => {
    const pots = at(steps, 'dip').filter(
      (pot) => bucketId === undefined || nextBucket(table, pot) === bucketId,
    )
    const pot = longest(table, pots)
    const into = pot && nextBucket(table, pot)
    return pot && into ? { is: 'dip', pot, bucketId: into } : undefined
  }
  const first = (names: readonly HandStepName[]) => names.flatMap((name) => firstAt(steps, name) ?? [])[0]
  return (
    (open === undefined ? undefined : (due(open) ?? dip(open))) ??
    due(undefined) ??
    first(handStepsOf('before-dips')) ??
    dip(undefined) ??
    first(handStepsOf('after-dips'))
  )
}

const firstAt = (steps: readonly AtStep[], is: HandStepName): Work | undefined => {
  const [pot] = at(steps, is)
  return pot && { is, pot, left: leftAt(steps, is) }
}

/** Steps before the first dip, from which a pot still comes to the others. */
const BEFORE_DIPS: ReadonlySet<Step['is']> = new Set([
  ...handStepsOf('before-dips'),
  'wax-sets',
  'wipe-dries',
  'damp-dries',
])

/** How many pots still want a step of the hands: those at it, and those that come to it later. */
export function leftAt(steps: readonly AtStep[], is: HandStepName): number {
  const { when, at: doneAt } = HAND_STEPS[is]
  if (when === 'after-dips') return at(steps, is).length
  return steps.filter(
    ({ pot, step }) => BEFORE_DIPS.has(step.is) && pot[doneAt] === undefined && pot.washedAt === undefined,
  ).length
}

/** A foot to sign off, if any. */
export const footCheck = (steps: readonly AtStep[]): Work | undefined => firstAt(steps, 'foot-check')

/** Pots to touch before one bucket, or before the one with the longest chain; those due within a minute join, as far as a card has room. */
export function dueFor(
  table: Table,
  steps: readonly AtStep[],
  bucketId: string | undefined,
  now: number,
): Extract<Work, { is: 'touch' }> | undefined {
  const pots = at(steps, 'touch').filter(
    (pot) => bucketId === undefined || nextBucket(table, pot) === bucketId,
  )
  const first = longest(table, pots)
  const into = first && nextBucket(table, first)
  if (into === undefined) return undefined
  const soon = steps.flatMap(({ pot, step }) =>
    step.is === 'touch' || (step.is === 'wait' && step.askAt - now <= TOGETHER_MS) ? [pot] : [],
  )
  const called = soon.filter((pot) => nextBucket(table, pot) === into).slice(0, MOST_TOGETHER)
  return { is: 'touch', bucketId: into, pots: called }
}

/** Pots at one step, in the order of places. */
export const at = (steps: readonly AtStep[], is: Step['is']): readonly PotState[] =>
  steps.filter(({ step }) => step.is === is).map(({ pot }) => pot)

const longest = (table: Table, pots: readonly PotState[]): PotState | undefined =>
  pots.reduce<PotState | undefined>(
    (best, pot) => (best === undefined || coatsLeft(table, pot) > coatsLeft(table, best) ? pot : best),
    undefined,
  )

/** Pots whose next coat comes from this bucket and that are ready for it, or for the touch check before it. */
export const waitingFor = (table: Table, steps: readonly AtStep[], bucketId: string): number =>
  steps.filter(
    ({ pot, step }) => (step.is === 'dip' || step.is === 'touch') && nextBucket(table, pot) === bucketId,
  ).length
