import { expect, test } from 'vitest'
import { desk } from '../../../src/words/en/desk.ts'

const { taught, glaze, clay, air } = desk.measured

test('what was taught is told beside the estimate in percent, with its range', () => {
  expect(taught.waits(1.12, 0.95, 1.3)).toBe('Coats wait 12 % longer than estimated (−5 to +30 %).')
  expect(taught.waits(0.8, 0.7, 0.9)).toBe('Coats wait 20 % shorter than estimated (−30 to −10 %).')
  expect(taught.waits(1.001, 0.9, 1.1)).toBe('Coats wait as long as estimated (−10 to +10 %).')
  expect(glaze.pickUp(0.81, 0.7, 0.95)).toBe('Goes on 19 % thinner than estimated (−30 to −5 %).')
  expect(clay.drinks(1.5)).toBe('This clay drinks 50 % faster than assumed.')
  expect(air.factor(1)).toBe('The air takes as much as estimated.')
})
