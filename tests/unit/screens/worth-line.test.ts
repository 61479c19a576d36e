import { expect, test } from 'vitest'
import { hasBought } from '../../../src/screens/desk/worth-line.tsx'

test('what checks bought is said once there are three, and where they narrowed the waits as told', () => {
  expect(hasBought({ checks: 3, untaught: 6.6, factor: 3.4 })).toBe(true)
  expect(hasBought({ checks: 2, untaught: 6.6, factor: 3.4 })).toBe(false)
  expect(hasBought({ checks: 3, untaught: 4.85, factor: 5.71 })).toBe(false)
  expect(hasBought({ checks: 3, untaught: 6.64, factor: 7.19 })).toBe(false)
  expect(hasBought({ checks: 3, untaught: 6.7, factor: 6.6 })).toBe(false)
})
