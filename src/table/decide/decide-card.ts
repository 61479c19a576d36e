import type { CoatFacts } from '../../../shared/nouns.ts'
import type { Action } from '../model/action.ts'
import { coatsOn, planOf } from '../model/plan.ts'
import { takesBack } from '../model/potters.ts'
import type { Table } from '../model/state.ts'
import { type Decision, onDip, onPot } from './decision.ts'

/** What the bench's own cards and the clock ask for besides the steps. Undefined: not such an action. */
export function decideCard(table: Table, action: Action, now: number): Decision | undefined {
  switch (action.do) {
    case 'take-back': {
      const hit = takesBack(table, now)
      return hit
        ? { events: [{ kind: 'taken-back', hit: hit.hit }] }
        : { refusal: { code: 'nothing-to-take-back' } }
    }
    case 'put-back': {
      const { takenBack: back } = table
      if (!back) return { refusal: { code: 'nothing-to-put-back' } }
      return { events: back.all.map((hit) => ({ kind: 'put-back', hit })) }
    }
    case 'pick':
      return onPot(table, action.potId, () =>
        action.bucketId !== undefined && !table.buckets[action.bucketId]
          ? { refusal: { code: 'unknown-bucket' } }
          : {
              events: [
                {
                  kind: 'picked',
                  potId: action.potId,
                  bucketId: action.bucketId,
                  ...(action.touch ? { touch: true as const } : {}),
                },
              ],
            },
      )
    case 'settle-dose':
      return onDip(table, action.dipId, () => ({
        events: [{ kind: 'dose-settled', dipId: action.dipId }],
      }))
    case 'dose-unsure':
      return onDip(table, action.dipId, (dip) =>
        dip.unsure || dip.how !== 'planned'
          ? { refusal: { code: 'nothing-to-do' } }
          : { events: [{ kind: 'dose-unsure', dipId: action.dipId }] },
      )
    case 'keep-going':
      return onPot(table, action.potId, (pot) => ({
        events: [{ kind: 'plan-changed', potId: action.potId, coats: asDipped(table, pot.facts.potId) }],
      }))
    case 'count-coats':
      return onPot(table, action.potId, (pot) =>
        action.coats !== null && (action.coats < 0 || action.coats > planOf(table, pot).length)
          ? {
              refusal: {
                code: 'out-of-range',
                field: 'coats',
                facts: { value: action.coats, least: 0, most: planOf(table, pot).length },
              },
            }
          : { events: [{ kind: 'coats-counted', potId: action.potId, coats: action.coats }] },
      )
    case 'wax-pan':
      return { events: [{ kind: 'wax-pan', is: action.is }] }
    case 'lid-on': {
      const { bucketId, litres, left } = action
      if (!table.buckets[bucketId]) return { refusal: { code: 'unknown-bucket' } }
      return {
        events: [
          ...(litres === undefined ? [] : [{ kind: 'level-read' as const, bucketId, litres }]),
          { kind: 'lid-on', bucketId, ...(left ? { left } : {}) },
        ],
      }
    }
    case 'tools-washed':
    case 'floor-mopped':
      return { events: [{ kind: action.do, ...(action.left ? { left: action.left } : {}) }] }
    case 'clock-moved':
      return { events: [{ kind: 'clock-moved', byMs: action.byMs }] }
    default:
      return undefined
  }
}

/** The plan as it really went so far, with the coats that were still to come. */
export function asDipped(table: Table, potId: string): readonly CoatFacts[] {
  const pot = table.pots[potId]
  if (!pot) return []
  const plan = [...planOf(table, pot)]
  for (const dip of coatsOn(pot))
    plan[dip.coat] = { bucketId: dip.bucketId, cover: dip.cover, holdS: dip.plannedHoldS }
  return plan
}

/** Counts of which more than 1.5 s ran while nobody could see them: unseen from `from` to `to`, table time, ms. */
export function doubtfulDips(table: Table, from: number, to: number): readonly string[] {
  return Object.values(table.pots).flatMap((pot) =>
    pot.dips
      .filter((dip) => {
        const unseenMs = Math.min(dip.outAt, to) - Math.max(dip.tappedAt, from)
        return dip.how === 'planned' && dip.hands !== 2 && !dip.unsure && unseenMs > UNSEEN_MS
      })
      .map((dip) => dip.dipId),
  )
}

const UNSEEN_MS = 1500
