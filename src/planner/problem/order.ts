/** Wishes on an op. STIR: stir right before it. HOLD: hold earlier dips back rather than stir before it. */
export const AUTO = 0
export const STIR = 1
export const HOLD = 2

/** Set-up before an op. */
export const NONE = 0
export const OPEN = 1
export const RESTIR = 2

/** An order of ops with a potter and a wish for each op. */
export interface Order {
  readonly ops: Int32Array
  readonly potter: Uint8Array
  readonly wish: Uint8Array
}

/**
 * Weights of the search's objective in seconds. Aims are kept strictly in order when the best is chosen; while
 * searching a weighted sum lets a worse aim pay for a better one on the way. Tuned.
 */
const LATE_WEIGHT = 15
const OPENING_WEIGHT_S = 8
const RESTIR_WEIGHT_S = 2

/** How often one stretch between stirs may be held back before a stir is taken instead. */
export const HOLD_TRIES = 12

export interface Timer {
  /** Weighted objective; Infinity when a pot's steps are out of order, and maybe when above `limit`. */
  run(order: Order, limit: number): number
  /** As `run`, for an order that shares a beginning with the one last taken: only what differs is timed. */
  retry(order: Order, limit: number): number
  /** Takes the order last timed as the one that `retry` compares with; it must have come out below its limit. */
  take(order: Order): void
  lateS: number
  finishS: number
  openings: number
  restirs: number
  /** Ops timed so far: the planner's unit of work. */
  work: number
  readonly start: Int32Array
  /** Set-up right before op: NONE, OPEN or RESTIR; it ends at the op's start. */
  readonly setUp: Uint8Array
  readonly setUpBucket: Int32Array
  readonly setUpS: Int32Array
  readonly setUpDecant: Uint8Array
}

/** One number to be made small: lateness first, then the finish, openings and re-stirs; seconds. */
export const objective = (lateS: number, finishS: number, openings: number, restirs: number): number =>
  LATE_WEIGHT * lateS + finishS + OPENING_WEIGHT_S * openings + RESTIR_WEIGHT_S * restirs
