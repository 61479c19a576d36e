import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { feelKnocks, hearKnocks } from '../../../src/device/listen.ts'

/** A phone's motion sensor gives a sample this often. */
const STEP_MS = 16
/** Gravity, and what a knuckle on the table adds for a moment, m/s². */
const REST = 9.8
const STROKE = 3

let motion: EventTarget
let knocked: number
let sounding: boolean
const ears = { heard: () => sounding, onKnock: () => knocked++ }

beforeEach(() => {
  motion = new EventTarget()
  knocked = 0
  sounding = false
  vi.stubGlobal('DeviceMotionEvent', class {})
  vi.stubGlobal('addEventListener', motion.addEventListener.bind(motion))
  vi.stubGlobal('removeEventListener', motion.removeEventListener.bind(motion))
})
afterEach(() => vi.unstubAllGlobals())

let atMs = 0
/** The table is knocked at these moments of the next seconds; `speaks`: the app sounds from then to then. */
function table(
  strokesMs: readonly number[],
  speaks: readonly [fromMs: number, untilMs: number] = [0, 0],
): void {
  for (let ms = 0; ms < 3000; ms += STEP_MS, atMs += STEP_MS) {
    sounding = ms >= speaks[0] && ms < speaks[1]
    const struck = strokesMs.some((from) => ms >= from && ms < from + STEP_MS)
    const event = Object.assign(new Event('devicemotion'), {
      accelerationIncludingGravity: { x: 0.02 * Math.sin(ms), y: 0, z: REST + (struck ? STROKE : 0) },
    })
    Object.defineProperty(event, 'timeStamp', { value: atMs })
    motion.dispatchEvent(event)
  }
}

describe('knocks that are felt', () => {
  it('are two strokes, while the app is silent', async () => {
    const listener = await feelKnocks(ears)
    expect(listener.state).toBe('listening')
    table([1500])
    expect(knocked).toBe(0)
    table([1500, 1800])
    expect(knocked).toBe(1)
    table([1500, 1800], [1400, 2600])
    table([1500, 1800], [1700, 1760])
    expect(knocked).toBe(1)
    table([1500, 1800], [500, 1000])
    expect(knocked).toBe(2)
    listener.stop()
    table([1500, 1800])
    expect(knocked).toBe(2)
  })

  it('are not there where the phone refuses or has no sensor', async () => {
    vi.stubGlobal('DeviceMotionEvent', { requestPermission: async () => 'denied' })
    expect((await feelKnocks(ears)).state).toBe('refused')
    Reflect.deleteProperty(globalThis, 'DeviceMotionEvent')
    expect((await feelKnocks(ears)).state).toBe('absent')
    table([1500, 1800])
    expect(knocked).toBe(0)
  })
})

describe('knocks that are heard', () => {
  it('are not there without a microphone, or where it is refused', async () => {
    vi.stubGlobal('navigator', {})
    expect((await hearKnocks(ears)).state).toBe('absent')
    vi.stubGlobal('navigator', { mediaDevices: { getUserMedia: () => Promise.reject(new Error('no')) } })
    expect((await hearKnocks(ears)).state).toBe('refused')
  })
})
