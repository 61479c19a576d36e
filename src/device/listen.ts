/** What a knock is felt or heard by: the motion sensor, or the microphone where the person chose it. */
import { deaf, knockStep, type Level } from './knock.ts'

export type Listening = 'listening' | 'refused' | 'absent'

export interface Listener {
  readonly state: Listening
  stop(): void
}

interface Ears {
  /** Whether the app itself sounds right now. */
  heard(): boolean
  onKnock(): void
}

/** Change of acceleration between two samples that a knuckle on the table gives at least, m/s² (assumption). */
const LEAST_MOTION = 0.8
/** Peak of a knock at arm's length, of full scale (assumption). */
const LEAST_SOUND = 0.08
const none = (state: 'refused' | 'absent'): Listener => ({ state, stop: () => undefined })

function detector(ears: Ears, least: number): (atMs: number, level: number) => void {
  let state = deaf
  return (atMs, level) => {
    const sample: Level = { atMs, level, gated: ears.heard() }
    const step = knockStep(state, sample, least)
    state = step.state
    if (step.knocked) ears.onKnock()
  }
}

/** iOS asks the person, inside a tap, anew at each start. */
type AskedMotion = typeof DeviceMotionEvent & { requestPermission?: () => Promise<string> }

/** Feels knocks by the motion sensor. */
export async function feelKnocks(ears: Ears): Promise<Listener> {
  if (!('DeviceMotionEvent' in globalThis)) return none('absent')
  const asked = (DeviceMotionEvent as AskedMotion).requestPermission?.()
  if (asked && (await asked.catch(() => 'denied')) !== 'granted') return none('refused')
  const take = detector(ears, LEAST_MOTION)
  let before: readonly number[] | undefined
  const onMotion = ({ accelerationIncludingGravity: a, timeStamp }: DeviceMotionEvent): void => {
    if (a?.x == null || a.y == null || a.z == null) return
    const now = [a.x, a.y, a.z]
    if (before) take(timeStamp, Math.hypot(...now.map((x, i) => x - (before?.[i] ?? x))))
    before = now
  }
  addEventListener('devicemotion', onMotion)
  return { state: 'listening', stop: () => removeEventListener('devicemotion', onMotion) }
}

/** Hears knocks by the microphone, inside a tap. */
export async function hearKnocks(ears: Ears): Promise<Listener> {
  if (!navigator.mediaDevices) return none('absent')
  let stream: MediaStream
  try {
    stream = await navigator.mediaDevices.getUserMedia({
      // What tidies up speech takes a knock for noise.
      audio: { echoCancellation: true, noiseSuppression: false, autoGainControl: false },
    })
  } catch {
    return none('refused')
  }
  const context = new AudioContext()
  await context.audioWorklet.addModule('./peaks.js')
  const node = new AudioWorkletNode(context, 'peaks')
  const take = detector(ears, LEAST_SOUND)
  node.port.onmessage = ({ data }: MessageEvent<number>) => take(performance.now(), data)
  context.createMediaStreamSource(stream).connect(node)
  return {
    state: 'listening',
    stop() {
      for (const track of stream.getTracks()) track.stop()
      void context.close()
    },
  }
}
