import { expect, test } from 'vitest'
import { appText } from '../../../src/screens/opening/guess-lines.tsx'
import { WORDS } from '../../../src/words/bench.ts'
import { formats } from '../../../src/words/format.ts'
import { OPENING_WORDS, type OpeningWords } from '../../../src/words/opening.ts'

test('what is scored of the app’s guess is told, however wide its range', () => {
  const words = { opening: OPENING_WORDS.en } as OpeningWords
  const said = (lowMm: number, likelyMm: number, highMm: number) =>
    appText(words, formats(WORDS.en, 'metric', 'en'), 'metric', { lowMm, likelyMm, highMm, roomMm: 12 })
  expect(said(0, 10.3, 12)).toBe('10 mm (none to the shelf)')
  expect(said(2, 5, 12)).toBe('5 mm (2 to shelf)')
})
