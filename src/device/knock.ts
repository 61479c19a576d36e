/**
 * Two knocks on the table. A pure detector over levels, whether of a motion sensor or of a microphone; nothing it is
 * fed is kept. One knock is any pot set down, and many are a drill: only two count.
 */

/** A moment's level: change of acceleration in m/s², or the peak of a few milliseconds of sound, 0 to 1. */
export interface Level {
  readonly atMs: number
  readonly level: number
  /** We sound at this moment ourselves. */
  readonly gated: boolean
}

export interface KnockState {
  /** What the place gives by itself. */
  readonly floor: number
  /** Onsets of strokes that may be knocks, ms. */
  readonly strokes: readonly number[]
  /** Up since, while a stroke is loud. */
  readonly upMs: number | null
  readonly deafUntilMs: number
}

/** All tuned by reasoning, to be confirmed at a bench. */
const TIMES_FLOOR = 5
/** A stroke's ringing does not count as another. */
const APART_MS = { least: 120, most: 500 }
/** A knock is over by then; a mixer is not. */
const STROKE_MS = 110
/** Nothing may follow for this long: three and more are rattling. */
const QUIET_MS = 520
const DEAF_MS = 1000
/** How fast the floor follows what it hears, per sample, up and down. */
const FLOOR = { up: 0.02, down: 0.08 }

export const deaf: KnockState = { floor: 0, strokes: [], upMs: null, deafUntilMs: -Infinity }

/** One level in, the next state out, and whether two knocks have just been made out. `least`: a knock's lowest level. */
export function knockStep(
  state: KnockState,
  { atMs, level, gated }: Level,
  least: number,
): { readonly state: KnockState; readonly knocked: boolean } {
  if (gated) return { state: { ...state, strokes: [], upMs: null, deafUntilMs: atMs }, knocked: false }
  const loud = level > Math.max(least, state.floor * TIMES_FLOOR)
  // A stroke is no part of the place; what goes on sounding is.
  const stroke = loud && atMs >= state.deafUntilMs
  const rate = stroke ? 0 : level > state.floor ? FLOOR.up : FLOOR.down
  const floor = state.floor + (Math.min(level, least * 2) - state.floor) * rate
  const next = { ...state, floor }
  const none = (part: Partial<KnockState>) => ({ state: { ...next, ...part }, knocked: false })
  if (atMs < state.deafUntilMs) return none({ strokes: [], upMs: null })
  const last = state.strokes.at(-1)
  if (loud) {
    if (state.upMs !== null)
      return atMs - state.upMs > STROKE_MS
        ? none({ strokes: [], upMs: null, deafUntilMs: atMs + DEAF_MS })
        : none({})
    if (last !== undefined && atMs - last < APART_MS.least) return none({ upMs: last })
    const follows = last !== undefined && atMs - last <= APART_MS.most
    return none({ strokes: follows ? [...state.strokes, atMs] : [atMs], upMs: atMs })
  }
  if (last === undefined || atMs - last <= QUIET_MS) return none({ upMs: null })
  return { state: { ...next, strokes: [], upMs: null }, knocked: state.strokes.length === 2 }
}
