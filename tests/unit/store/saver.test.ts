import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { createSaver, type SaveStatus } from '../../../src/store/saver.ts'

/** A storage that works, fails or hangs as told. */
function bench() {
  const stored: number[][] = []
  const spilled: number[][] = []
  const seen: SaveStatus[] = []
  let mode: 'works' | 'fails' | 'hangs' = 'works'
  const saver = createSaver<number>({
    write(values) {
      if (mode === 'fails') return Promise.reject(new Error('no'))
      if (mode === 'hangs') return new Promise(() => {})
      stored.push([...values])
      return Promise.resolve()
    },
    fallback: (values) => spilled.push([...values]),
    changed: (status) => seen.push(status),
  })
  return {
    saver,
    stored,
    spilled,
    seen,
    become: (next: typeof mode) => {
      mode = next
    },
  }
}

const settled = async (promise: Promise<void>) => {
  let done = false
  promise.then(() => {
    done = true
  })
  await vi.advanceTimersByTimeAsync(0)
  return done
}

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

describe('saver', () => {
  test('writes each batch by itself at once', async () => {
    const { saver, stored, seen } = bench()
    expect(await settled(saver.save([1, 2]))).toBe(true)
    expect(await settled(saver.save([3]))).toBe(true)
    expect(stored).toEqual([[1, 2], [3]])
    expect(seen).toEqual(['saving', 'saved', 'saving', 'saved'])
  })

  test('keeps what fails, spills it, and tries again until it is stored', async () => {
    const { saver, stored, spilled, become } = bench()
    become('fails')
    const saved = saver.save([1])
    expect(await settled(saved)).toBe(false)
    expect(saver.status).toBe('not-saved')
    expect(spilled).toEqual([[1]])
    become('works')
    await vi.advanceTimersByTimeAsync(5000)
    expect(await settled(saved)).toBe(true)
    expect(stored).toEqual([[1]])
    expect(spilled.at(-1)).toEqual([])
    expect(saver.status).toBe('saved')
  })

  test('stores what failed before what came after, in one write', async () => {
    const { saver, stored, spilled, become } = bench()
    become('fails')
    const first = saver.save([1])
    await settled(first)
    become('works')
    const second = saver.save([2])
    expect(spilled.at(1)).toEqual([1, 2])
    expect(await settled(second)).toBe(true)
    expect(await settled(first)).toBe(true)
    expect(stored).toEqual([[1, 2]])
  })

  test('says so when a write takes more than two seconds, and takes it back when it succeeds', async () => {
    const { saver, seen, spilled, become } = bench()
    become('hangs')
    const saved = saver.save([1])
    await vi.advanceTimersByTimeAsync(1999)
    expect(seen).toEqual(['saving'])
    await vi.advanceTimersByTimeAsync(1)
    expect(seen).toEqual(['saving', 'not-saved'])
    expect(spilled).toEqual([[1]])
    become('works')
    saver.retry()
    expect(await settled(saved)).toBe(true)
    expect(seen.at(-1)).toBe('saved')
  })

  test('a failure that comes late does not undo a success', async () => {
    let fail = (_: Error) => {}
    let first = true
    const seen: SaveStatus[] = []
    const saver = createSaver<number>({
      write() {
        if (!first) return Promise.resolve()
        first = false
        return new Promise((_, reject) => {
          fail = reject
        })
      },
      fallback: () => {},
      changed: (status) => seen.push(status),
    })
    saver.save([1])
    await vi.advanceTimersByTimeAsync(2000)
    saver.retry()
    await vi.advanceTimersByTimeAsync(0)
    expect(saver.status).toBe('saved')
    fail(new Error('late'))
    await vi.advanceTimersByTimeAsync(10_000)
    expect(saver.status).toBe('saved')
    expect(seen).toEqual(['saving', 'not-saved', 'saved'])
  })
})
