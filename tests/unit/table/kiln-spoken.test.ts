import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { asSaid } from '../../../src/device/saying.ts'
import { textOf } from '../../../src/device/speech.ts'
import type { LoadCall } from '../../../src/table/load/calls.ts'
import { callWords, coldLine, coneWords, shelfLine } from '../../../src/table/load/kiln-spoken.ts'
import { levelsOf } from '../../../src/table/load/loads.ts'
import { lit, loadOf, proposed } from './kiln-play.ts'

const CLIPS: Record<string, unknown> = JSON.parse(
  readFileSync(new URL('../../../public/voice/en.json', import.meta.url), 'utf8'),
).words
/** As it is heard. Every word has a clip. */
const heard = (words: readonly string[]) => {
  const said = asSaid(words, 'en')
  for (const word of said) expect(CLIPS, word).toHaveProperty([word])
  return said.join(' ')
}
/** The same in Spanish, figures as they are. */
const heardInSpanish = (words: readonly string[]) => {
  const said = asSaid(words, 'es')
  for (const word of said) expect(CLIPS, word).toHaveProperty([word])
  return textOf(said, 'es').replaceAll(',', '')
}

describe('at the kiln the voice says', () => {
  test('cones by their labels', () => {
    const said = ['6', '10', '04', '022', '5.5', '05.5', '6a', '04a'].map((cone) => heard(coneWords(cone)))
    expect(said).toEqual(['6', '10', '0 4', '0 22', '5 and a half', '0 5 and a half', '6 A', '0 4 A'])
  })

  test('each shelf as it is its turn, with what it stands on', () => {
    const play = proposed(3)
    const lines = levelsOf(loadOf(play)).map((level) => shelfLine(play.table, loadOf(play), level))
    const posts = levelsOf(loadOf(play)).map(({ postMm }) => postMm.reduce((sum, one) => sum + one, 0))
    expect(heard(lines[0]?.words ?? [])).toBe('shelf 1 on stilts')
    expect(heard(lines[1]?.words ?? [])).toBe(`shelf 2 three posts of ${heard([`number:${posts[0]}`])}`)
    expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length)
    play.act({ do: 'set-settings', settings: { units: 'us' } })
    const [, second] = levelsOf(loadOf(play))
    if (!second) throw new Error('one shelf')
    // 225 mm are 8.86 in: no half inch, so no length is said.
    expect(heard(shelfLine(play.table, loadOf(play), second).words)).toMatch(
      /^shelf 2( three posts of \d+( and one half)? inches)?$/,
    )
  })

  test('what a call is about', () => {
    const play = lit()
    const { loadId } = loadOf(play)
    const said = (what: LoadCall['what']) => heard(callWords(play.table, loadId, what))
    expect([said('cone'), said('lid'), said('unload')]).toEqual([
      'cone 6 down?',
      'lid from 1 20 degrees',
      'read it again about 60 degrees',
    ])
    expect([said('read'), said('hold')]).toEqual(['read it again', 'cone 6 hold is over'])
    const inSpanish = (what: LoadCall['what']) => heardInSpanish(callWords(play.table, loadId, what))
    expect([inSpanish('cone'), inSpanish('hold'), inSpanish('lid'), inSpanish('unload')]).toEqual([
      'cono 6 ¿caído?',
      'cono 6 meseta cumplida',
      'tapa desde ciento 20 grados',
      'vuelve a leer hacia 60 grados',
    ])
    play.act({ do: 'set-settings', settings: { units: 'us' } })
    expect([said('lid'), said('unload')]).toEqual([
      'lid from 2 48 degrees',
      'read it again about 1 40 degrees',
    ])
    expect(inSpanish('unload')).toBe('vuelve a leer hacia ciento 40 grados')
  })

  test('when the kiln is cold, as far as tomorrow', () => {
    const play = lit()
    const { table } = play
    const line = (at: Date, now: Date) =>
      coldLine(table, loadOf(play), at.getTime() - table.skewMs, now.getTime() - table.skewMs)
    const evening = new Date(2026, 2, 3, 18, 0)
    const said = (at: Date) => heard(line(at, evening)?.words ?? [])
    expect(said(new Date(2026, 2, 3, 23, 49))).toBe('below 60 degrees about 10 to midnight')
    expect(said(new Date(2026, 2, 4, 0, 20))).toBe('below 60 degrees about 20 past midnight')
    expect(said(new Date(2026, 2, 4, 9, 0))).toBe('below 60 degrees about 9 o’clock tomorrow')
    const inSpanish = (at: Date) => heardInSpanish(line(at, evening)?.words ?? [])
    expect(inSpanish(new Date(2026, 2, 3, 19, 50))).toBe('por debajo de 60 grados hacia las 8 menos 10')
    expect(inSpanish(new Date(2026, 2, 4, 13, 0))).toBe('por debajo de 60 grados mañana hacia la una')
    expect(line(new Date(2026, 2, 5, 9, 0), evening)).toBeUndefined()
    expect(line(new Date(2026, 2, 3, 17, 0), evening)).toBeUndefined()
    expect(coldLine(table, loadOf(play), Number.POSITIVE_INFINITY, 0)).toBeUndefined()
  })
})
