import type { Armed, Card, Decant, Due, HeldLine, StuckWhy } from './card.ts'
import { decantFor } from './collar.ts'
import { filledAt } from './coming.ts'
import { forecastOf } from './forecast.ts'
import { lastDip, planOf } from './plan.ts'
import type { BucketState, DipState, PotState, Table } from './state.ts'
import { nextBucket } from './steps.ts'
import { warningsFor } from './warnings.ts'
import { type AtStep, coatFrom, isFresh, isStale, nextWork, stepsOf, type Work, waitingFor } from './work.ts'

/** OUT sounds, and stands on the screen, until a hit or this long. */
export const OUT_MS = 3000

/** A bucket may be stirred this long before the pot it waits for can be dipped. */
const STIR_AHEAD_MS = 90_000

/** What comes due after the next, on a card with time to read. */
const DUES_SHOWN = 2

/** The one card to show at table time `now`, with what a hit on its bar means. */
export function cardOf(table: Table, now: number): Card {
  const steps = stepsOf(table, now)
  if (steps.length === 0) return { kind: 'empty' }
  const counting = steps.find(({ step }) => step.is === 'count')
  if (counting?.step.is === 'count') return countCard(counting.pot, counting.step.dip, now)
  for (const { pot } of steps) {
    const dip = lastDip(pot)
    if (dip?.unsure)
      return {
        kind: 'ask-dose',
        potId: pot.facts.potId,
        dip,
        big: { do: 'settle-dose', dipId: dip.dipId },
      }
  }
  if (table.heldSince !== undefined)
    return {
      kind: 'held',
      since: table.heldSince,
      lines: whereYouWere(steps),
      big: { do: 'resume' },
    }
  return handsCard(table, steps, now)
}

function countCard(pot: PotState, dip: DipState, now: number): Card {
  const big =
    now < dip.tappedAt + (dip.underAt - dip.tappedAt - dip.lowerS * 1000)
      ? ({ do: 'cancel-count', dipId: dip.dipId } as const)
      : ({ do: 'stop', dipId: dip.dipId } as const)
  return { kind: 'count', potId: pot.facts.potId, dip, big }
}

/** The pot in the hands is the one dipped last, until its foot is sponged or the next dip implies it. */
export function inHand(
  steps: readonly AtStep[],
): { readonly pot: PotState; readonly dip: DipState } | undefined {
  let latest: { pot: PotState; dip: DipState } | undefined
  for (const { pot, step } of steps) {
    const dip = lastDip(pot)
    if (dip === undefined || (latest && dip.outAt <= latest.dip.outAt)) continue
    latest = step.is === 'drip' || step.is === 'foot' ? { pot, dip } : undefined
  }
  return latest
}

function handsCard(table: Table, steps: readonly AtStep[], now: number): Card {
  const hand = inHand(steps)
  if (hand && now < hand.dip.outAt + OUT_MS && hand.dip.how === 'planned')
    return { kind: 'out', potId: hand.pot.facts.potId, dip: hand.dip }
  const dripUntil = hand ? hand.dip.outAt + table.settings.dripS * 1000 : 0
  const held: Card | undefined = hand && {
    kind: 'drip',
    potId: hand.pot.facts.potId,
    dip: hand.dip,
    until: dripUntil,
    big: { do: 'sponged', potId: hand.pot.facts.potId },
  }
  if (held && now < dripUntil) return held

  const picked = table.picked && pickedCard(table, steps, now)
  const work = nextWork(table, steps, now)
  const next = picked ?? (work && workCard(table, steps, work, now))
  // One hit a coat: with the same bucket open and fresh, START for the next pot implies this one's foot.
  if (hand && held) return next?.kind === 'armed' ? { ...next, inHand: hand.pot.facts.potId } : held
  return next ?? idleCard(table, steps, now)
}

/** The hands took a pot of their own choice: its own step, or the bucket they chose for it. */
function pickedCard(table: Table, steps: readonly AtStep[], now: number): Card | undefined {
  const { picked } = table
  const here = steps.find(({ pot }) => pot.facts.potId === picked?.potId)
  if (!picked || !here) return undefined
  const { pot, step } = here
  if (picked.bucketId !== undefined) return dipCard(table, steps, pot, picked.bucketId, now)
  switch (step.is) {
    case 'wax':
    case 'wipe':
    case 'foot-check':
      return workCard(table, steps, { is: step.is, pot, left: 1 }, now)
    case 'stuck':
      return stuckCard(pot, step.why)
    case 'dip':
      return dipCard(table, steps, pot, step.plan.bucketId, now)
    case 'wait':
    case 'touch': {
      const into = nextBucket(table, pot)
      return into === undefined
        ? undefined
        : workCard(table, steps, { is: 'touch', bucketId: into, pots: [pot] }, now)
    }
    default:
      return undefined
  }
}

function workCard(table: Table, steps: readonly AtStep[], work: Work, now: number): Card {
  switch (work.is) {
    case 'touch': {
      const potIds = work.pots.map((pot) => pot.facts.potId)
      return {
        kind: 'ready',
        potIds,
        bucketId: work.bucketId,
        big: { do: 'touched', potIds, dry: true },
        small: { do: 'touched', potIds, dry: false },
      }
    }
    case 'dip':
      return (
        dipCard(table, steps, work.pot, work.bucketId, now) ?? {
          kind: 'stuck',
          potId: work.pot.facts.potId,
          why: 'no-bucket',
        }
      )
    case 'wax':
    case 'wipe': {
      const potId = work.pot.facts.potId
      return {
        kind: work.is,
        potId,
        left: work.left,
        big: { do: work.is === 'wax' ? 'waxed' : 'wiped', potId },
      }
    }
    case 'foot-check': {
      const potId = work.pot.facts.potId
      return { kind: 'foot-check', potId, left: work.left, big: { do: 'foot-signed', potId } }
    }
    case 'stuck':
      return stuckCard(work.pot, work.why)
  }
}

/** A pot that needs a decision; after a stray coat the bar goes on with the rest of its plan. */
function stuckCard(pot: PotState, why: StuckWhy): Card {
  const { potId } = pot.facts
  return { kind: 'stuck', potId, why, big: why === 'strayed' ? { do: 'keep-going', potId } : undefined }
}

/** A dip that could start now, behind whatever its bucket needs first: return, open, decant, stir. */
function dipCard(
  table: Table,
  steps: readonly AtStep[],
  pot: PotState,
  bucketId: string,
  now: number,
): Card | undefined {
  const from = coatFrom(table, pot, bucketId)
  const bucket = table.buckets[bucketId]
  if (!from || !bucket) return undefined
  const { collar } = table
  if (collar && collar.bucketId !== bucketId) return returnCard(table, now)
  const needsDecant = from.plan.cover.kind === 'collar' && collar === undefined
  const potId = pot.facts.potId
  if (!isFresh(table, bucketId, now) || needsDecant) {
    const decant = needsDecant ? mostDecant(table, steps, bucket, pot) : undefined
    return {
      kind: 'stir',
      bucketId,
      change: table.openBucket !== bucketId,
      agoMs: agoMs(table, bucketId, now),
      waiting: waitingFor(table, steps, bucketId),
      decant,
      big: { do: 'stirred', bucketId, decantLitres: decant?.litres },
      heldBar: { do: 'start', potId, again: from.hasIt, unstirred: true },
    }
  }
  const armed: Armed = {
    potId,
    coat: from.coat,
    coats: planOf(table, pot).length,
    bucketId,
    cover: from.plan.cover,
    holdS: from.plan.holdS,
    stirredMs: agoMs(table, bucketId, now),
    warnings: warningsFor(table, pot, bucketId, now),
    filled: filledAt(table, pot, now),
    hasIt: from.hasIt,
  }
  const start = { do: 'start', potId, unstirred: false } as const
  return {
    kind: 'armed',
    armed,
    big: { ...start, again: false },
    heldBar: from.hasIt ? { ...start, again: true } : undefined,
  }
}

const agoMs = (table: Table, bucketId: string, now: number): number | undefined => {
  const at = table.buckets[bucketId]?.stirredAt
  return at === undefined ? undefined : now - at
}

/** Enough for the pot among those waiting for a collar that needs most. */
function mostDecant(table: Table, steps: readonly AtStep[], bucket: BucketState, first: PotState): Decant {
  const { bucketId } = bucket.facts
  const pots = steps
    .filter(
      ({ pot, step }) => (step.is === 'dip' || step.is === 'touch') && nextBucket(table, pot) === bucketId,
    )
    .map(({ pot }) => pot)
  return [first, ...pots]
    .flatMap((pot) => {
      const cover = coatFrom(table, pot, bucketId)?.plan.cover
      return cover?.kind === 'collar' ? [decantFor(table, pot.facts, cover.depthMm, bucket.gramsPerMl)] : []
    })
    .reduce((most, pour) => (pour.litres > most.litres ? pour : most))
}

function returnCard(table: Table, now: number): Card | undefined {
  const { collar } = table
  return (
    collar && {
      kind: 'return',
      bucketId: collar.bucketId,
      litres: collar.litres,
      sinceMs: now - collar.at,
      big: { do: 'returned', bucketId: collar.bucketId },
    }
  )
}

/** Nothing for the hands right now: return what was decanted, stir ahead, wait, or all is done. */
function idleCard(table: Table, steps: readonly AtStep[], now: number): Card {
  const due = dues(steps)
  const soon = due[0]
  if (soon && soon.what === 'wipe-dries' && soon.at - now < STIR_AHEAD_MS) {
    const pot = table.pots[soon.potId]
    const bucketId = pot && nextBucket(table, pot)
    if (pot && bucketId && isStale(table, bucketId, soon.at)) {
      const card = dipCard(table, steps, pot, bucketId, now)
      if (card?.kind === 'stir' || card?.kind === 'return') return { ...card, heldBar: undefined }
    }
  }
  if (soon) {
    if (table.collar && !collarStillWanted(table, steps))
      return returnCard(table, now) ?? { kind: 'wait', after: [] }
    const small = soon.what === 'touch' ? ({ do: 'pick', potId: soon.potId } as const) : undefined
    return { kind: 'wait', next: soon, after: due.slice(1, 1 + DUES_SHOWN), small }
  }
  if (table.collar) return returnCard(table, now) ?? { kind: 'wait', after: [] }
  return finishedCard(table, steps)
}

const collarStillWanted = (table: Table, steps: readonly AtStep[]): boolean =>
  steps.some(({ pot, step }) => {
    const wants = step.is === 'wait' || step.is === 'touch' || step.is === 'dip'
    return wants && table.collar !== undefined && nextBucket(table, pot) === table.collar.bucketId
  })

/** What will want the hands later, soonest first. */
export function dues(steps: readonly AtStep[]): readonly Due[] {
  return steps
    .flatMap(({ pot, step }): Due[] => {
      const potId = pot.facts.potId
      if (step.is === 'wax-sets' || step.is === 'wipe-dries')
        return [{ potId, at: step.until, what: step.is }]
      if (step.is === 'wait') return [{ potId, at: step.askAt, what: 'touch', band: step.dry }]
      return []
    })
    .sort((a, b) => a.at - b.at)
}

function finishedCard(table: Table, steps: readonly AtStep[]): Card {
  let slowest: { potId: string; kiln: Card & { kind: 'finished' } } | undefined
  for (const { pot } of steps) {
    const kiln = forecastOf(table, pot)?.kiln
    if (!kiln) continue
    if (!slowest || kiln.likely > slowest.kiln.kiln.likely)
      slowest = {
        potId: pot.facts.potId,
        kiln: { kind: 'finished', kiln, slowestPotId: pot.facts.potId },
      }
  }
  return slowest?.kiln ?? { kind: 'wait', after: [] }
}

/** Three lines of where the hands were when they were called away. */
function whereYouWere(steps: readonly AtStep[]): readonly HeldLine[] {
  const rank: HeldLine['at'][] = ['drips', 'foot-not-sponged', 'ready', 'dip-next', 'wait']
  const hand = inHand(steps)
  return steps
    .flatMap(({ pot, step }): HeldLine[] => {
      const potId = pot.facts.potId
      if (step.is === 'drip' || step.is === 'foot') {
        if (pot !== hand?.pot) return [{ potId, at: 'wait' }]
        return [{ potId, at: step.is === 'drip' ? 'drips' : 'foot-not-sponged' }]
      }
      if (step.is === 'touch') return [{ potId, at: 'ready' }]
      if (step.is === 'dip') return [{ potId, at: 'dip-next' }]
      if (step.is === 'wait') return [{ potId, at: 'wait' }]
      return []
    })
    .sort((a, b) => rank.indexOf(a.at) - rank.indexOf(b.at))
    .slice(0, 3)
}
