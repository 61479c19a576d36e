import type { CoverFacts } from '../../../shared/nouns.ts'
import type { Reason } from '../../planner/types.ts'
import type { Collar, Decant } from '../advice/collar.ts'
import type { Warning } from '../advice/warning.ts'
import type { Advice } from '../advice/warnings.ts'
import type { BandMs } from '../forecast/forecast.ts'
import type { Action } from '../model/action.ts'
import type { DipState } from '../model/state.ts'
import type { HeldLine } from '../steps/pot-in-hand.ts'
import { type HandStepName, isHandStep, type STEP_ROWS } from '../steps/step-rows.ts'

/** What an armed card says of the dip it would start. */
export interface Armed {
  readonly potId: string
  readonly coat: number
  readonly coats: number
  readonly bucketId: string
  readonly holdS: number
  /** Of its bucket, table time, ms. */
  readonly stirredAt: number | undefined
  readonly cover: CoverFacts
  /** All that is known against this dip, worst first. */
  readonly warnings: readonly Warning[]
  /** The one that the card says: none that was said on this pot before. */
  readonly line?: Warning | undefined
  /** How the foot stands with this coat on, for the drawing. */
  readonly foot?: Advice['foot']
  /** Filled part of the wall's pores at the dip, the fullest stretch, 0 to 1: its thirst is the rest. */
  readonly filled: number
  /** It has a coat of this bucket already: dipping again is asked twice. */
  readonly hasIt: boolean
  /** The bucket that its plan names instead: asked twice as well. */
  readonly insteadOf?: string
}

/** Why a card is shown: as the order of work says, of a stir that is good now and too old by its dip, or of kept pots. */
export type CardReason = Reason | 'staleByDip' | 'keptSavesOpening'

/** Pots that could go now and are kept on purpose, the first in the order of places. */
export interface Kept {
  readonly potIds: readonly string[]
  readonly bucketId: string
  /** When it is their turn. */
  readonly at: number
  /** The bucket is stirred before that already, for others. */
  readonly later: boolean
}

/** What this visit of a bucket has still to come, by the order of work. */
export interface Visit {
  readonly dips: number
}

/** How much is in a bucket, and how deep it stands. */
export interface Level {
  readonly litres: number
  readonly mm: number
}

/** When a pot, with its lid, is dry enough for the kiln. */
export interface PotDry {
  readonly potId: string
  readonly dry: BandMs
}

interface Base {
  /** What a hit on the bar means; without it the bar is at rest. */
  readonly big?: Action
  /** The other answer, beside the bar. */
  readonly small?: Action
  /** What a bar at rest can be hit for all the same. */
  readonly offer?: Action
  /** What holding the bar means where a plain hit is not enough. */
  readonly heldBar?: Action
  /** Why the order of work has it here, where it follows one. */
  readonly reason?: CardReason
  /** A pot still in the hands whose foot is to be sponged before this card's work. */
  readonly inHand?: string
}

/** The one card to show. Times are table time, ms. */
export type Card = Base &
  (
    | { readonly kind: 'empty' }
    | {
        readonly kind: 'held'
        readonly since: number
        readonly left: Card
        readonly lines: readonly HeldLine[]
      }
    | { readonly kind: 'count'; readonly potId: string; readonly dip: DipState }
    | { readonly kind: 'out'; readonly potId: string; readonly dip: DipState }
    | { readonly kind: 'ask-dose'; readonly potId: string; readonly dip: DipState }
    /** `done`: nothing drips any more, and its foot is in the hands. */
    | {
        readonly kind: 'drip'
        readonly potId: string
        readonly dip: DipState
        readonly until: number
        readonly done: boolean
      }
    | { readonly kind: 'stuck'; readonly potId: string; readonly why: StuckWhy }
    /** One of the steps that hands do on one pot with one hit; `left`: pots at it, this one among them. */
    | { readonly kind: HandStepName; readonly potId: string; readonly left: number }
    | {
        readonly kind: 'stir'
        readonly bucketId: string
        readonly change: boolean
        /** Epoch ms; undefined while it was never stirred. */
        readonly stirredAt: number | undefined
        readonly waiting: number
        readonly visit?: Visit
        /** The hands chose it: the bucket that the pot's plan names instead. */
        readonly insteadOf?: string
        /** The next dip goes into the collar glaze that was poured off: that is stirred. */
        readonly inVessel?: true
        /** Collars that the vessel is to be filled for, with `decant`. */
        readonly collars?: readonly Collar[]
        readonly decant?: Decant
      }
    | {
        readonly kind: 'armed'
        readonly armed: Armed
        /** Which dip of this visit of the bucket it is. How many it comes to moves with the order of work. */
        readonly nth?: number
      }
    | { readonly kind: 'ready'; readonly potIds: readonly string[]; readonly bucketId: string }
    | {
        readonly kind: 'return'
        readonly bucketId: string
        readonly litres: number
        readonly pouredAt: number
      }
    /** The pan of hot wax is on: the last foot is waxed, all else is done, or nobody has said for long to be beside it. */
    | { readonly kind: 'wax-pan'; readonly onAt: number; readonly why: 'waxed' | 'closing' | 'beside' }
    | {
        readonly kind: 'wait'
        readonly next?: Due
        readonly after: readonly Due[]
        readonly kept?: readonly Kept[]
        /** The touch that would narrow most of the other waits, and how many. */
        readonly touch?: { readonly potId: string; readonly others: number }
      }
    /** The end of the sitting: a bucket whose lid is to go on, so much being in it; `more` are to come. */
    | {
        readonly kind: 'lid'
        readonly bucketId: string
        readonly more: number
        /** Its level was read since it was used last. */
        readonly levelRead: boolean
        readonly level?: Level
      }
    | { readonly kind: 'tools' }
    | { readonly kind: 'floor' }
    /** All is put away: what the sitting came to, and when each pot may go into the kiln, in the order of places. */
    | {
        readonly kind: 'closed'
        readonly pots: number
        readonly coats: number
        readonly dry: readonly PotDry[]
        /** What was left out, as what does it after all. */
        readonly left: readonly Action[]
      }
  )

export type CardKind = Card['kind']

/** The pots a card names, the first in its top row. */
export const potsOnCard = (card: Card): readonly string[] =>
  card.kind === 'armed'
    ? [card.armed.potId]
    : card.kind === 'ready'
      ? card.potIds
      : 'potId' in card
        ? [card.potId]
        : []

/** What holds of a card whatever it says; one without a row has none of it. */
interface CardRow {
  /**
   * Two knocks are its big action: nothing that starts a dip, ends one or judges a coat, since a table is knocked for
   * many reasons.
   */
  readonly knocks?: true
  /** Nothing for the hands: the way to the board stands where Hold stands otherwise. */
  readonly rests?: true
  /** A step of the end of a sitting that can be left out. */
  readonly ends?: true
}

export const CARD_ROWS: Partial<Readonly<Record<CardKind, CardRow>>> = {
  held: { rests: true },
  drip: { knocks: true },
  wax: { knocks: true },
  wipe: { knocks: true },
  stir: { knocks: true },
  'foot-check': { knocks: true },
  return: { knocks: true },
  wait: { rests: true },
  lid: { knocks: true, ends: true },
  tools: { knocks: true, ends: true },
  floor: { knocks: true, ends: true },
  closed: { rests: true },
}
/** Whether a card shows a step that hands do with one hit. */
export const isHandCard = (card: Card): card is Extract<Card, { readonly kind: HandStepName }> =>
  isHandStep(card.kind)

export type StuckWhy = 'uncounted' | 'strayed' | 'no-stack' | 'no-bucket'

/** Something that will want the hands at a moment. */
export interface Due {
  readonly at: number
  readonly what:
    | NonNullable<(typeof STEP_ROWS)[keyof typeof STEP_ROWS]['due']>
    | 'dip'
    | 'stir'
    | 'foot-check'
  readonly band?: BandMs
  /** The pot it is about; of a stir the bucket. */
  readonly potId?: string
  readonly bucketId?: string
}
