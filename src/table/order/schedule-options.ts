import { DRAUGHTS, type Draught } from '../../../shared/nouns.ts'
import type { Action } from '../model/action.ts'
import { DEFAULT_AIR } from '../model/defaults.ts'
import { withPieces } from '../model/pieces.ts'
import { nextCoat, planOf, potsOnTable } from '../model/plan.ts'
import { coatsByPot, planWithout } from '../model/plan-with.ts'
import type { PotState, Table } from '../model/state.ts'
import type { Range } from './hands-line.ts'
import type { Schedule } from './schedule.ts'

/** Ways out when the kiln's hour can't be met. */
export type Cut = 'fan' | 'otherBoard' | 'candling' | 'skipCollar' | 'fewerCoats' | 'nextFiring'

/** A way out: the table as it would be, and the one action that takes it. */
export interface Variant {
  readonly cut: Cut
  readonly table: Table
  readonly action: Action
  /** Pots it touches; of air and candling none in particular. */
  readonly potIds: readonly string[]
}

const CHEAPEST_FIRST: readonly Cut[] = [
  'fan',
  'otherBoard',
  'candling',
  'skipCollar',
  'fewerCoats',
  'nextFiring',
]

/** Ways that meet the hour before those that don't; the cheapest first. */
export const byCost = (a: ScheduleOption, b: ScheduleOption): number =>
  Number(b.slackMs >= 0) - Number(a.slackMs >= 0) ||
  CHEAPEST_FIRST.indexOf(a.cut) - CHEAPEST_FIRST.indexOf(b.cut)

/** A way out with what it comes to. Times are table time, ms. */
export interface ScheduleOption {
  readonly cut: Cut
  readonly action: Action
  readonly potIds: readonly string[]
  /** End of the last dip, from the likely one to the one that nine in ten sittings keep. */
  readonly finish: Range
  /** When the last pot would be dry enough to load. */
  readonly dryAt: number
  readonly slackMs: number
  readonly gainMs: number
  /** Part of the ways it can go, 0 to 1, in which the kiln's hour is missed all the same. */
  readonly lateOdds: number
}

/** The ways out that this table has, each as a change of the table. */
export function variantsOf(table: Table, schedule: Schedule, now: number): readonly Variant[] {
  return [
    ...dryingVariants(table, now),
    ...leftOut(table, 'skipCollar', collarsLeft(table)),
    ...leftOut(table, 'fewerCoats', lastCoats(table)),
    ...nextFiring(table, schedule),
  ]
}

/** Those of them that have pots dry sooner: no coat is left out for them. */
export const dryingVariants = (table: Table, now: number): readonly Variant[] => [
  ...movedAir(table, now),
  ...candling(table),
]

/** Air that moves more: a fan, or boards put down where there is a draught. */
function movedAir(table: Table, now: number): Variant[] {
  const air = table.air.at(-1)?.air ?? DEFAULT_AIR
  if (table.settings.readyMeans === 'clock') return []
  const to = (cut: Cut, draught: Draught): Variant[] => {
    if (DRAUGHTS.indexOf(draught) <= DRAUGHTS.indexOf(air.draught)) return []
    const moved = { ...air, draught }
    const action: Action = { do: 'set-air', air: moved }
    return [{ cut, table: { ...table, air: [...table.air, { at: now, air: moved }] }, action, potIds: [] }]
  }
  return [...to('fan', 'fanClose'), ...to('otherBoard', 'window')]
}

function candling(table: Table): Variant[] {
  if (table.settings.candle) return []
  const action: Action = { do: 'set-settings', settings: { candle: true } }
  return [
    {
      cut: 'candling',
      table: { ...table, settings: { ...table.settings, candle: true } },
      action,
      potIds: [],
    },
  ]
}

type CoatOf = { readonly potId: string; readonly coat: number }

/** Pots with coats to come in this sitting. */
const underWay = (table: Table): readonly PotState[] =>
  potsOnTable(table).filter((pot) => !pot.later && nextCoat(pot) < planOf(table, pot).length)

const collarsLeft = (table: Table): CoatOf[] =>
  underWay(table).flatMap((pot) =>
    planOf(table, pot).flatMap(({ cover }, coat) =>
      cover.kind === 'collar' && coat >= nextCoat(pot) ? [{ potId: pot.facts.potId, coat }] : [],
    ),
  )

/** The last coat of the pots with most coats to come. */
function lastCoats(table: Table): CoatOf[] {
  const pots = underWay(table).map((pot) => ({ pot, left: planOf(table, pot).length - nextCoat(pot) }))
  const most = Math.max(0, ...pots.map(({ left }) => left))
  return most < 2
    ? []
    : pots.flatMap(({ pot, left }) =>
        left === most ? [{ potId: pot.facts.potId, coat: planOf(table, pot).length - 1 }] : [],
      )
}

function leftOut(table: Table, cut: Cut, coats: readonly CoatOf[]): Variant[] {
  if (coats.length === 0) return []
  const pots = { ...table.pots }
  for (const [potId, of] of coatsByPot(coats)) {
    const pot = pots[potId]
    if (pot) pots[potId] = { ...pot, ownPlan: planWithout(table, pot, of) }
  }
  return [
    {
      cut,
      table: { ...table, pots },
      action: { do: 'leave-out', coats },
      potIds: [...coatsByPot(coats).keys()],
    },
  ]
}

/** The pots that would be too late, the last ones first, put off: at most half, or there is little left to fire. */
function nextFiring(table: Table, schedule: Schedule): Variant[] {
  const { dryAtS, slackS } = schedule.plan
  if (dryAtS === null || slackS === null) return []
  const last = new Map<string, number>()
  for (const action of schedule.plan.actions)
    if (action.kind === 'dip') last.set(action.potId, action.outS + (schedule.kilnDryS[action.potId] ?? 0))
  const loadAtS = dryAtS + slackS
  const slowest = [...last]
    .filter(([, dryS]) => dryS > loadAtS)
    .sort(([, a], [, b]) => b - a)
    .slice(0, Math.ceil(last.size / 2))
    .map(([potId]) => potId)
  const potIds = withPieces(table, slowest)
  if (potIds.length === 0) return []
  const pots = { ...table.pots }
  for (const potId of potIds) {
    const pot = pots[potId]
    if (pot) pots[potId] = { ...pot, later: true }
  }
  return [
    { cut: 'nextFiring', table: { ...table, pots }, action: { do: 'put-off', potIds, later: true }, potIds },
  ]
}
