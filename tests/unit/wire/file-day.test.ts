import { afterEach, beforeEach, expect, it, vi } from 'vitest'

const zone = process.env.TZ
beforeEach(() => {
  process.env.TZ = 'Europe/London'
  vi.resetModules()
})
afterEach(() => {
  if (zone === undefined) delete process.env.TZ
  else process.env.TZ = zone
})

it('names a file by the day on the wall, not in Greenwich', async () => {
  const { fileDay } = await import('../../../src/wire/file-day.ts')
  expect(fileDay(Date.parse('2026-06-30T23:30:00Z'))).toBe('2026-07-01')
  expect(fileDay(Date.parse('2026-03-09T12:00:00Z'))).toBe('2026-03-09')
})
