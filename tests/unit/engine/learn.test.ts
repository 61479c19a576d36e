import { afterEach, describe, expect, test } from 'vitest'
import {
  forecastPot,
  forGlaze,
  type Look,
  learn,
  touchNext,
  UNLEARNED,
  type Weighing,
} from '../../../src/engine/index.ts'
import { normalCdf, normalPdf } from '../../../src/engine/numeric/spread.ts'
import { waitsOf } from '../../../src/engine/wait/forecast.ts'
import { type AtNodes, isAtNodes, rememberRuns } from '../../../src/engine/wait/learn.ts'
import { TOUCH_SD } from '../../../src/engine/wait/learned.ts'
import { courseOf, dryGlazeG, runPot, waterG } from '../../../src/engine/wall/pot.ts'
import { air, beaker, dip, potOf, ROOM } from '../../fixtures/wall.ts'

/** The second coat on 6 mm, ten minutes after the first, in still air. */
const look = (id: string, seen: Pick<Look, 'dampMin' | 'dryMin' | 'exactMin'>, wallMm = 6): Look => ({
  kind: 'look',
  id,
  of: 'touch',
  pot: potOf(beaker(wallMm)),
  events: [dip('a', 0, 3), dip('b', 10, 3)],
  air0: air(20, 0.5, 0.08),
  ...seen,
})

const second = (learned = UNLEARNED) => {
  const { pot, events, air0 } = look('', {})
  const { touchDry } = forecastPot(pot, events, air0, learned)
  return touchDry.likely - 10
}

describe('looks', () => {
  test('not yet, long after the likely time, says fuller and slower', () => {
    const lesson = learn([look('1', { dampMin: 10 + 3 * second() })])
    expect(lesson.fillMean).toBeGreaterThan(0.03)
    expect(lesson.timeMean).toBeGreaterThan(0.03)
    expect(lesson.count).toBe(1)
    expect(second(lesson)).toBeGreaterThan(second() * 1.3)
  })

  test('dry early says emptier and faster', () => {
    const lesson = learn([look('1', { dryMin: 10 + second() / 4 })])
    expect(lesson.fillMean).toBeLessThan(-0.03)
    expect(second(lesson)).toBeLessThan(second() * 0.8)
  })

  test('each adds and narrows', () => {
    const seen = { dampMin: 10 + 0.7 * second(), dryMin: 10 + 1.4 * second() }
    const [one, three] = [learn([look('1', seen)]), learn(['1', '2', '3'].map((id) => look(id, seen)))]
    expect(three.count).toBe(3)
    expect(one.fillSd).toBeLessThan(UNLEARNED.fillSd)
    expect(three.fillSd).toBeLessThan(one.fillSd)
    expect(three.timeSd).toBeLessThan(UNLEARNED.timeSd)
  })

  test('a full factor carries to other walls: damp on 6 mm lengthens 4 mm too', () => {
    const lesson = learn([look('1', { dampMin: 10 + 3 * second() })])
    const thin = (learned: typeof UNLEARNED) =>
      forecastPot(potOf(beaker(4)), [dip('a', 0, 3)], ROOM, learned).touchDry.likely
    expect(thin(lesson)).toBeGreaterThan(thin(UNLEARNED) * 1.2)
  })

  test('order does not matter, and one taken back is as if it had never been', () => {
    const [a, b] = [look('a', { dampMin: 60 }), look('b', { dryMin: 30 })]
    const both = learn([a, b])
    const turned = learn([b, a])
    expect(turned.fillMean).toBeCloseTo(both.fillMean, 12)
    expect(turned.timeSd).toBeCloseTo(both.timeSd, 12)
    expect(learn([a])).toEqual(learn([{ ...a }]))
    expect(learn([])).toEqual({ ...UNLEARNED, dropped: [] })
  })

  test('one bad answer does not rule', () => {
    const sane = Array.from({ length: 5 }, (_, k) =>
      look(`${k}`, { dampMin: 10 + 0.7 * second(), dryMin: 10 + 1.4 * second() }),
    )
    const spoilt = learn([...sane, look('odd', { dampMin: 10 + 40 * second() })])
    expect(Math.abs(spoilt.timeMean - learn(sane).timeMean)).toBeLessThan(0.15)
  })

  test('contradictions, looks before the dip and waits that never end are told, not used', () => {
    const never = { ...look('never', { dampMin: 100 }), of: 'kiln' as const, air0: air(20, 1) }
    const { dropped, count } = learn([
      look('both', { dampMin: 40, dryMin: 30 }),
      look('before', { dryMin: 5 }),
      look('nothing', {}),
      never,
    ])
    expect(dropped).toEqual([
      { id: 'both', why: 'contradiction' },
      { id: 'before', why: 'tooEarly' },
      { id: 'nothing', why: 'tooEarly' },
      { id: 'never', why: 'never' },
    ])
    expect(count).toBe(0)
  })

  test('a glaze starts from its room, wider, and goes its own way from there', () => {
    const room = learn(
      ['1', '2', '3'].map((id) => look(id, { dampMin: 10 + second(), dryMin: 10 + 2 * second() })),
    )
    const start = forGlaze(room)
    expect(start.timeMean).toBe(room.timeMean)
    expect(start.timeSd).toBeGreaterThan(room.timeSd)
    expect(start.timeSd).toBeLessThanOrEqual(UNLEARNED.timeSd)
    expect(forGlaze(UNLEARNED)).toEqual(UNLEARNED)
    const early = look('4', { dryMin: 10 + second() / 4 })
    const own = learn([early], start)
    expect(own.count).toBe(4)
    expect(own.timeMean).toBeLessThan(start.timeMean)
    expect(own.timeMean).toBeGreaterThan(learn([early]).timeMean)
  })
})

describe('weighing', () => {
  const weighing = (part: number, heightMm = 100): Weighing => {
    const pot = potOf(beaker(6, { heightMm, rimMm: 0.84 * heightMm }))
    const events = [dip('a', 0, 3)]
    const run = runPot(courseOf(pot, events, ROOM), 1)
    const gainG = (waterG(run) + dryGlazeG(run)) * part
    return { kind: 'weighing', id: 'w', pot, events, air0: ROOM, atMin: 0, gainG }
  }

  test('as computed changes nothing but the width', () => {
    const lesson = learn([weighing(1)])
    expect(Math.abs(lesson.fillMean)).toBeLessThan(0.02)
    expect(lesson.fillSd).toBeLessThan(0.6 * UNLEARNED.fillSd)
    expect(lesson.timeMean).toBeCloseTo(0, 6)
  })

  test('more than computed raises the fill by nearly as much', () => {
    const { fillMean } = learn([weighing(1.25)])
    expect(fillMean).toBeGreaterThan(0.6 * Math.log(1.25))
    expect(fillMean).toBeLessThan(1.2 * Math.log(1.25))
  })

  test('against what was known before, both count', () => {
    const { fillMean } = learn([weighing(1)], { ...UNLEARNED, fillMean: 0.3, fillSd: 0.1 })
    expect(fillMean).toBeGreaterThan(0.08)
    expect(fillMean).toBeLessThan(0.25)
  })

  test('however wrong, makes no wait surer than an honest one, and an impossible one teaches nothing', () => {
    const honest = learn([weighing(1)])
    for (const part of [0.05, 0.3, 0.5, 0.6, 0.7, 0.8, 1.2, 1.5, 2, 5])
      expect(learn([weighing(part)]).fillSd).toBeGreaterThanOrEqual(honest.fillSd)
    for (const part of [0.1, 5]) {
      expect(Math.abs(learn([weighing(part)]).fillMean)).toBeLessThan(0.02)
      expect(learn([weighing(part)]).fillSd).toBeGreaterThan(0.9 * UNLEARNED.fillSd)
    }
  })

  test('a pot so small that the scale hardly tells its glaze teaches less', () => {
    expect(learn([weighing(1.25, 40)]).fillMean).toBeLessThan(learn([weighing(1.25)]).fillMean)
  })
})

describe('touch this one next', () => {
  const waiting = (id: string, wallMm: number) => ({
    id,
    pot: potOf(beaker(wallMm)),
    events: [dip('a', 0, 3), dip('b', 10, 3)],
    air0: ROOM,
  })

  test('names one whose answer narrows others', () => {
    const next = touchNext([waiting('thin', 4), waiting('six', 6), waiting('thick', 10)], 40, UNLEARNED)!
    expect(['thin', 'six', 'thick']).toContain(next.id)
    expect(next.narrows.length).toBeGreaterThan(0)
    expect(next.narrows).not.toContain(next.id)
    expect(next.gain).toBeGreaterThan(0)
  })

  test('prefers a pot that may be either to one that is surely wet', () => {
    const sure = { ...waiting('sure', 3), events: [dip('a', 0, 5), dip('b', 39, 5)] }
    const next = touchNext([sure, waiting('either', 6), waiting('other', 6.5)], 45, UNLEARNED)!
    expect(next.id).not.toBe('sure')
  })

  test('names the pot that a grid of two hundred pairs of factors names, with nearly its gain', () => {
    const pots = [waiting('thin', 4), waiting('five', 5), waiting('six', 6.5), waiting('thick', 8)]
    const nowMin = 30
    const courses = pots.map(({ pot, events, air0 }) => courseOf(pot, events, air0))
    // Weights of the normal law on an even grid, sums of it being exact to many digits (trapezium rule).
    const grid = Array.from({ length: 15 }, (_, k) => (k - 7) * 0.5)
    const states = grid.flatMap((f) => {
      const logs = courses.map((course) =>
        Math.log(Math.max(1 / 60, waitsOf(runPot(course, Math.exp(f * UNLEARNED.fillSd)), 'touch').touchMin)),
      )
      return grid.map((t) => ({
        weight: normalPdf(f) * normalPdf(t),
        logs: logs.map((log) => log + t * UNLEARNED.timeSd),
      }))
    })
    const spread = (weights: readonly number[], j: number): { sum: number; variance: number } => {
      const sum = weights.reduce((a, w) => a + w, 0)
      const mean = weights.reduce((a, w, k) => a + w * states[k]!.logs[j]!, 0) / sum
      const variance = weights.reduce((a, w, k) => a + w * (states[k]!.logs[j]! - mean) ** 2, 0) / sum
      return { sum, variance }
    }
    const prior = states.map(({ weight }) => weight)
    const gains = pots.map((_, i) => {
      const dry = states.map((s) => s.weight * normalCdf((Math.log(nowMin - 10) - s.logs[i]!) / TOUCH_SD))
      const damp = states.map((s, k) => s.weight - dry[k]!)
      return pots.reduce((gain, _other, j) => {
        if (j === i) return gain
        const [all, ifDry, ifDamp] = [prior, dry, damp].map((weights) => spread(weights, j))
        const after = (ifDry!.sum * ifDry!.variance + ifDamp!.sum * ifDamp!.variance) / all!.sum
        return gain + all!.variance - after
      }, 0)
    })
    const best = Math.max(...gains)
    const next = touchNext(pots, nowMin, UNLEARNED)!
    // Where two are as good as each other either will do.
    expect(gains[pots.findIndex(({ id }) => id === next.id)]!).toBeGreaterThan(0.95 * best)
    expect(next.gain / best).toBeGreaterThan(0.85)
    expect(next.gain / best).toBeLessThan(1.15)
  })

  test('is nobody when no one waits for another', () => {
    expect(touchNext([], 40, UNLEARNED)).toBeUndefined()
    expect(touchNext([waiting('alone', 6)], 40, UNLEARNED)).toBeUndefined()
  })
})

describe('runs that outlive the page', () => {
  const notes = new Map<string, AtNodes>()
  const memory = { recall: (key: string) => notes.get(key), note: notes.set.bind(notes) }
  const seen = () => look('1', { dampMin: 10 + 3 * second() })
  afterEach(() => {
    notes.clear()
    rememberRuns(undefined)
  })

  test('teach the same as runs of this page, and are not repeated', () => {
    const computed = learn([seen()])
    rememberRuns(memory)
    expect(learn([seen()])).toEqual(computed)
    expect([...notes.values()].every(isAtNodes)).toBe(true)
    const told = JSON.parse(JSON.stringify([...notes]))
    notes.clear()
    for (const [key, at] of told) notes.set(key, at)
    expect(learn([seen()])).toEqual(computed)
    for (const [key, at] of notes) notes.set(key, Array.isArray(at) ? at.map((min) => min * 3) : at)
    expect(learn([seen()]).timeMean).toBeLessThan(computed.timeMean)
  })

  test('are of one observation: another wall, dip, air or look is run', () => {
    rememberRuns(memory)
    learn([seen()])
    const again = seen()
    const [a, b] = again.events as [Look['events'][number], Look['events'][number]]
    const others: Look[] = [
      { ...again, pot: potOf(beaker(5)) },
      { ...again, events: [a, { ...b, atMin: 11 }] },
      { ...again, air0: air(21, 0.5, 0.08) },
      { ...again, of: 'thirsty' },
      { ...again, dampMin: 12 },
    ]
    for (const other of others) learn([other])
    expect(notes.size).toBe(1 + others.length)
    learn([{ ...again, id: 'another name' }])
    expect(notes.size).toBe(1 + others.length)
  })

  test('what teaches nothing is kept as well, and nothing else is taken for a run', () => {
    rememberRuns(memory)
    const none = learn([look('1', { dampMin: 20, dryMin: 15 })])
    expect(none.dropped).toEqual([{ id: '1', why: 'contradiction' }])
    expect([...notes.values()]).toEqual(['contradiction'])
    expect(isAtNodes('contradiction')).toBe(true)
    const thirteen = Array.from({ length: 13 }, () => 4)
    expect(isAtNodes(thirteen)).toBe(true)
    const not = [
      'soon',
      null,
      7,
      [],
      thirteen.slice(1),
      [...thirteen.slice(1), 0],
      [...thirteen.slice(1), null],
    ]
    for (const value of not) expect(isAtNodes(value)).toBe(false)
  })
})
