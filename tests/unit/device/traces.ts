/** Generated touches: knuckles, palms, splashes and wiping hands, as facts for the press rules. */
import fc from 'fast-check'
import { press, restingPress } from '../../../src/device/press.ts'
import type { Intent, PointerFact, PressTarget, TouchRefusal } from '../../../src/device/press-facts.ts'

export const BAR: PressTarget = { kind: 'bar' }
export const SMALL: PressTarget = { kind: 'small' }
export const ERASE: PressTarget = { kind: 'hold' }

/** 360 x 640 screen, the bar its lower 250 px. */
export const BAR_TOP_PX = 390
const targetAt = (yPx: number): PressTarget | null => (yPx >= BAR_TOP_PX ? BAR : null)

export interface Heard {
  readonly intents: Intent[]
  readonly refusals: TouchRefusal[]
}

export function run(facts: readonly PointerFact[], from = restingPress): Heard {
  const heard: Heard = { intents: [], refusals: [] }
  let state = from
  for (const fact of facts) {
    const step = press(state, fact)
    state = step.state
    if (step.intent) heard.intents.push(step.intent)
    if (step.refusal) heard.refusals.push(step.refusal)
  }
  return heard
}

interface Touch {
  readonly id: number
  readonly downMs: number
  readonly upMs: number
  readonly xPx: number
  readonly yPx: number
  readonly sizePx: number
}

const place = (t: Touch) => ({ id: t.id, xPx: t.xPx, yPx: t.yPx, widthPx: t.sizePx, heightPx: t.sizePx })

export const downOf = (t: Touch, target = targetAt(t.yPx)): PointerFact => ({
  kind: 'down',
  ...place(t),
  atMs: t.downMs,
  target,
})
export const upOf = (t: Touch, over = t.yPx >= BAR_TOP_PX): PointerFact => ({
  kind: 'up',
  ...place(t),
  atMs: t.upMs,
  over,
})

const inTime = (facts: readonly PointerFact[]): PointerFact[] => [...facts].sort((a, b) => a.atMs - b.atMs)
const int = (min: number, max: number) => fc.integer({ min, max })

/** A knuckle: 30 ms to 3 s, 3 to 200 px wide, rolling about anywhere on the bar. */
export const knuckle = fc
  .record({
    downMs: int(1000, 5000),
    lastsMs: int(30, 3000),
    xPx: int(20, 340),
    yPx: int(400, 620),
    sizePx: int(3, 200),
    rolls: fc.array(
      fc.record({ part: fc.double({ min: 0, max: 1, noNaN: true }), dx: int(-60, 60), dy: int(0, 60) }),
      {
        maxLength: 6,
      },
    ),
  })
  .map((k): PointerFact[] => {
    const touch: Touch = {
      id: 1,
      downMs: k.downMs,
      upMs: k.downMs + k.lastsMs,
      xPx: k.xPx,
      yPx: k.yPx,
      sizePx: k.sizePx,
    }
    const rolls = k.rolls.map((r): PointerFact => {
      const at = { ...touch, xPx: k.xPx + r.dx, yPx: Math.min(639, k.yPx + r.dy) }
      return { kind: 'move', ...place(at), atMs: k.downMs + r.part * k.lastsMs, over: true }
    })
    return [downOf(touch), ...inTime(rolls), upOf(touch)]
  })

const touches = (count: { min: number; max: number }, withinMs: number, size: fc.Arbitrary<number>) =>
  fc.array(
    fc.record({
      afterMs: int(0, withinMs),
      lastsMs: int(200, 900),
      xPx: int(10, 350),
      yPx: int(10, 630),
      sizePx: size,
    }),
    { minLength: count.min, maxLength: count.max },
  )

const facts = (
  list: readonly { afterMs: number; lastsMs: number; xPx: number; yPx: number; sizePx: number }[],
): PointerFact[] =>
  inTime(
    list.flatMap((t, i) => {
      const touch = { ...t, id: i + 1, downMs: 1000 + t.afterMs, upMs: 1000 + t.afterMs + t.lastsMs }
      return [downOf(touch), upOf(touch)]
    }),
  )

/** Four and more drops within 150 ms, anywhere; some stick for a while. */
export const splash = touches({ min: 4, max: 9 }, 150, int(2, 40)).map(facts)

/** Three to five pads of one hand landing within 100 ms and lying there. */
export const palm = touches({ min: 3, max: 5 }, 100, int(30, 120)).map(facts)

/** The flat of a hand as one contact, wider than any knuckle. */
export const flatHand = fc
  .tuple(knuckle, int(270, 360))
  .map(([trace, sizePx]) =>
    trace.map((fact) =>
      fact.kind === 'down' || fact.kind === 'up' || fact.kind === 'move'
        ? { ...fact, widthPx: sizePx, heightPx: sizePx }
        : fact,
    ),
  )

/** A cloth or sleeve: short contacts one after another along a line, each under 600 ms after the one before last. */
export const wipe = fc
  .record({ stepMs: int(60, 250), stepPx: int(95, 150), yPx: int(400, 620), count: int(3, 8) })
  .map((w) =>
    Array.from({ length: w.count }, (_, i): Touch => {
      const downMs = 1000 + i * w.stepMs
      const xPx = 10 + ((i * w.stepPx) % 340)
      return { id: i + 1, downMs, upMs: downMs + 700, xPx, yPx: w.yPx, sizePx: 20 }
    }),
  )
  .map((list) => inTime(list.flatMap((t) => [downOf(t), upOf(t)])))
