import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { openSound } from '../../../src/device/sound.ts'
import { planCount, TONE_S } from '../../../src/device/sound-plan.ts'
import type { Clip } from '../../../src/device/sound-schedule.ts'
import { FakeContext } from './fake-audio.ts'

const WORD_S = 0.5
const clip: Clip = { buffer: {} as AudioBuffer, fromS: 0, lastsS: WORD_S, beatS: 0 }
const COUNT = planCount({ leadS: 3, lowerS: 0, holdS: 2 })

const instead: { words: readonly string[]; afterMs: number }[] = []
/** Sentences by the phone's own speech; an empty one breaks it off. */
const aloud: string[] = []
let sound: ReturnType<typeof openSound>
/** For so long the page and its audio were stopped, with the clocks running on. */
let stoodMs = 0

beforeEach(async () => {
  vi.useFakeTimers()
  vi.stubGlobal('navigator', {})
  vi.stubGlobal('AudioContext', FakeContext)
  FakeContext.opened = []
  stoodMs = 0
  const audioMs = performance.now.bind(performance)
  vi.spyOn(performance, 'now').mockImplementation(() => audioMs() + stoodMs)
  FakeContext.pageMs = audioMs
  instead.length = 0
  aloud.length = 0
  sound = openSound({
    clips: () => () => clip,
    asSaid: (plan) => plan,
    instead: (words, afterMs) => instead.push({ words, afterMs }),
    aloud: (text) => aloud.push(text),
    talks: () => false,
  })
  await sound.unlock()
})
afterEach(() => {
  sound.close()
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
  vi.useRealTimers()
})

const context = (): FakeContext => FakeContext.opened.at(-1)!
/** What was started and not cut off before it began, lasting so long. */
const of = (lastsS: number) =>
  context().started.filter((one) => one.lastsS === lastsS && one.stoppedS > one.atS)

describe('an audio context that says it runs while its clock stands still', () => {
  it('is told within four seconds, and the next tap counts on a new one', async () => {
    const told: string[] = []
    sound.onHealth((health) => told.push(health))
    await vi.advanceTimersByTimeAsync(6000)
    expect(sound.health()).toBe('ok')
    context().die()
    await vi.advanceTimersByTimeAsync(4000)
    expect(told).toEqual(['dead'])
    const dead = context()
    sound.count(COUNT, performance.now())
    await vi.advanceTimersByTimeAsync(200)
    expect(context()).not.toBe(dead)
    expect(dead.state).toBe('closed')
    expect(of(TONE_S.out)).toHaveLength(1)
    expect(told).toEqual(['dead', 'ok'])
  })

  it('is noticed by the very tap where no look came between', async () => {
    await vi.advanceTimersByTimeAsync(2010)
    context().die()
    await vi.advanceTimersByTimeAsync(900)
    sound.count(COUNT, performance.now())
    await vi.advanceTimersByTimeAsync(200)
    expect(FakeContext.opened).toHaveLength(2)
    expect(of(TONE_S.out)).toHaveLength(1)
  })

  it('stays told while new ones are dead as well, and nothing is thrown', async () => {
    context().die()
    await vi.advanceTimersByTimeAsync(4000)
    sound.count(COUNT, performance.now())
    await vi.advanceTimersByTimeAsync(50)
    context().die()
    await vi.advanceTimersByTimeAsync(6000)
    expect(sound.health()).toBe('dead')
    sound.stop()
  })
})

it('a page that stood still takes nothing of it for an illness: what it had scheduled sounds on', () => {
  sound.count(COUNT, performance.now())
  stoodMs = 60_000
  sound.refused()
  vi.advanceTimersByTime(6000)
  expect(sound.health()).toBe('ok')
  expect(FakeContext.opened).toHaveLength(1)
})

describe('a warning', () => {
  it('sounds at once and is spoken after it', () => {
    sound.warn(['wax pan is on', 'are you beside it'])
    const [tone] = of(TONE_S.refused)
    const words = of(WORD_S)
    expect(words).toHaveLength(2)
    expect(words[0]!.atS).toBeGreaterThan(tone!.atS + TONE_S.refused)
    expect(words[1]!.atS).toBeGreaterThan(words[0]!.atS + WORD_S)
  })

  it('is not spoken into a count, nor cut off by what the next card says', async () => {
    sound.count(COUNT, performance.now())
    await vi.advanceTimersByTimeAsync(100)
    const before = of(WORD_S).length
    sound.warn(['wax pan is on'])
    expect(of(TONE_S.refused)[0]!.atS).toBeLessThan(0.2)
    const warned = of(WORD_S).at(-1)!
    expect(of(WORD_S)).toHaveLength(before + 1)
    expect(warned.atS).toBeGreaterThan(COUNT.totals.outUntilS)
    sound.say(['next'])
    expect(warned.stoppedS).toBe(Number.POSITIVE_INFINITY)
    expect(of(WORD_S).at(-1)!.atS).toBeGreaterThan(warned.atS + WORD_S)
  })

  it('is a sign alone with tones only, and nothing with numerals only', () => {
    sound.setMode('tones')
    sound.warn(['wax pan is on'])
    expect(context().started).toHaveLength(1)
    sound.setMode('numerals')
    sound.warn(['wax pan is on'])
    expect(context().started).toHaveLength(1)
  })

  it('goes to the phone\u2019s own speech as well, which says it where there are no clips', () => {
    sound.warn(['wax pan is on'])
    expect(instead).toEqual([{ words: ['wax pan is on'], afterMs: expect.any(Number) }])
    expect(instead[0]!.afterMs).toBeGreaterThan(1000 * TONE_S.refused)
  })
})

describe('what is in the air', () => {
  it('is heard from the first sample until it has rung out, and not before its time', async () => {
    expect(sound.heard()).toBe(false)
    sound.say(['next'])
    await vi.advanceTimersByTimeAsync(100)
    expect(sound.heard()).toBe(true)
    await vi.advanceTimersByTimeAsync(1000 * WORD_S + 300)
    expect(sound.heard()).toBe(false)
    sound.count(COUNT, performance.now())
    await vi.advanceTimersByTimeAsync(700)
    expect(sound.heard()).toBe(false)
    await vi.advanceTimersByTimeAsync(400)
    expect(sound.heard()).toBe(true)
  })
})

describe('a call', () => {
  it('is the two notes of its bucket, twice, one after another', () => {
    sound.call('B', [])
    const { started } = context()
    expect(started.map(({ atS }) => Math.round(100 * (atS - started[0]!.atS)))).toEqual([0, 18, 66, 84])
    for (const { lastsS } of started) expect(lastsS).toBeCloseTo(0.24)
  })
})

describe('how a card is answered, said by the phone itself', () => {
  const said = () => aloud.filter((text) => text !== '')
  const HINT = 'Foot waxed? Hit here with a knuckle.'

  it('comes once what the card says is over', async () => {
    sound.hint(HINT, 'en')
    sound.say(['wax', '4'])
    await vi.advanceTimersByTimeAsync(900)
    expect(said()).toEqual([])
    await vi.advanceTimersByTimeAsync(1500)
    expect(said()).toEqual([HINT])
  })

  it('is not said into a count, nor after the card is gone, nor where voice is off', async () => {
    sound.count(COUNT, performance.now())
    sound.hint(HINT, 'en')
    await vi.advanceTimersByTimeAsync(COUNT.totals.outUntilS * 1000 - 100)
    expect(said()).toEqual([])
    sound.hint('', 'en')
    await vi.advanceTimersByTimeAsync(10_000)
    expect(said()).toEqual([])
    for (const mode of ['tones', 'numerals'] as const) {
      sound.hint(HINT, 'en')
      sound.setMode(mode)
      sound.hint(HINT, 'en')
      await vi.advanceTimersByTimeAsync(3000)
      expect(said()).toEqual([])
    }
  })

  it('gives way to a count, to a call and to the next line', async () => {
    for (const other of [
      () => sound.count(COUNT, performance.now()),
      () => sound.call('B', [{ board: 'A', place: 1 }]),
      () => sound.say(['stir']),
    ]) {
      sound.hint(HINT, 'en')
      await vi.advanceTimersByTimeAsync(20_000)
      expect(aloud.at(-1)).toBe(HINT)
      other()
      expect(aloud.at(-1)).toBe('')
    }
  })
})
