import { expect, test, vi } from 'vitest'
import { fold } from '../../../src/table/fold/fold.ts'
import { fiveClocks } from '../../fixtures/five-clocks.ts'
import { recordsOfHits } from '../../fixtures/hits.ts'

test('bare dry pots are forecast without what computes walls; a coat without it is an error, not a wrong time', async () => {
  const wet = fold(recordsOfHits(fiveClocks(0), 0))
  vi.resetModules()
  const { forecastOf, filledAt, needsWalls } = await import('../../../src/table/forecast/forecast.ts')
  const bare = { ...wet, pots: {} }
  const [coated] = Object.values(wet.pots)
  if (!coated) throw new Error('no pot')
  const dry = { ...coated, dips: [] }
  expect(needsWalls(bare)).toBe(false)
  expect(needsWalls({ ...wet, pots: { dry } })).toBe(false)
  expect(forecastOf(wet, dry)).toBeUndefined()
  expect(filledAt(wet, dry, 0)).toBe(0)
  expect(needsWalls(wet)).toBe(true)
  expect(() => forecastOf(wet, coated)).toThrow('computes walls')
  await import('../../../src/table/forecast/walls.ts')
  expect(forecastOf(wet, coated)?.touch.likely).toBeGreaterThan(0)
})
