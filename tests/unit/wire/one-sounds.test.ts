import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { openOneSounds } from '../../../src/wire/one-sounds.ts'

type Asked = {
  readonly options: LockOptions
  readonly granted: (lock: object | null) => void
  readonly refuse: (error: Error) => void
}

let asked: Asked[] = []
/** A lock manager that the test answers for. */
const locks = {
  request: (_name: string, options: LockOptions, work: (lock: object | null) => unknown) =>
    new Promise((_, refuse) => {
      asked.push({ options, granted: (lock) => void work(lock), refuse })
    }),
} as unknown as LockManager

beforeEach(() => {
  asked = []
  vi.stubGlobal('document', new EventTarget())
})
afterEach(() => {
  vi.unstubAllGlobals()
})
const settled = () => new Promise((resolve) => setTimeout(resolve))

test('a window whose lock is taken away is silent, and waits for its turn', async () => {
  const one = openOneSounds(locks)
  asked[0]?.granted({})
  expect(one.here.value).toBe(true)
  asked[0]?.refuse(new DOMException('stolen', 'AbortError'))
  await settled()
  expect(one.here.value).toBe(false)
  expect(asked.map(({ options }) => options)).toEqual([{ ifAvailable: true }, {}])
  asked[1]?.granted({})
  expect(one.here.value).toBe(true)
})

test.each(['InvalidStateError', 'SecurityError', 'NotSupportedError'])(
  'where locks are refused, as a page that is being left is, with %s, it sounds and asks no more',
  async (name) => {
    const one = openOneSounds(locks)
    asked[0]?.refuse(new DOMException('refused', name))
    await settled()
    expect(one.here.value).toBe(true)
    expect(asked).toHaveLength(1)
  },
)
