import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Lifecycle, SleepReason, Wake } from '../../../src/device/ports.ts'
import { openRingTest } from '../../../src/wire/ring-test.ts'

const START = Date.parse('2026-03-03T18:00:00Z')

/** A phone that can be locked, and what it keeps and learns of the test. */
function phone(remembered?: number) {
  let visible = true
  let woken = (_: Wake): void => undefined
  let slept = (_: SleepReason): void => undefined
  const lifecycle: Lifecycle = {
    visible: () => visible,
    onWake(listener) {
      woken = listener
      return () => undefined
    },
    onSleep(listener) {
      slept = listener
      return () => undefined
    },
  }
  const learnt: boolean[] = []
  const kept: (number | undefined)[] = []
  const arm = vi.fn()
  const test = openRingTest({
    lifecycle,
    dueMs: remembered,
    changed: (dueMs) => kept.push(dueMs),
    arm,
    learn: (rang) => learnt.push(rang),
  })
  const lock = () => {
    visible = false
    slept('hidden')
  }
  const unlock = () => {
    visible = true
    woken({ reason: 'visible', gapMs: 0, atMs: Date.now() })
  }
  return { test, learnt, kept, arm, lock, unlock }
}

beforeEach(() => void vi.useFakeTimers({ now: START }))
afterEach(() => void vi.useRealTimers())

describe('the guided test of ringing', () => {
  it('asks whether it rang when the phone was locked before the minute was over and opened after', () => {
    const { test, learnt, kept, arm, lock, unlock } = phone()
    test.begin()
    expect(test.call()).toMatchObject({ dueMs: START + 60_000 })
    vi.advanceTimersByTime(5000)
    lock()
    vi.advanceTimersByTime(70_000)
    expect(test.view()?.step).toBe('lock')
    unlock()
    expect(test.view()?.step).toBe('ask')
    expect(test.call()).toBeUndefined()
    test.end(true)
    expect(learnt).toEqual([true])
    expect(kept.at(-1)).toBeUndefined()
    expect(arm).toHaveBeenCalledTimes(2)
  })

  it('learns nothing from a screen that was on when it was due', () => {
    const { test, learnt, lock, unlock } = phone()
    test.begin()
    lock()
    vi.advanceTimersByTime(20_000)
    unlock()
    vi.advanceTimersByTime(46_000)
    expect(test.view()?.step).toBe('stayed')
    test.end()
    expect(learnt).toEqual([])
    expect(test.view()).toBeUndefined()
  })

  it('comes to its end though its timer fired early: the clock was set back in between', () => {
    const { test } = phone()
    test.begin()
    vi.setSystemTime(START - 30_000)
    vi.advanceTimersByTime(66_000)
    expect(test.view()?.step).toBe('lock')
    vi.advanceTimersByTime(30_000)
    expect(test.view()?.step).toBe('stayed')
  })

  it('asks after a start where the app was closed meanwhile, not where it was closed before it was due', () => {
    expect(phone(START - 1000).test.view()?.step).toBe('ask')
    expect(phone(START + 1000).test.view()).toBeUndefined()
  })
})
