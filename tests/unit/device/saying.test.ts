import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { asSaid, planAsSaid } from '../../../src/device/saying.ts'
import { planCall, planWords } from '../../../src/device/sound-plan.ts'
import { textOf } from '../../../src/device/speech.ts'

const CLIPS: Record<string, unknown> = JSON.parse(
  readFileSync(new URL('../../../public/voice/es.json', import.meta.url), 'utf8'),
).words
/** As it is heard, figures as they are. Every word has a clip. */
const heard = (language: 'en' | 'es', ...words: string[]): string => {
  const said = asSaid(words, language)
  for (const word of said) expect(CLIPS, word).toHaveProperty([word])
  return textOf(said, language).replaceAll(',', '')
}

describe('a number is said', () => {
  it.each([
    [7, '7', '7'],
    [75, '75', '75'],
    [100, 'one hundred', 'cien'],
    [105, 'one hundred 5', 'ciento 5'],
    [125, '1 25', 'ciento 25'],
    [200, '2 hundred', '2 cientos'],
    [248, '2 48', '2 cientos 48'],
    [500, 'five hundred', 'quinientos'],
    [510, '5 10', 'quinientos 10'],
  ])('%d', (n, english, spanish) => {
    expect(heard('en', `number:${n}`)).toBe(english)
    expect(heard('es', `number:${n}`)).toBe(spanish)
  })

  it.each([600, -1, 1.5, Number.NaN])('not at all: %d', (n) => {
    expect([heard('en', `number:${n}`), heard('es', `number:${n}`)]).toEqual(['', ''])
  })
})

describe('a time of day is said to five minutes', () => {
  it.each([
    [23, 50, '10 to midnight', 'las 12 menos 10'],
    [0, 0, 'midnight', 'las doce de la noche'],
    [0, 10, '10 past midnight', 'las 12 y 10'],
    [12, 2, 'noon', 'las doce del día'],
    [11, 58, 'noon', 'las doce del día'],
    [17, 30, '5 30', 'las 5 y 30'],
    [8, 0, '8 o’clock', 'las 8'],
    [23, 59, 'midnight', 'las doce de la noche'],
    [0, 30, '12 30', 'las 12 y 30'],
    [13, 0, 'one o’clock', 'la una'],
    [15, 20, '20 past 3', 'las 3 y 20'],
    [12, 50, '10 to 1', 'la una menos 10'],
    [13, 5, '5 past 1', 'la una y 5'],
  ])('%d:%d', (hours, minutes, english, spanish) => {
    expect(heard('en', `clock:${hours}:${minutes}`)).toBe(english)
    expect(heard('es', `clock:${hours}:${minutes}`)).toBe(spanish)
  })
})

describe('Spanish has its own order', () => {
  it('of halves, of a question of seconds and of a day', () => {
    expect(heard('es', '33', 'B', '1', 'was it', '7', 'and a half', 'seconds')).toBe(
      '33 B 1 7 segundos y medio ¿es así?',
    )
    expect(heard('es', 'three posts of', '4', 'and one half', 'inches')).toBe(
      'tres postes de 4 pulgadas y media',
    )
    expect(heard('es', 'about', 'clock:9:0', 'tomorrow')).toBe('mañana hacia las 9')
    expect(heard('es', 'cone', '5', 'and a half', 'down?')).toBe('cono 5 y medio ¿caído?')
  })

  it('and leaves the rest as it is, with its notes before it', () => {
    const call = planCall('G', [{ board: 'B', place: 3 }], 'x')
    expect(planAsSaid(call, 'es').cues).toEqual(call.cues)
    expect(planAsSaid(planWords(['number:120', 'degrees'], 0.4), 'es').cues).toEqual([
      { atS: 0.4, word: 'one hundred and', onBeat: false },
      { atS: 0.4, word: '20', onBeat: false },
      { atS: 0.4, word: 'degrees', onBeat: false },
    ])
  })
})
