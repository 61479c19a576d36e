import type { Bucket, Coat, PlanInput, Pot } from '../../src/planner/index.ts'

/** Seeded numbers in [0, 1): mulberry32 (T. Ettinger, public domain). */
export function chance(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

export interface Wish {
  readonly pots: readonly [number, number]
  readonly coats: readonly [number, number]
  /** All times in multiples of this, so that a time-expanded search can be exhaustive. */
  readonly gridS: number
  readonly prep?: boolean
  readonly midway?: boolean
}

/** No wait is longer: 90 min. */
const LONGEST_WAIT_S = 90 * 60

/**
 * A seeded board: 2 to 6 buckets, waits of 2 to 90 min that belong to the pot, a few stacks shared by several
 * pots, at least half of the boards with a crossed pair of stacks, a third with a deadline that can't be met.
 */
export function generate(seed: number, wish: Wish): PlanInput {
  const next = chance(seed * 2654435761)
  const int = (low: number, high: number) => low + Math.floor(next() * (high - low + 1))
  const grid = (lowMin: number, highMin: number) =>
    Math.round((lowMin * 60 + next() * (highMin - lowMin) * 60) / wish.gridS) * wish.gridS
  const potCount = int(...wish.pots)
  const bucketCount = int(2, 6)
  const sameSetUp = next() < 0.5
  const buckets: Bucket[] = Array.from({ length: bucketCount }, (_, b) => ({
    id: `B${b}`,
    openS: sameSetUp ? 180 : grid(2, 5),
    restirS: sameSetUp ? 60 : grid(0.5, 2),
    freshS: sameSetUp ? 300 : grid(3, 8),
    decantS: 60,
  }))
  const dipS = Math.max(wish.gridS, next() < 0.7 ? 60 : grid(0.5, 1.5))
  const crossed = seed % 2 === 0
  const stackCount = Math.max(crossed ? 2 : 1, Math.min(int(2, 6), potCount))
  const stacks = Array.from({ length: stackCount }, () => {
    const length = int(...wish.coats)
    const stack: number[] = []
    while (stack.length < length) {
      const b = int(0, bucketCount - 1)
      if (stack.at(-1) !== b || next() < 0.1) stack.push(b)
    }
    return crossed ? stack : stack.sort((x, y) => x - y)
  })
  if (crossed) {
    const long = stacks.find((stack) => stack.length > 1) ?? [0, 1]
    if (long[0] === long[1]) long[1] = (long[0]! + 1) % bucketCount
    stacks[0] = long
    stacks[1] = [...long].reverse()
  }
  const pace = next() < 0.5 ? [2, 25] : [2, 90]
  const shared = grid(pace[0]!, pace[1]!)
  const pots: Pot[] = Array.from({ length: potCount }, (_, p) => {
    const stack = stacks[p % stackCount]!
    const waitAfterS = next() < 0.3 ? shared : grid(pace[0]!, pace[1]!)
    const done = wish.midway && next() < 0.4
    const coats: Coat[] = stack.map((b, k) => ({
      bucketId: `B${b}`,
      dipS,
      outAtS: dipS,
      waitAfterS: Math.min(LONGEST_WAIT_S, waitAfterS + k * grid(0, 5)),
      collar: b === bucketCount - 1 && bucketCount > 2 && sameSetUp,
    }))
    const prep =
      wish.prep && !done
        ? [
            { kind: 'wax' as const, activeS: 60, waitAfterS: grid(1, 6) },
            { kind: 'wipe' as const, activeS: 60, waitAfterS: grid(0, 2) },
          ]
        : []
    return { id: `${p + 1}`, prep, coats, readyAtS: done ? grid(0, 20) : 0, kilnDryS: grid(60, 240) }
  })
  const free: PlanInput = {
    nowS: 0,
    hands: [
      {
        freeAtS: 0,
        open: wish.midway && next() < 0.6 ? { bucketId: 'B0', stirEndS: -grid(0, 6), decanted: false } : null,
      },
    ],
    buckets,
    pots,
    deadline: null,
    seed: 1,
  }
  if (seed % 3 !== 0) return free
  // Sooner than the longest chain alone allows.
  const chain = (pot: Pot) =>
    pot.readyAtS +
    pot.coats.reduce(
      (sum, coat, k) => sum + coat.dipS + (k < pot.coats.length - 1 ? coat.waitAfterS : 0),
      0,
    ) +
    pot.kilnDryS
  return { ...free, deadline: { loadStartS: Math.max(...pots.map(chain)) - grid(0, 10) } }
}
