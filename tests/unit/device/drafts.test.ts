/** Drafts outlive a page where the storage takes them, and last as long as it where not. */
import { afterEach, expect, test, vi } from 'vitest'
import { openDrafts } from '../../../src/device/drafts.ts'

/** Local storage as it is, full, or walled off. */
function storage(is: 'open' | 'full' | 'walled') {
  const kept = new Map<string, string>()
  const of = {
    is,
    kept,
    getItem: (name: string) => kept.get(name) ?? null,
    setItem(name: string, text: string) {
      if (of.is === 'full') throw new DOMException('full', 'QuotaExceededError')
      kept.set(name, text)
    },
  }
  vi.stubGlobal('localStorage', undefined)
  Object.defineProperty(globalThis, 'localStorage', {
    configurable: true,
    get() {
      if (of.is === 'walled') throw new DOMException('walled off', 'SecurityError')
      return of
    },
  })
  return of
}
afterEach(() => vi.unstubAllGlobals())

test.each(['full', 'walled'] as const)('where storage is %s a draft lasts as long as the page', (is) => {
  storage(is)
  const name = `name.${is}`
  openDrafts().keep(name, 'a', { run: 1 })
  openDrafts().keep(name, 'b', 2)
  expect(openDrafts().of(name, 'a')).toEqual({ run: 1 })
  expect(openDrafts().of(name, 'b')).toBe(2)
})

test('once there is room again all of it is kept', () => {
  const on = storage('full')
  openDrafts().keep('name', 'a', 1)
  on.is = 'open'
  openDrafts().keep('name', 'b', 2)
  expect(JSON.parse(on.kept.get('name') ?? '')).toEqual([
    ['a', 1],
    ['b', 2],
  ])
})

test('two windows lose nothing of each other', () => {
  storage('open')
  const [one, two] = [openDrafts(), openDrafts()]
  one.keep('name', 'a', 1)
  two.keep('name', 'b', 2)
  one.keep('name', 'a', 3)
  expect([two.of('name', 'a'), one.of('name', 'b')]).toEqual([3, 2])
})

test.each(['', '{', 'null', '{"a":1}', '[1,null,["a"],[2,3]]'])(
  'torn as %s it is as if nothing was kept',
  (text) => {
    const on = storage('open')
    on.kept.set('name', text)
    expect(openDrafts().of('name', 'a')).toBeUndefined()
    openDrafts().keep('name', 'a', 1)
    expect(openDrafts().of('name', 'a')).toBe(1)
  },
)

test('the latest forty are kept', () => {
  storage('open')
  for (let i = 0; i < 41; i++) openDrafts().keep('name', `${i}`, i)
  expect([openDrafts().of('name', '0'), openDrafts().of('name', '1')]).toEqual([undefined, 1])
})
