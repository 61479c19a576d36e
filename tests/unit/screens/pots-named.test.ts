import { expect, test } from 'vitest'
import { potsNamed } from '../../../src/screens/shelf/pots-named.ts'
import { DESK_WORDS } from '../../../src/words/desk.ts'
import { begun } from '../table/kiln-play.ts'

test('pots are named in the order of their numbers, the rest counted; one more is named too', () => {
  const { table } = begun()
  const named = (...numbers: number[]) =>
    potsNamed(
      DESK_WORDS.en,
      table,
      numbers.flatMap((number) => Object.values(table.pots).filter(({ facts }) => facts.number === number)),
    )
  expect(named(33, 31, 32)).toBe('31, 32, 33')
  expect(named(37, 31, 34, 33, 36, 32, 35)).toBe('31, 32, 33, 34, 35, 36, 37')
  expect(named(38, 37, 31, 34, 33, 36, 32, 35)).toBe('31, 32, 33, 34, 35, 36 and 2 more')
})
