import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { keptValues } from '../../../src/device/kept-values.ts'

const NAME = 'runs'
const isNumber = (value: unknown): value is number => typeof value === 'number'
const page = (version = 'one') => keptValues(NAME, version, isNumber)

let stored: Map<string, string>
const storage = {
  getItem: (key: string) => stored.get(key) ?? null,
  setItem: (key: string, value: string) => void stored.set(key, value),
}

beforeEach(() => {
  stored = new Map()
  vi.stubGlobal('localStorage', storage)
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

describe('values kept over page lives', () => {
  it('are there for the next page, to the last bit', () => {
    page().note('a wall', 0.1 + 0.2)
    vi.runAllTimers()
    expect(page().recall('a wall')).toBe(0.1 + 0.2)
    expect(page().recall('a wali')).toBeUndefined()
  })

  it('are nothing to another version of the program', () => {
    page().note('a wall', 1)
    vi.runAllTimers()
    expect(page('two').recall('a wall')).toBeUndefined()
  })

  it('are written after the hand, several at once, and only what this page used', () => {
    const writing = vi.spyOn(storage, 'setItem')
    page().note('left alone', 1)
    vi.runAllTimers()
    const second = page()
    second.note('a', 2)
    second.note('b', 3)
    expect(writing).toHaveBeenCalledTimes(1)
    vi.runAllTimers()
    expect(writing).toHaveBeenCalledTimes(2)
    const third = page()
    expect([third.recall('left alone'), third.recall('a'), third.recall('b')]).toEqual([undefined, 2, 3])
    writing.mockRestore()
  })

  it('grow no longer than a sitting', () => {
    const first = page()
    for (let k = 0; k < 300; k++) first.note(`wall ${k}`, k)
    vi.runAllTimers()
    const next = page()
    expect([next.recall('wall 0'), next.recall('wall 299')]).toEqual([undefined, 299])
    expect(Object.keys(JSON.parse(stored.get(NAME) ?? '').values)).toHaveLength(64)
  })

  it.each(['', '{', 'null', '7', '{"of":"one"}', '{"of":"one","values":null}', '{"of":"one","values":7}'])(
    'that read %j are none, and are written anew',
    (text) => {
      stored.set(NAME, text)
      const next = page()
      expect(next.recall('a wall')).toBeUndefined()
      next.note('a wall', 1)
      vi.runAllTimers()
      expect(page().recall('a wall')).toBe(1)
    },
  )

  it('of a shape that nobody knows are none', () => {
    keptValues(NAME, 'one', (value): value is unknown => value !== undefined).note('a wall', 'seven')
    vi.runAllTimers()
    expect(page().recall('a wall')).toBeUndefined()
  })

  it('are none where storage is walled off or full', () => {
    const refuse = () => {
      throw new DOMException('full', 'QuotaExceededError')
    }
    vi.stubGlobal('localStorage', { getItem: refuse, setItem: refuse })
    const first = page()
    first.note('a wall', 1)
    vi.runAllTimers()
    expect(first.recall('a wall')).toBe(1)
    expect(page().recall('a wall')).toBeUndefined()
  })
})
