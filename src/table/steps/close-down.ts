/** The end of a sitting: when it has come, what of its work is left, and what the sitting came to. */

import type { Action } from '../model/action.ts'
import { coatsOn, lastDip, wantsCoats } from '../model/plan.ts'
import type { Ended, Hands, Table } from '../model/state.ts'
import { dueAt, dueWhat } from './steps.ts'
import { type AtStep, stepsOf } from './work.ts'

/** Hands with nothing to do for so long have ended their sitting, and coats so far apart are of two. Our choice. */
const APART_MS = 6 * 3_600_000

/** A foot that comes to be checked so soon is waited for before the floor is mopped; for one later nobody stays. Our choice. */
const STAYS_MS = 3_600_000

/** The coats that went on in one go, at most {@link APART_MS} from one to the next: the latest such go. */
export interface LatestSitting {
  /** OUT of its first dip, table time, ms. */
  readonly since: number
  readonly pots: number
  readonly coats: number
}

/** What the latest sitting came to, of the pots that are still there; undefined before any coat. */
export function latestSitting(table: Table): LatestSitting | undefined {
  const coats = Object.values(table.pots)
    .flatMap((pot) => coatsOn(pot).map(({ outAt }) => ({ pot, outAt })))
    .sort((a, b) => b.outAt - a.outAt)
  const [last] = coats
  if (!last) return undefined
  let since = last.outAt
  for (const { outAt } of coats) {
    if (since - outAt > APART_MS) break
    since = outAt
  }
  const there = coats.filter(({ pot, outAt }) => outAt >= since && !pot.gone)
  return { since, pots: new Set(there.map(({ pot }) => pot)).size, coats: there.length }
}

/** One thing to do at the end, in its order. */
export type EndStep =
  | { readonly is: 'return'; readonly collar: NonNullable<Hands['collar']> }
  /** `more`: other buckets whose lids are to go on. */
  | { readonly is: 'lid'; readonly bucketId: string; readonly more: number; readonly levelRead: boolean }
  | { readonly is: 'pan' }
  | { readonly is: 'tools' }
  | { readonly is: 'floor' }

/**
 * What is left to do now that the sitting is over, in order; undefined while it is not. What was not used since it was
 * put away last has nothing to do.
 */
export function endSteps(table: Table, now: number): readonly EndStep[] | undefined {
  const steps = stepsOf(table, now)
  if (!isOver(table, steps, now)) return undefined
  const uses = usesOf(table)
  const lastUse = Math.max(...uses.values())
  const isPast = (done: Ended | undefined, usedAt: number) => done !== undefined && done.at >= usedAt
  const collar = table.collar ?? table.others?.collar
  const open = [...uses].filter(([bucketId, usedAt]) => !isPast(table.buckets[bucketId]?.lid, usedAt))
  return [
    ...(collar ? [{ is: 'return', collar } as const] : []),
    ...open.map(([bucketId, usedAt], i): EndStep => {
      const readAt = table.buckets[bucketId]?.level?.at ?? Number.NEGATIVE_INFINITY
      return { is: 'lid', bucketId, more: open.length - 1 - i, levelRead: readAt > usedAt }
    }),
    ...(table.pan ? [{ is: 'pan' } as const] : []),
    ...(uses.size === 0 || isPast(table.tools, lastUse) ? [] : [{ is: 'tools' } as const]),
    ...(uses.size === 0 || isPast(table.floor, lastUse) || steps.some((at) => isFootSoon(table, at, now))
      ? []
      : [{ is: 'floor' } as const]),
  ]
}

/** What was left out at the end of this sitting, as the actions that do it after all. */
export function leftAtEnd(table: Table): readonly Action[] {
  const uses = usesOf(table)
  const lastUse = Math.max(...uses.values())
  const left = (done: Ended | undefined, usedAt: number) => done?.left === true && done.at >= usedAt
  return [
    ...[...uses].flatMap(([bucketId, usedAt]): Action[] =>
      left(table.buckets[bucketId]?.lid, usedAt) ? [{ do: 'lid-on', bucketId }] : [],
    ),
    ...(left(table.tools, lastUse) ? [{ do: 'tools-washed' } as const] : []),
    ...(left(table.floor, lastUse) ? [{ do: 'floor-mopped' } as const] : []),
  ]
}

/** Buckets of the latest sitting, those that hands have open first, and when each was stirred or dipped into last. */
function usesOf(table: Table): ReadonlyMap<string, number> {
  const since = (latestSitting(table)?.since ?? Number.POSITIVE_INFINITY) - APART_MS
  const last = new Map<string, number>()
  const use = (bucketId: string, at: number) => {
    if (at >= since && table.buckets[bucketId]) last.set(bucketId, Math.max(at, last.get(bucketId) ?? at))
  }
  const inHand = [table.openBucket, table.others?.openBucket]
  const isOpen = (bucketId: string) => Number(!inHand.includes(bucketId))
  for (const bucketId of Object.keys(table.buckets).sort((a, b) => isOpen(a) - isOpen(b))) {
    const at = table.buckets[bucketId]?.stirredAt
    if (at !== undefined) use(bucketId, at)
  }
  for (const { dips } of Object.values(table.pots))
    for (const { bucketId, outAt } of dips) use(bucketId, outAt)
  return last
}

/** What a foot leaves on the table is wiped up with the rest: the floor is the last of all. */
const isFootSoon = (table: Table, { pot, step }: AtStep, now: number): boolean =>
  !pot.later &&
  (step.is === 'foot-check' || (dueWhat(table, pot, step) === 'foot-check' && dueAt(step) - now <= STAYS_MS))

/** Coats are on, and no pot of this sitting wants one, or its hands, for long. */
function isOver(table: Table, steps: readonly AtStep[], now: number): boolean {
  return (
    steps.some(({ pot, step }) => step.is === 'kiln' || step.is === 'foot-check' || lastDip(pot)) &&
    steps.every(({ pot, step }) => {
      if (step.is === 'stuck') return false
      const waits = 'askAt' in step || ('until' in step && step.is !== 'drip')
      return pot.later || !wantsCoats(table, pot) || (waits && dueAt(step) - now > APART_MS)
    })
  )
}
