import { describe, expect, test } from 'vitest'
import { asked, hasFallenBack, type Starts, shownVersion, started, takenOver } from '../../../sw/starts.ts'

const SECOND = 1000
/** A version that works, seen to. */
const working: Starts = started(asked(takenOver({ failed: 0 }, 'one'), 0))

describe('which version is shown', () => {
  test('the newest, once it has taken over', () => {
    expect(shownVersion(working)).toBe('one')
    expect(shownVersion(takenOver(working, 'two'))).toBe('two')
    expect(takenOver(working, 'two')).toMatchObject({ before: 'one', worked: 'one', failed: 0 })
  })

  test('the one before, when the newest did not start twice', () => {
    let starts = asked(takenOver(working, 'two'), 0)
    starts = asked(starts, 5 * SECOND)
    expect(shownVersion(starts)).toBe('two')
    starts = asked(starts, 9 * SECOND)
    expect(hasFallenBack(starts)).toBe(true)
    expect(shownVersion(starts)).toBe('one')
    // That the old one starts says nothing for the new one.
    expect(shownVersion(started(starts))).toBe('one')
    expect(shownVersion(takenOver(started(starts), 'three'))).toBe('three')
  })

  test('the newest still, when pages were only left at once, or the clock was set back', () => {
    let starts = takenOver(working, 'two')
    for (const at of [0, 300, 700, 1100, 1500]) starts = asked(starts, at)
    expect(shownVersion(asked(starts, -3_600_000))).toBe('two')
  })

  test('one that started in between begins anew', () => {
    let starts = asked(asked(takenOver(working, 'two'), 0), 5 * SECOND)
    starts = asked(asked(started(starts), 20 * SECOND), 30 * SECOND)
    expect(shownVersion(starts)).toBe('two')
  })

  test('the first one there is, whatever happens', () => {
    let starts = takenOver({ failed: 0 }, 'one')
    for (let start = 0; start < 9; start++) starts = asked(starts, start * 5 * SECOND)
    expect(shownVersion(starts)).toBe('one')
    expect(hasFallenBack(starts)).toBe(false)
  })
})
