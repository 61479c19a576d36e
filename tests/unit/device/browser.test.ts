import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { browserOf } from '../../../src/device/browser.ts'
import { countPattern } from '../../../src/device/haptics.ts'
import { bucketOf, planCount } from '../../../src/device/sound-plan.ts'
import { textOf } from '../../../src/device/speech.ts'
import { openVoice } from '../../../src/device/voice.ts'

describe('the browser a test of ringing holds for', () => {
  // User agents in the forms their makers document.
  it.each([
    [
      'Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/141.0.0.0 Mobile Safari/537.36',
      'Chrome 141',
    ],
    [
      'Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.5 Mobile/15E148 Safari/604.1',
      'Safari 18.5',
    ],
    ['Mozilla/5.0 (Android 15; Mobile; rv:142.0) Gecko/142.0 Firefox/142.0', 'Firefox 142'],
    [
      'Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) SamsungBrowser/28.0 Chrome/130.0.0.0 Mobile Safari/537.36',
      'Samsung 28',
    ],
    ['something else', 'unknown'],
  ])('%s', (userAgent, name) => {
    expect(browserOf(userAgent, false)).toBe(name)
    expect(browserOf(userAgent, true)).toBe(`${name} installed`)
  })
})

describe('a count that is felt', () => {
  it('has each sign at its moment, OUT among them, in what Chromium takes', () => {
    const ask = fc.record({
      leadS: fc.integer({ min: 3, max: 8 }),
      lowerS: fc.double({ min: 0, max: 5, noNaN: true }),
      holdS: fc.integer({ min: 1, max: 120 }),
    })
    fc.assert(
      fc.property(ask, (a) => {
        const plan = planCount(a)
        const pattern = countPattern(plan)
        expect(pattern.length).toBeLessThanOrEqual(99)
        expect(Math.min(...pattern)).toBeGreaterThanOrEqual(0)
        expect(Math.max(...pattern)).toBeLessThanOrEqual(10_000)
        const starts = pattern.flatMap((_, i) =>
          i % 2 === 0 && i > 0 ? [pattern.slice(0, i).reduce((sum, ms) => sum + ms, 0) / 1000] : [],
        )
        for (const at of [plan.totals.inS, plan.totals.outS])
          expect(Math.min(...starts.map((start) => Math.abs(start - at)))).toBeLessThan(0.05)
      }),
      { numRuns: 200 },
    )
  })
})

describe('words where there are no clips', () => {
  it('are English by their keys and Spanish by their own, a bucket by its letter', () => {
    const words = ['stir', 'name:G:demo.gatepost', '2', 'pots']
    expect(textOf(words, 'en')).toBe('stir, G, 2, pots')
    expect(textOf(words, 'es')).toBe('remueve, G, 2, piezas')
    expect(textOf(['own:demo.gatepost'], 'es')).toBe('')
  })

  it('keep the name of a bucket apart from its letter', () => {
    expect(bucketOf('name:G:demo.gatepost')).toEqual({ letter: 'G', bucketId: 'demo.gatepost' })
    expect(bucketOf('own:a:b')).toEqual({ bucketId: 'a:b' })
    expect(bucketOf('next')).toEqual({})
  })

  it('give a bucket its recorded name once there is one', () => {
    const voice = openVoice()
    const clips = voice.clips({} as BaseAudioContext)
    expect(clips('name:G:x')).toBeNull()
    const clip = { buffer: {} as AudioBuffer, fromS: 0, lastsS: 0.6, beatS: 0 }
    voice.setName('x', clip)
    expect(clips('name:G:x')).toBe(clip)
    expect(clips('own:x')).toBe(clip)
    expect(clips('own:y')).toBeNull()
    voice.setName('x', null)
    expect(clips('own:x')).toBeNull()
  })
})
