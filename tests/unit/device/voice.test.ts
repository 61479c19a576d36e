import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { LAST_NUMBER, planCall, planCount } from '../../../src/device/sound-plan.ts'
import { SPANISH } from '../../../src/device/speech.ts'
import { decoderDelayS, readCueTable } from '../../../src/device/voice.ts'

const tableOf = (language: string) =>
  readCueTable(
    JSON.parse(readFileSync(new URL(`../../../public/voice/${language}.json`, import.meta.url), 'utf8')),
  )

describe.each(['en', 'es'])('the words of %s', (language) => {
  const table = tableOf(language)

  it('cover every count, every call and all letters', () => {
    for (let n = 0; n <= LAST_NUMBER; n++) expect(table.words).toHaveProperty(String(n))
    for (const letter of 'ABCDEFGHIJKLMNOPQRSTUVWXYZ') expect(table.words).toHaveProperty(letter)
    const plans = [planCount({ leadS: 3, lowerS: 1, holdS: 99 }), planCall('Q', [{ board: 'Z', place: 12 }])]
    for (const cue of plans.flatMap((plan) => plan.cues)) {
      if ('word' in cue) expect(table.words[cue.word], cue.word).toBeDefined()
    }
  })

  it('are numbers, letters and what the phone itself could say in Spanish, no more and no less', () => {
    const calls = Object.keys(table.words).filter((word) => !/^(\d+|[A-Z])$/.test(word))
    expect(calls).toEqual(Object.keys(SPANISH))
  })

  it('lie one after another, with the stress inside each', () => {
    let endS = 0
    for (const [fromS, lastsS, beatS] of Object.values(table.words)) {
      expect(fromS).toBeGreaterThan(endS)
      expect(beatS).toBeGreaterThan(0)
      expect(beatS).toBeLessThan(lastsS)
      endS = fromS + lastsS
    }
  })

  it('are over before the next number of a count begins', () => {
    for (let n = 1; n < LAST_NUMBER; n++) {
      const [, lastsS, beatS] = table.words[String(n)]!
      const nextBeatS = table.words[String(n + 1)]![2]
      expect(lastsS - beatS, `${n}`).toBeLessThan(1 - nextBeatS + 0.03)
    }
  })
})

describe('the delay of a decoder', () => {
  const RATE = 24_000
  const withClick = (atS: number): Float32Array => {
    const samples = new Float32Array(RATE)
    const centre = Math.round(atS * RATE)
    for (let i = -60; i <= 60; i++) {
      const s = i / RATE
      samples[centre + i] = 0.9 * Math.exp(-((s / 0.0012) ** 2)) * Math.cos(2 * Math.PI * 1500 * s)
    }
    return samples
  }

  it.each([-0.01, 0, 0.028, 0.05, 0.1])('is found to a sample: %d s', (delayS) => {
    expect(Math.abs(decoderDelayS(withClick(0.2 + delayS), RATE, 0.2) - delayS)).toBeLessThan(1 / RATE)
  })

  it('is taken for none where there is no click', () => {
    expect(decoderDelayS(new Float32Array(RATE), RATE, 0.2)).toBe(0)
  })

  it.each([null, {}, { clickS: 0.2, words: {} }, { clickS: 0.2, words: { a: [1, 2] } }, { clickS: 'x' }])(
    'refuses %j as a table',
    (bad) => {
      expect(() => readCueTable(bad)).toThrow(TypeError)
    },
  )
})
