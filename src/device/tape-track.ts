/**
 * The track that rings with the screen off, as bytes: hours of a hum that keeps the phone playing, with
 * the calls inside it at their times. Nothing has to run when a call is due. Pure.
 */
import type { Place, WordId } from './sound-plan.ts'
import { callLetter, spelled } from './sound-plan.ts'

export const FRAME_BYTES = 72
export const FRAME_S = 0.072

/** Frames cut from the shipped files: `[bytes]` of the hum's one frame, of `call-X` and of words. */
export interface TapeParts {
  readonly hum: Uint8Array<ArrayBuffer>
  readonly parts: ReadonlyMap<string, Uint8Array<ArrayBuffer>>
}

export interface TrackCall {
  /** From the start of the track; less than 0 when it is past due, and only its repeats remain. */
  readonly dueS: number
  readonly bucketLetter: string
  readonly places: readonly Place[]
}

/** A call is repeated, since with the screen off nobody can stop or answer it. */
export const REPEAT_MIN = [0, 1, 3, 6]
/** The track goes on this long after the last call. */
const AFTER_S = 30
/** 43 MB of memory; longer waits belong in the calendar. */
export const LONGEST_S = 12 * 3600
/** A part begins with the frame before its sound. */
const EARLY_FRAMES = 1
const BLOCK_FRAMES = 1000
const GAP_FRAMES = 2

/** One call inside a track, as it is heard: seconds from the track's start. */
export interface Saying {
  readonly atS: number
  readonly untilS: number
  readonly dueS: number
}

export interface Track {
  readonly pieces: readonly Uint8Array<ArrayBuffer>[]
  readonly lengthS: number
  readonly sayings: readonly Saying[]
}

/**
 * Pieces of the track in order. A call that would begin within another follows it, and none begins before
 * `quietUntilS`: a count runs until then. Calls beyond 12 h are left out. Words without a part are left out, the two
 * notes never.
 */
export function buildTrack(
  tape: TapeParts,
  calls: readonly TrackCall[],
  spoken: boolean,
  quietUntilS = 0,
): Track {
  const asked = calls
    .flatMap((call) => timesOf(call, quietUntilS).map((atS) => ({ atS, call })))
    .sort((a, b) => a.atS - b.atS)
  const sayings: Saying[] = []
  const block = repeat(tape.hum, BLOCK_FRAMES)
  const gap = repeat(tape.hum, GAP_FRAMES)
  const pieces: Uint8Array<ArrayBuffer>[] = []
  let frames = 0
  const push = (piece: Uint8Array<ArrayBuffer>): void => {
    pieces.push(piece)
    frames += piece.length / FRAME_BYTES
  }
  const humUntil = (frame: number): void => {
    while (frame - frames >= BLOCK_FRAMES) push(block)
    if (frame > frames) push(block.subarray(0, (frame - frames) * FRAME_BYTES))
  }
  for (const { atS, call } of asked) {
    humUntil(Math.max(0, Math.round(atS / FRAME_S) - EARLY_FRAMES))
    const fromS = frames * FRAME_S
    for (const name of partsOf(call, spoken)) {
      const part = tape.parts.get(name)
      if (part) push(part)
    }
    push(gap)
    sayings.push({ atS: fromS, untilS: frames * FRAME_S, dueS: call.dueS })
  }
  humUntil(frames + Math.round(AFTER_S / FRAME_S))
  return { pieces, lengthS: frames * FRAME_S, sayings }
}

/** When a call is said. What falls into a count is said once after it. */
function timesOf(call: TrackCall, quietUntilS: number): number[] {
  const times = REPEAT_MIN.map((min) => call.dueS + 60 * min).filter((atS) => atS >= 0 && atS <= LONGEST_S)
  return [...new Set(times.map((atS) => Math.max(atS, quietUntilS)))]
}

function partsOf(call: TrackCall, spoken: boolean): string[] {
  const names = [`call-${callLetter(call.bucketLetter)}`]
  if (!spoken) return names
  let board = ''
  for (const at of call.places) {
    if (at.board !== board) names.push(...spelled(at.board))
    board = at.board
    names.push(String(at.place) satisfies WordId)
  }
  return [...names, 'ready']
}

function repeat(frame: Uint8Array, times: number): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(frame.length * times)
  for (let i = 0; i < times; i++) all.set(frame, i * frame.length)
  return all
}

/** Cuts the parts out of a file by its table of [first frame, number of frames]. Throws TypeError for a bad table. */
export function cutParts(
  bytes: Uint8Array<ArrayBuffer>,
  table: unknown,
): [string, Uint8Array<ArrayBuffer>][] {
  if (typeof table !== 'object' || table === null) throw new TypeError('not a table of parts')
  return Object.entries(table).map(([name, place]: [string, unknown]) => {
    const [from, count] = Array.isArray(place) ? (place as unknown[]) : []
    if (typeof from !== 'number' || typeof count !== 'number') throw new TypeError(`part ${name}: no place`)
    const part = bytes.subarray(from * FRAME_BYTES, (from + count) * FRAME_BYTES)
    if (part.length !== count * FRAME_BYTES) throw new TypeError(`part ${name}: beyond the file`)
    return [name, part]
  })
}
