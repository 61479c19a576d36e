/** Candling: the waits' own engine in hot damp air. */
import { describe, expect, test } from 'vitest'
import { UNLEARNED } from '../../../../src/engine/index.ts'
import { type Candled, candling } from '../../../../src/engine/kiln/candling.ts'
import { bisqueOf } from '../../../../src/engine/wall/body.ts'
import { air, beaker, dip, potOf, ROOM } from '../../../fixtures/wall.ts'

const clay = bisqueOf(0.12)
/** Dipped for 4 s and 3 s, an hour before the kiln is lit at 90 min. */
const candled = (id: string, wallMm: number, heightMm = 100): Candled => ({
  id,
  pot: potOf(beaker(wallMm, { heightMm }), clay),
  events: [dip('one', 0, 4), dip('two', 30, 3)],
  air0: ROOM,
})
const LIT_MIN = 90

describe('a load is candled', () => {
  test('as long as its slowest pot asks at the late edge, and an hour of warming', () => {
    const [thin, thick] = [candled('thin', 3), candled('thick', 7)]
    const one = candling([thick], LIT_MIN, ROOM, UNLEARNED)!
    const both = candling([thin, thick], LIT_MIN, ROOM, UNLEARNED)!
    expect(both.potId).toBe('thick')
    expect(both.lateMin).toBe(one.lateMin)
    expect(both.lateMin).toBeGreaterThan(both.likelyMin)
    expect(both.likelyMin).toBeGreaterThan(60)
    expect(both.waterG).toBeGreaterThan(one.waterG)
  })

  test('an hour and a half to six hours: practice asks for 4 to 12', () => {
    const { likelyMin, lateMin } = candling([candled('jar', 6.5, 160)], LIT_MIN, ROOM, UNLEARNED, 90)!
    expect(likelyMin / 60).toBeGreaterThan(1.4)
    expect(likelyMin / 60).toBeLessThan(3.4)
    expect(lateMin / 60).toBeGreaterThan(2.4)
    expect(lateMin / 60).toBeLessThan(6)
  })

  test('longer when it is less hot, and when the room is damp', () => {
    const at = (tempC: number, room = ROOM) =>
      candling([candled('a', 5)], LIT_MIN, room, UNLEARNED, tempC)!.lateMin
    expect(at(60)).toBeGreaterThan(1.3 * at(90))
    expect(at(85, air(20, 0.85))).toBeGreaterThan(at(85, air(20, 0.3)))
  })

  test('not at all without pots, only the warming when they are dry', () => {
    expect(candling([], LIT_MIN, ROOM, UNLEARNED)).toBeNull()
    const dry = { ...candled('dry', 5), events: [] }
    expect(candling([dry], LIT_MIN, ROOM, UNLEARNED)).toMatchObject({ lateMin: 60, waterG: 0 })
  })

  test('the water that must leave is what the dips brought and has not left', () => {
    const { waterG: now } = candling([candled('a', 6)], LIT_MIN, ROOM, UNLEARNED)!
    const { waterG: later } = candling([candled('a', 6)], LIT_MIN + 600, ROOM, UNLEARNED)!
    expect(now).toBeGreaterThan(15)
    expect(now).toBeLessThan(80)
    expect(later).toBeLessThan(0.9 * now)
  })

  test('at 50 to 95 degC and no other', () => {
    expect(() => candling([candled('a', 5)], LIT_MIN, ROOM, UNLEARNED, 120)).toThrow(
      'tempC is 120: must be from 50 to 95',
    )
  })
})
