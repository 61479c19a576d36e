/** The limits of the press rules, and what goes in and comes out of them. */

/** CSS pixels to mm: 0.165 to 0.18 on phones 360 to 412 px wide (computed); the middle. */
export const MM_PER_PX = 0.17
/** A second contact this soon after the first, elsewhere, is no finger. */
export const TOGETHER_MS = 120
/** Nearer than this, two contacts are one knuckle (assumption: half a fist). */
export const SAME_KNUCKLE_MM = 20
/** Three contacts at once are a hand or water. */
export const MANY_CONTACTS = 3
export const AGAIN_MS = 400
/** Strokes of a double knock are no further apart: the second is no answer to a card that the first brought. */
export const KNOCK_MS = 500
/** Nobody has touched a pot, or taken it up, this soon after asking for it (assumption). */
export const REACH_MS = 1000
export const CARD_MS = 350
export const HOLD_MS = 700
/** How long before it is full a hold is seen and heard rising: the shortest hold is its own warning. */
export const RISE_MS = HOLD_MS
/** Longer than this something rests on the glass (assumption). */
export const REST_MS = 4000
/** A contact wider than this is a palm; a bent knuckle stays under 30 mm (assumption). */
export const PALM_MM = 45
export const SLIDE_MM = 12
/** More than three contacts in a second, or three in 600 ms far apart: somebody wipes, or it splashes. */
export const SHOWER_MS = 1000
export const SHOWER_CONTACTS = 4
export const SPREAD_MS = 600
export const SPREAD_CONTACTS = 3
export const SPREAD_MM = 30
export const LOCK_MS = 2000
/** A contact whose end was never reported is dropped after this long (assumption). */
export const FORGET_MS = 30_000

/** `bar`: the one big action. `small`: everything else that is tapped. `hold`: what erases. */
export type PressKind = 'bar' | 'small' | 'hold'

export interface PressTarget {
  readonly kind: PressKind
  /** What was hit; a trace that was made up has none. */
  readonly element?: HTMLElement
  /**
   * What erases fires by itself after this long. A bar with two meanings waits for the finger to leave: shorter is a
   * press, longer a hold, and what rests on the glass is neither.
   */
  readonly holdMs?: number | undefined
}

/** Page time in `atMs`, positions and contact size in CSS pixels. `target` is null on bare ground. */
export type PointerFact =
  | {
      readonly kind: 'down'
      readonly id: number
      readonly atMs: number
      readonly xPx: number
      readonly yPx: number
      readonly widthPx: number
      readonly heightPx: number
      readonly target: PressTarget | null
    }
  | {
      readonly kind: 'move' | 'up'
      readonly id: number
      readonly atMs: number
      readonly xPx: number
      readonly yPx: number
      readonly widthPx: number
      readonly heightPx: number
      /** Still over the target it came down on. */
      readonly over: boolean
    }
  | { readonly kind: 'cancel'; readonly id: number; readonly atMs: number }
  | { readonly kind: 'time'; readonly atMs: number }
  | { readonly kind: 'card'; readonly atMs: number }

export interface Intent {
  readonly target: PressTarget
  /** Touch-down, page time; of a hold on the bar the moment it was let go. */
  readonly atMs: number
  readonly heldMs: number
  readonly by: 'press' | 'hold'
}

export type RefusalCode =
  | 'many'
  | 'elsewhere'
  | 'cancelled'
  | 'palm'
  | 'rested'
  | 'slid'
  | 'short'
  | 'again'
  | 'card'
  | 'splash'
  | 'locked'

export interface TouchRefusal {
  readonly code: RefusalCode
  readonly atMs: number
  /** What the person meant as a hit is refused aloud; a bounce or a let-go is passed over in silence. */
  readonly heard: boolean
}
