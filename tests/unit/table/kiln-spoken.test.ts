import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import {
  callWords,
  clockWords,
  coldLine,
  coneWords,
  numberWords,
  shelfLine,
} from '../../../src/table/load/kiln-spoken.ts'
import { levelsOf } from '../../../src/table/load/loads.ts'
import { lit, loadOf, proposed } from './kiln-play.ts'

const CLIPS: Record<string, unknown> = JSON.parse(
  readFileSync(new URL('../../../public/voice/en.json', import.meta.url), 'utf8'),
).words
/** As it is heard. Every word has a clip. */
const heard = (words: readonly string[]) => {
  for (const word of words) expect(CLIPS, word).toHaveProperty([word])
  return words.join(' ')
}

describe('at the kiln the voice says', () => {
  test('numbers as posts and temperatures are read out', () => {
    const said = [7, 75, 100, 105, 125, 150, 200, 248].map((n) => heard(numberWords(n)))
    expect(said).toEqual(['7', '75', 'one hundred', 'one hundred 5', '1 25', '1 50', '2 hundred', '2 48'])
    expect([numberWords(1000), numberWords(-1), numberWords(1.5)]).toEqual([[], [], []])
  })

  test('cones by their labels', () => {
    const said = ['6', '10', '04', '022', '5.5', '05.5', '6a', '04a'].map((cone) => heard(coneWords(cone)))
    expect(said).toEqual(['6', '10', '0 4', '0 22', '5 and a half', '0 5 and a half', '6 A', '0 4 A'])
  })

  test('the time of day to five minutes', () => {
    const said = [
      [23, 50],
      [0, 0],
      [0, 10],
      [12, 2],
      [11, 58],
      [17, 30],
      [8, 0],
      [23, 59],
      [0, 30],
    ].map(([hours = 0, minutes = 0]) => heard(clockWords(hours, minutes)))
    expect(said).toEqual([
      '10 to midnight',
      'midnight',
      '10 past midnight',
      'noon',
      'noon',
      '5 30',
      '8 o’clock',
      'midnight',
      '12 30',
    ])
  })

  test('each shelf as it is its turn, with what it stands on', () => {
    const play = proposed(3)
    const lines = levelsOf(loadOf(play)).map((level) => shelfLine(play.table, loadOf(play), level))
    const posts = levelsOf(loadOf(play)).map(({ postMm }) => postMm.reduce((sum, one) => sum + one, 0))
    expect(heard(lines[0]?.words ?? [])).toBe('shelf 1 on stilts')
    expect(heard(lines[1]?.words ?? [])).toBe(
      `shelf 2 three posts of ${numberWords(posts[0] ?? 0).join(' ')}`,
    )
    expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length)
    play.act({ do: 'set-settings', settings: { units: 'us' } })
    const [, second] = levelsOf(loadOf(play))
    if (!second) throw new Error('one shelf')
    // 225 mm are 8.86 in: no half inch, so no length is said.
    expect(heard(shelfLine(play.table, loadOf(play), second).words)).toMatch(
      /^shelf 2( three posts of \d+( and a half)? inches)?$/,
    )
  })

  test('what a call is about', () => {
    const play = lit()
    const { loadId } = loadOf(play)
    const said = (what: 'cone' | 'lid' | 'unload' | 'read') => heard(callWords(play.table, loadId, what))
    expect([said('cone'), said('lid'), said('unload')]).toEqual([
      'cone 6 down?',
      'lid from 1 20',
      'read it again about 60',
    ])
    expect(said('read')).toBe('read it again')
    play.act({ do: 'set-settings', settings: { units: 'us' } })
    expect([said('lid'), said('unload')]).toEqual(['lid from 2 48', 'read it again about 1 40'])
  })

  test('when the kiln is cold, as far as tomorrow', () => {
    const play = lit()
    const { table } = play
    const line = (at: Date, now: Date) =>
      coldLine(table, loadOf(play), at.getTime() - table.skewMs, now.getTime() - table.skewMs)
    const evening = new Date(2026, 2, 3, 18, 0)
    const said = (at: Date) => heard(line(at, evening)?.words ?? [])
    expect(said(new Date(2026, 2, 3, 23, 49))).toBe('below 60 about 10 to midnight')
    expect(said(new Date(2026, 2, 4, 0, 20))).toBe('below 60 about 20 past midnight')
    expect(said(new Date(2026, 2, 4, 9, 0))).toBe('below 60 about 9 o’clock tomorrow')
    expect(line(new Date(2026, 2, 5, 9, 0), evening)).toBeUndefined()
    expect(line(new Date(2026, 2, 3, 17, 0), evening)).toBeUndefined()
    expect(coldLine(table, loadOf(play), Number.POSITIVE_INFINITY, 0)).toBeUndefined()
  })
})
