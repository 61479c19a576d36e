import { afterEach, expect, it, vi } from 'vitest'
import { openNotices } from '../../../src/device/notices.ts'

afterEach(() => vi.unstubAllGlobals())

/** A phone that allows notices and remembers what it was asked. */
function phone() {
  const shown = new Set<string>()
  const asked: string[] = []
  const registration = {
    active: {},
    showNotification: async (_title: string, { tag }: { tag: string }) => void shown.add(tag),
    getNotifications: async ({ tag }: { tag: string }) => {
      asked.push(tag)
      return shown.has(tag) ? [{ close: () => shown.delete(tag) }] : []
    },
  }
  const badges: number[] = []
  vi.stubGlobal('Notification', { permission: 'granted' })
  vi.stubGlobal('navigator', {
    serviceWorker: { getRegistration: async () => registration },
    setAppBadge: async (count: number) => void badges.push(count),
    clearAppBadge: async () => void badges.push(0),
  })
  return { shown, asked, badges }
}

it('takes away what an earlier life of the page left, and asks no more until another was posted', async () => {
  const { shown, asked } = phone()
  shown.add('next')
  const notices = openNotices()
  await notices.clear('next')
  expect([...shown]).toEqual([])
  await notices.clear('next')
  expect(asked).toEqual(['next'])
  await notices.post({ tag: 'next', title: 'A 3', body: '', atMs: 0, silent: true })
  expect([...shown]).toEqual(['next'])
  await notices.clear('next')
  expect([...shown]).toEqual([])
})

it('sets the badge when its number changes', () => {
  const { badges } = phone()
  const notices = openNotices()
  for (const count of [0, 0, 2, 2, 0]) notices.badge(count)
  expect(badges).toEqual([0, 2, 0])
})
