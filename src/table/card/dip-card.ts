import type { Collar } from '../advice/collar.ts'
import { filledAt } from '../forecast/forecast.ts'
import { coatFrom } from '../model/coat-from.ts'
import { isFresh } from '../model/fresh.ts'
import { planOf } from '../model/plan.ts'
import { potterOf } from '../model/potters.ts'
import type { Hands, PotState, Table } from '../model/state.ts'
import { nextBucket } from '../steps/steps.ts'
import { type AtStep, waitingFor } from '../steps/work.ts'
import type { Armed, Card, Visit } from './card.ts'

/**
 * A dip that could start now, behind whatever its bucket needs first: return, open, decant, stir. Its warnings, and
 * how much to decant, come with `judged`. `freshAt`: when its stir still has to be good, table time, ms.
 */
export function dipCard(
  table: Table,
  steps: readonly AtStep[],
  pot: PotState,
  bucketId: string,
  now: number,
  visit?: Visit,
  freshAt = now,
): Card | undefined {
  const from = coatFrom(table, pot, bucketId)
  if (!from || !table.buckets[bucketId]) return undefined
  const { collar } = table
  const potId = pot.facts.potId
  const needsDecant = from.plan.cover.kind === 'collar' && collar === undefined
  if (!isFresh(table, bucketId, freshAt) || needsDecant || (collar && collar.bucketId !== bucketId)) {
    const card = stirCard(table, steps, pot, bucketId, visit)
    const again = from.hasIt || from.insteadOf !== undefined
    const anyway = { do: 'start', potId, again, unstirred: true } as const
    return card?.kind === 'stir' ? { ...card, insteadOf: from.insteadOf, heldBar: anyway } : card
  }
  const armed: Armed = {
    potId,
    coat: from.coat,
    coats: planOf(table, pot).length,
    bucketId,
    cover: from.plan.cover,
    holdS: from.plan.holdS,
    stirredAt: table.buckets[bucketId]?.stirredAt,
    warnings: [],
    filled: filledAt(table, pot, now),
    hasIt: from.hasIt,
    ...(from.insteadOf === undefined ? {} : { insteadOf: from.insteadOf }),
  }
  const asksTwice = from.hasIt || from.insteadOf !== undefined
  const start = { do: 'start', potId, unstirred: false } as const
  return {
    kind: 'armed',
    armed,
    nth: visit && dipOfVisit(table, bucketId),
    big: { ...start, again: false },
    heldBar: asksTwice ? { ...start, again: true } : undefined,
  }
}

/** Which dip comes next since the bucket was opened. */
function dipOfVisit(table: Table, bucketId: string): number {
  const since = table.openedAt ?? Number.NEGATIVE_INFINITY
  const done = Object.values(table.pots)
    .flatMap((pot) => pot.dips)
    .filter((dip) => dip.bucketId === bucketId && dip.tappedAt >= since)
    .filter((dip) => (dip.hands ?? 0) === potterOf(table))
  return done.length + 1
}

/**
 * What a bucket needs before the dip of `pot`: return of another's collar glaze first, then open, stir, decant.
 * `visit`: what is to come of it, where an order of work says so.
 */
export function stirCard(
  table: Table,
  steps: readonly AtStep[],
  pot: PotState,
  bucketId: string,
  visit?: Visit,
): Card | undefined {
  const from = coatFrom(table, pot, bucketId)
  if (!from || !table.buckets[bucketId]) return undefined
  const { collar } = table
  if (collar && collar.bucketId !== bucketId) return returnCard(collar)
  const isCollar = from.plan.cover.kind === 'collar'
  const needsDecant = isCollar && collar === undefined
  return {
    kind: 'stir',
    bucketId,
    change: table.openBucket !== bucketId,
    stirredAt: table.buckets[bucketId]?.stirredAt,
    waiting: waitingFor(table, steps, bucketId),
    visit,
    ...(isCollar && collar ? { inVessel: true as const } : {}),
    collars: needsDecant ? collarsFor(table, steps, bucketId, pot) : undefined,
    big: { do: 'stirred', bucketId },
  }
}

/** The collars that wait for this bucket, that of `first` before all others. */
function collarsFor(table: Table, steps: readonly AtStep[], bucketId: string, first: PotState): Collar[] {
  const pots = steps
    .filter(
      ({ pot, step }) => (step.is === 'dip' || step.is === 'touch') && nextBucket(table, pot) === bucketId,
    )
    .map(({ pot }) => pot)
  return [first, ...pots].flatMap((pot) => {
    const cover = coatFrom(table, pot, bucketId)?.plan.cover
    return cover?.kind === 'collar' ? [{ potId: pot.facts.potId, depthMm: cover.depthMm }] : []
  })
}

/** The card of collar glaze that stands open. */
export const returnCard = ({ bucketId, litres, at }: NonNullable<Hands['collar']>): Card => ({
  kind: 'return',
  bucketId,
  litres,
  pouredAt: at,
  big: { do: 'returned', bucketId },
})
