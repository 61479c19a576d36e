import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { press, restingPress } from '../../../src/device/press.ts'
import type { PointerFact, PressTarget } from '../../../src/device/press-facts.ts'
import { AGAIN_MS, CARD_MS, HOLD_MS, LOCK_MS, REST_MS, TOGETHER_MS } from '../../../src/device/press-facts.ts'
import { BAR_HOLD_MS } from '../../../src/ui/bar.tsx'
import { BAR, downOf, ERASE, flatHand, knuckle, palm, run, SMALL, splash, upOf, wipe } from './traces.ts'

const RUNS = { numRuns: 2000 }
const STALE: PressTarget = { ...BAR, holdMs: BAR_HOLD_MS }

function tap(at: {
  downMs: number
  lastsMs?: number
  id?: number
  xPx?: number
  yPx?: number
  target?: PressTarget
}): [PointerFact, PointerFact] {
  const touch = {
    id: at.id ?? 1,
    downMs: at.downMs,
    upMs: at.downMs + (at.lastsMs ?? 80),
    xPx: at.xPx ?? 180,
    yPx: at.yPx ?? 500,
    sizePx: 30,
  }
  return [downOf(touch, at.target ?? BAR), upOf(touch, true)]
}

describe('press rules over generated traces', () => {
  it('counts every slow, wide, rolling knuckle on the bar once, stamped at touch-down', () => {
    fc.assert(
      fc.property(knuckle, (trace) => {
        const heard = run(trace)
        expect(heard.refusals).toEqual([])
        expect(heard.intents.map((i) => i.atMs)).toEqual([trace[0]!.atMs])
      }),
      RUNS,
    )
  })

  it('counts a run of knuckles, each on its own', () => {
    fc.assert(
      fc.property(fc.array(knuckle, { minLength: 2, maxLength: 8 }), (traces) => {
        const later = traces.map((trace, i) => trace.map((f) => ({ ...f, atMs: f.atMs + i * 10_000 })))
        expect(run(later.flat()).intents).toHaveLength(traces.length)
      }),
      { numRuns: 300 },
    )
  })

  it.each([
    ['splash', splash],
    ['palm', palm],
    ['flat hand', flatHand],
    ['wiping cloth', wipe],
  ])('lets no %s through, and says so aloud', (_name, traces) => {
    fc.assert(
      fc.property(traces, (trace) => {
        const heard = run(trace)
        expect(heard.intents).toEqual([])
        // A trace wholly off the bar meant nothing, unless it was a shower: that locks the glass audibly.
        const onBar = trace.some((f) => f.kind === 'down' && f.target !== null)
        if (onBar) expect(heard.refusals.some((r) => r.heard)).toBe(true)
      }),
      RUNS,
    )
  })

  it('counts a knuckle as soon as a splash is over', () => {
    fc.assert(
      fc.property(splash, knuckle, (water, trace) => {
        const later = trace.map((f) => ({ ...f, id: 99, atMs: f.atMs + 2000 + LOCK_MS }) as PointerFact)
        const heard = run([...water, ...later])
        expect(heard.intents).toHaveLength(1)
      }),
      RUNS,
    )
  })

  it('never fires twice within 400 ms nor without a contact of its own, whatever comes', () => {
    const any = fc.array(fc.oneof(knuckle, splash, palm, wipe), { maxLength: 5 })
    fc.assert(
      fc.property(any, fc.integer({ min: 0, max: 3000 }), (traces, gapMs) => {
        const mixed = traces
          .flatMap((trace, i) => trace.map((f) => ({ ...f, atMs: f.atMs + i * gapMs }) as PointerFact))
          .sort((a, b) => a.atMs - b.atMs)
        const { intents } = run(mixed)
        const downs = new Set(mixed.filter((f) => f.kind === 'down').map((f) => f.atMs))
        for (const [i, intent] of intents.entries()) {
          expect(downs.has(intent.atMs)).toBe(true)
          const before = intents[i - 1]
          if (before) expect(intent.atMs - (before.atMs + before.heldMs)).toBeGreaterThanOrEqual(AGAIN_MS)
        }
      }),
      RUNS,
    )
  })
})

describe('press rules one by one', () => {
  it('refuses a second contact elsewhere within 120 ms, on either side of the bar', () => {
    const soon = 1000 + TOGETHER_MS - 1
    const [down, up] = tap({ downMs: 1000, lastsMs: 500 })
    const [second, secondUp] = tap({ downMs: soon, lastsMs: 300, id: 2, xPx: 40, yPx: 40 })
    expect(run([down, second, secondUp, up]).refusals.map((r) => r.code)).toEqual(['elsewhere'])
    const [early, earlyUp] = tap({ downMs: 950, lastsMs: 800, id: 2, xPx: 40, yPx: 40 })
    const bare: PointerFact = { ...early, target: null } as PointerFact
    const heard = run([bare, down, up, earlyUp])
    expect(heard.intents).toEqual([])
    expect(heard.refusals.map((r) => r.code)).toEqual(['elsewhere'])
  })

  it('takes two nearby contacts for one knuckle', () => {
    const [down, up] = tap({ downMs: 1000, lastsMs: 300 })
    const [second, secondUp] = tap({ downMs: 1020, lastsMs: 200, id: 2, xPx: 240 })
    expect(run([down, second, secondUp, up]).intents).toHaveLength(1)
  })

  it('counts a press while a thumb has long rested at the edge', () => {
    const [thumb, thumbUp] = tap({ downMs: 0, lastsMs: 9000, id: 7, xPx: 5, yPx: 100 })
    const [down, up] = tap({ downMs: 1000 })
    expect(run([{ ...thumb, target: null } as PointerFact, down, up, thumbUp]).intents).toHaveLength(1)
  })

  it('treats a cancelled pointer as nothing and says so', () => {
    const [down] = tap({ downMs: 1000 })
    const heard = run([down, { kind: 'cancel', id: 1, atMs: 1100 }, ...tap({ downMs: 2000, id: 2 })])
    expect(heard.refusals).toEqual([{ code: 'cancelled', atMs: 1100, heard: true }])
    expect(heard.intents.map((i) => i.atMs)).toEqual([2000])
  })

  it('passes over a bounce in silence: 400 ms from the last hit', () => {
    const first = tap({ downMs: 1000, lastsMs: 100 })
    const bounce = run([...first, ...tap({ downMs: 1100 + AGAIN_MS - 1, id: 2 })])
    expect(bounce.intents).toHaveLength(1)
    expect(bounce.refusals).toEqual([expect.objectContaining({ code: 'again', heard: false })])
    expect(run([...first, ...tap({ downMs: 1100 + AGAIN_MS, id: 2 })]).intents).toHaveLength(2)
  })

  it('passes over a hit meant for the card that has just gone', () => {
    const card: PointerFact = { kind: 'card', atMs: 1000 }
    expect(run([card, ...tap({ downMs: 1000 + CARD_MS - 1 })]).refusals[0]?.code).toBe('card')
    expect(run([card, ...tap({ downMs: 1000 + CARD_MS })]).intents).toHaveLength(1)
    const [down, up] = tap({ downMs: 900, lastsMs: 400 })
    expect(run([down, card, up]).intents).toEqual([])
  })

  it('fires what erases when held 700 ms, once, and never before', () => {
    const [down, up] = tap({ downMs: 1000, lastsMs: HOLD_MS + 500, target: ERASE })
    const early: PointerFact = { kind: 'time', atMs: 1000 + HOLD_MS - 1 }
    const due: PointerFact = { kind: 'time', atMs: 1000 + HOLD_MS }
    const again: PointerFact = { kind: 'time', atMs: 1000 + HOLD_MS + 200 }
    const heard = run([down, early, due, again, up])
    expect(heard.intents).toEqual([{ target: ERASE, atMs: 1000, heldMs: HOLD_MS, by: 'hold' }])
    const letGo = run(tap({ downMs: 1000, lastsMs: HOLD_MS - 1, target: ERASE }))
    expect(letGo.intents).toEqual([])
    expect(letGo.refusals).toEqual([expect.objectContaining({ code: 'short', heard: false })])
  })

  it('is full exactly when its time is up, whatever fraction of a millisecond it began at', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e8, noNaN: true }), (downMs) => {
        const [down] = tap({ downMs, target: ERASE })
        expect(run([down, { kind: 'time', atMs: downMs + HOLD_MS }]).intents).toHaveLength(1)
      }),
      RUNS,
    )
  })

  it('gives a bar with a hold both meanings, told apart when the finger leaves', () => {
    const [down, up] = tap({ downMs: 1000, lastsMs: BAR_HOLD_MS, target: STALE })
    const tick: PointerFact = { kind: 'time', atMs: 1000 + BAR_HOLD_MS }
    expect(run([down, tick]).intents).toEqual([])
    expect(run([down, tick, up]).intents).toEqual([
      { target: STALE, atMs: 1000 + BAR_HOLD_MS, heldMs: BAR_HOLD_MS, by: 'hold' },
    ])
    const press = run(tap({ downMs: 1000, lastsMs: BAR_HOLD_MS - 1, target: STALE }))
    expect(press.intents.map((i) => [i.by, i.atMs])).toEqual([['press', 1000]])
    const rests = run(tap({ downMs: 1000, lastsMs: REST_MS + 1, target: STALE }))
    expect(rests.refusals.map((r) => r.code)).toEqual(['rested'])
  })

  it('takes no knuckle under two seconds for a hold, however slow and wide it is', () => {
    const onStale = (fact: PointerFact): PointerFact =>
      fact.kind === 'down' && fact.target ? { ...fact, target: STALE } : fact
    fc.assert(
      fc.property(knuckle, (trace) => {
        const lastsMs = trace.at(-1)!.atMs - trace[0]!.atMs
        const during = { kind: 'time', atMs: trace[0]!.atMs + BAR_HOLD_MS } as const
        const facts = lastsMs > BAR_HOLD_MS ? [...trace.slice(0, -1), during, trace.at(-1)!] : trace
        expect(run(facts.map(onStale)).intents.map((i) => i.by)).toEqual([
          lastsMs < BAR_HOLD_MS ? 'press' : 'hold',
        ])
      }),
      RUNS,
    )
  })

  it('lets a small target go when the finger slides 12 mm, and the bar only when it is left', () => {
    const slide = (target: PressTarget, over: boolean): PointerFact[] => {
      const [down, up] = tap({ downMs: 1000, target })
      return [down, { ...up, xPx: 260, over } as PointerFact]
    }
    expect(run(slide(SMALL, true)).refusals[0]).toMatchObject({ code: 'slid', heard: false })
    expect(run(slide(BAR, false)).refusals[0]?.code).toBe('slid')
    expect(run(slide(BAR, true)).intents).toHaveLength(1)
  })

  it('refuses what rests on the glass', () => {
    expect(run(tap({ downMs: 0, lastsMs: REST_MS + 1 })).refusals[0]?.code).toBe('rested')
  })

  it('locks the glass for two seconds after a splash', () => {
    const drops = [0, 20, 40, 60].flatMap((ms, i) => tap({ downMs: 1000 + ms, id: i + 1, xPx: 40 + 80 * i }))
    const facts = drops.sort((a, b) => a.atMs - b.atMs)
    const splashed = facts.reduce((state, fact) => press(state, fact).state, restingPress)
    expect(run(tap({ downMs: 1060 + LOCK_MS - 1, id: 9 }), splashed).refusals[0]?.code).toBe('locked')
    expect(run(tap({ downMs: 1060 + LOCK_MS, id: 9 }), splashed).intents).toHaveLength(1)
  })

  it('forgets a contact whose end never came', () => {
    const [lost] = tap({ downMs: 0, id: 5, yPx: 20 })
    const [other] = tap({ downMs: 10, id: 6, yPx: 25 })
    const late = tap({ downMs: 40_000, id: 7 })
    expect(run([lost, other, ...late]).intents).toHaveLength(1)
  })
})

describe('the figures of the press rules, from one side to the other', () => {
  const at = (downMs: number, id: number, xPx = 180) => tap({ downMs, id, xPx })
  const wide = (sizePx: number): PointerFact[] =>
    tap({ downMs: 1000 }).map((fact) => ({ ...fact, widthPx: sizePx }) as PointerFact)
  const beside = (afterMs: number): PointerFact[] => {
    const [down, up] = tap({ downMs: 1000, lastsMs: 500 })
    return [down, ...at(1000 + afterMs, 2, 40), up]
  }
  const three = (apartPx: number, overMs: number): PointerFact[] =>
    [at(1000, 1), at(1000 + overMs / 2, 2), at(1000 + overMs, 3, 180 + apartPx)].flat()
  const taps = (...downsMs: number[]): PointerFact[] => downsMs.flatMap((ms, i) => at(1000 + ms, i + 1))
  // Four taps in a second, and one that much after the last of them.
  const oneAfter = (ms: number): PointerFact[] => [...taps(0, 200, 400, 600), ...at(1600 + ms, 9)]

  it.each([
    ['two contacts 120 ms apart', beside(119), beside(120), 'elsewhere'],
    ['a palm 45 mm wide', wide(265), wide(264), 'palm'],
    [
      'a rest of four seconds',
      tap({ downMs: 0, lastsMs: 4001 }),
      tap({ downMs: 0, lastsMs: 4000 }),
      'rested',
    ],
    ['four contacts in a second', taps(0, 300, 600, 999), taps(0, 300, 600, 1000), 'splash'],
    ['three contacts 30 mm apart', three(177, 500), three(176, 500), 'splash'],
    ['three contacts in 600 ms', three(177, 598), three(177, 600), 'splash'],
    ['a glass locked for two seconds', oneAfter(1999), oneAfter(2000), 'locked'],
  ])('%s', (_what, refused, counted, code) => {
    expect(run(refused).refusals.map((r) => r.code)).toContain(code)
    expect(run(counted).refusals.map((r) => r.code)).not.toContain(code)
    expect(run(counted).intents.length).toBeGreaterThan(0)
  })
})
