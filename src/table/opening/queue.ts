import { firedOf } from '../fired/fired-pot.ts'
import { loadsOf } from '../load/loads.ts'
import type { LoadState } from '../model/load-state.ts'
import { potsOnTable, wantsCoats } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'

const DAY_MS = 86_400_000
/** A pot is looked at again so long after it was judged: crazing may come late. Common practice, no source. */
const AGAIN_MS = [DAY_MS, 7 * DAY_MS] as const
/** Longer ago than this nobody is asked to find a pot again. Our choice. */
const FORGET_MS = 60 * DAY_MS

/** Where a pot stood or stands in the kiln, as 2.4; undefined where nobody noted it. */
export function placeIn(table: Table, pot: PotState): string | undefined {
  const { potId, lidOf } = pot.facts
  const known = firedOf(pot).place
  if (known !== undefined) return known
  const key = lidOf ?? potId
  return loadsOf(table).find(({ things }) => things[key] !== undefined)?.things[key]?.place
}

/** Places from the top shelf down, on each as they are numbered; what has none comes last. */
function byReach(a: string | undefined, b: string | undefined): number {
  if (a === undefined || b === undefined) return Number(a === undefined) - Number(b === undefined)
  const [[levelA = 0, nthA = 0], [levelB = 0, nthB = 0]] = [
    a.split('.').map(Number),
    b.split('.').map(Number),
  ]
  return levelB - levelA || nthA - nthB
}

/** The pots of a load as hands reach them, from the top shelf down, each jar before its lid. */
export function potsToOpen(table: Table, load: LoadState): readonly PotState[] {
  const pots = Object.values(load.things).flatMap(({ potId }) => table.pots[potId ?? ''] ?? [])
  const lids = Object.values(table.pots).filter(
    ({ facts, gone, fired }) => facts.lidOf !== undefined && (!gone || fired !== undefined),
  )
  return pots
    .map((pot) => ({ pot, place: placeIn(table, pot) }))
    .sort((a, b) => byReach(a.place, b.place) || a.pot.facts.number - b.pot.facts.number)
    .flatMap(({ pot }) => [pot, ...lids.filter(({ facts }) => facts.lidOf === pot.facts.potId)])
}

/** Whether a pot out of the kiln, or still in it, was not judged yet. */
export const isToJudge = (pot: PotState): boolean => firedOf(pot).found === undefined

/** Whether any pot came out of a fire so far, or its kiln is open. */
export const isAnyFired = (table: Table): boolean =>
  Object.values(table.loads ?? {}).some(({ openedAt }) => openedAt !== undefined) ||
  Object.values(table.pots).some((pot) => pot.fired !== undefined && firedOf(pot).outAt !== undefined)

/** Pots on the board that may have been fired without a load here: all their coats are on. */
export function firedElsewhere(table: Table): readonly PotState[] {
  const loaded = new Set(loadsOf(table).flatMap(({ things }) => Object.keys(things)))
  return potsOnTable(table).filter(
    (pot) =>
      !loaded.has(pot.facts.lidOf ?? pot.facts.potId) &&
      !wantsCoats(table, pot) &&
      (pot.dips.length > 0 || pot.coatsCounted !== undefined || pot.uncounted),
  )
}

/** How many later looks are due of a pot: one after a day, one more after a week. */
function looksDue(pot: PotState, now: number): number {
  const { found, looks } = firedOf(pot)
  if (!found || found.stuck === 'lost' || now - found.at > FORGET_MS) return 0
  const due = AGAIN_MS.filter((afterMs) => now >= found.at + afterMs)
  const last = looks.at(-1)?.at ?? found.at
  return due.filter((afterMs) => last < found.at + afterMs).length
}

/** Pots that are to be looked at again, those judged first first. Table time, ms. */
export const toLookAt = (table: Table, now: number): readonly PotState[] =>
  Object.values(table.pots)
    .filter((pot) => pot.fired !== undefined && looksDue(pot, now) > 0)
    .sort((a, b) => (firedOf(a).found?.at ?? 0) - (firedOf(b).found?.at ?? 0))

/** When the next look at a pot is due, table time, ms; undefined when both are over. */
export function nextLookAt(pot: PotState): number | undefined {
  const { found, looks } = firedOf(pot)
  if (!found || found.stuck === 'lost') return undefined
  const last = looks.at(-1)?.at ?? found.at
  return AGAIN_MS.map((afterMs) => found.at + afterMs).find((at) => last < at)
}

/** An opened load of which pots are still to be judged. */
interface LoadToJudge {
  readonly load: LoadState
  readonly pots: readonly PotState[]
}

/** Opened loads with pots that nobody judged yet, the latest begun first, however many were lit since. Table time, ms. */
export const loadsToJudge = (table: Table, now: number): readonly LoadToJudge[] =>
  loadsOf(table).flatMap((load): LoadToJudge[] => {
    if (load.openedAt === undefined || now - load.openedAt > FORGET_MS) return []
    const pots = potsToOpen(table, load).filter(isToJudge)
    return pots.length > 0 ? [{ load, pots }] : []
  })

/**
 * The load that an opening without a name is of: the latest one that was lit, or while its lid is shut the latest opened one
 * with pots to judge. Table time, ms.
 */
export function loadToOpen(table: Table, now: number): LoadState | undefined {
  const latest = loadsOf(table).find(({ litAt }) => litAt !== undefined)
  return latest?.openedAt === undefined ? (loadsToJudge(table, now)[0]?.load ?? latest) : latest
}
