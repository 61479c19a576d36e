/**
 * The audio context and its illnesses: locked until a tap, interrupted by a call, or *running* with a
 * clock that stands still (WebKit 263627). The only cure for the last is a new one, inside a tap.
 */

export type AudioVerdict = 'ok' | 'resume' | 'rebuild'

/**
 * Looks closer together than this say nothing, since the clock moves in blocks of 128 samples and more; nor do looks
 * so far apart that the page itself stood still in between.
 */
export const LOOK_S = { least: 0.1, most: 3.5 }
/** A clock this much slower than the page's is dead. */
const SLOWEST = 0.1

/**
 * What to do about a context whose clock went on by `advancedS` while the page's went on by `elapsedS`; null when the
 * looks say nothing.
 */
export function audioVerdict(state: string, advancedS: number, elapsedS: number): AudioVerdict | null {
  if (state === 'closed') return 'rebuild'
  if (state !== 'running') return 'resume'
  if (elapsedS < LOOK_S.least || elapsedS > LOOK_S.most) return null
  return advancedS < elapsedS * SLOWEST ? 'rebuild' : 'ok'
}

/** Where the output stands: the sound of `contextS` leaves the loudspeaker at `pageMs`. */
export interface OutputPoint {
  readonly contextS: number
  readonly pageMs: number
}

/** A latency beyond this is a mistake of the browser's; Bluetooth stays under 0.3 s. */
const LONGEST_LATENCY_S = 0.6

/**
 * Context time at which to start what shall be heard at page time `atMs`. Uses the browser's output
 * timestamp when it is sane, since that knows the latency; else the latency it states.
 */
export function contextTimeAt(
  atMs: number,
  now: { readonly contextS: number; readonly pageMs: number; readonly latencyS: number },
  point: OutputPoint | null,
): number {
  const plain = now.contextS - now.latencyS + (atMs - now.pageMs) / 1000
  if (!point || point.pageMs <= 0 || point.contextS <= 0) return plain
  const mapped = point.contextS + (atMs - point.pageMs) / 1000
  const latencyS = now.contextS + (atMs - now.pageMs) / 1000 - mapped
  return latencyS >= -0.01 && latencyS <= LONGEST_LATENCY_S ? mapped : plain
}

declare global {
  interface Navigator {
    /** WebKit: what kind of sound this is; `playback` is heard with the silent switch on. */
    audioSession?: { type: string }
  }
}

/** A new context, or null where there is none. iOS reads the session's type when the context is made. */
export function openContext(): AudioContext | null {
  try {
    return new AudioContext({ latencyHint: 'interactive' })
  } catch {
    return null
  }
}

/** Start time on this context for what shall be heard at page time `atMs`. */
export function startTime(context: AudioContext, atMs: number): number {
  const now = {
    contextS: context.currentTime,
    pageMs: performance.now(),
    latencyS: context.outputLatency || context.baseLatency || 0,
  }
  const stamp = context.getOutputTimestamp?.()
  const point =
    stamp?.contextTime !== undefined && stamp.performanceTime !== undefined
      ? { contextS: stamp.contextTime, pageMs: stamp.performanceTime }
      : null
  return contextTimeAt(atMs, now, point)
}

/** A silent sample played inside a tap opens the output on iOS. */
export async function unlockContext(context: AudioContext): Promise<void> {
  if (navigator.audioSession) navigator.audioSession.type = 'playback'
  const source = context.createBufferSource()
  source.buffer = context.createBuffer(1, 1, context.sampleRate)
  source.connect(context.destination)
  source.start()
  if (context.state !== 'running') await context.resume()
}

/** Linear up to here, then rounded towards 1: a tone under a word gets no hard edge. */
const ROUND_FROM = 0.7
/** The loudest sum that is met: a tone at 0.6 under a word at 0.9. */
const ROUND_SPAN = 1.6

/** A way into `output` that tames sums louder than 1. A shaper has no delay, unlike a compressor. */
export function roundedInto(context: BaseAudioContext, output: AudioNode): AudioNode {
  const shaper = context.createWaveShaper()
  const curve = new Float32Array(1601)
  const half = (curve.length - 1) / 2
  for (let i = 0; i < curve.length; i++) {
    const x = ((i - half) / half) * ROUND_SPAN
    const over = Math.max(0, Math.abs(x) - ROUND_FROM)
    const room = 1 - ROUND_FROM
    const rounded = Math.min(Math.abs(x), ROUND_FROM) + (over * room) / (over + room)
    curve[i] = Math.sign(x) * rounded
  }
  shaper.curve = curve
  const fit = context.createGain()
  fit.gain.value = 1 / ROUND_SPAN
  fit.connect(shaper).connect(output)
  return fit
}
