import type { Card, StuckWhy } from './card.ts'
import { dipCard } from './dip-card.ts'
import { inHand, whereYouWere } from './hand.ts'
import { idleCard } from './idle.ts'
import { lastDip } from './plan.ts'
import type { DipState, PotState, Table } from './state.ts'
import { nextBucket } from './steps.ts'
import { panAsk } from './wax-pan.ts'
import { type AtStep, nextWork, stepsOf, type Work } from './work.ts'

/** OUT sounds, and stands on the screen, until a hit or this long. */
export const OUT_MS = 3000

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
  return next ?? restCard(table, steps, now)
}

/** Nothing for the hands: the pan is asked about, and nothing is finished while it is on. */
function restCard(table: Table, steps: readonly AtStep[], now: number): Card {
  const idle = idleCard(table, steps, now)
  const closing = idle.kind === 'finished'
  const asked = panAsk(table, now)
  if (!table.pan || (!closing && !(asked && idle.kind === 'wait'))) return idle
  const off = { do: 'wax-pan', is: 'off' } as const
  const onMs = now - table.pan.onAt
  return closing
    ? { kind: 'wax-pan', onMs, closing, big: off }
    : { kind: 'wax-pan', onMs, closing, big: { do: 'wax-pan', is: 'watched' }, small: off }
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
    case 'damp-dries': {
      const into = nextBucket(table, pot)
      return into === undefined ? undefined : dipCard(table, steps, pot, into, now)
    }
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
