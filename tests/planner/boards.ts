import type { Bucket, Coat, Hands, PlanInput, Pot } from '../../src/planner/index.ts'

/** Short words for boards in tests; minutes where the worked examples speak of minutes. */
export const MIN = 60

export const bucket = (id: string, openMin = 3, restirMin = 1, freshMin = 5, decantMin = 1): Bucket => ({
  id,
  openS: openMin * MIN,
  restirS: restirMin * MIN,
  freshS: freshMin * MIN,
  decantS: decantMin * MIN,
})

/** In the worked examples the wait runs from the end of the one-minute dip step: OUT is its end. */
export const coat = (bucketId: string, waitMin: number, collar = false): Coat => ({
  bucketId,
  dipS: MIN,
  outAtS: MIN,
  waitAfterS: waitMin * MIN,
  collar,
})

/** `stack`: bucket ids, `waits[k]`: minutes after coat k. */
export const pot = (
  id: string,
  stack: readonly string[],
  waits: readonly number[],
  more: Partial<Pot> = {},
): Pot => ({
  id,
  prep: [],
  coats: stack.map((bucketId, k) => coat(bucketId, waits[k] ?? 0)),
  readyAtS: 0,
  kilnDryS: 0,
  ...more,
})

export const board = (
  buckets: readonly Bucket[],
  pots: readonly Pot[],
  more: Partial<PlanInput> = {},
): PlanInput => ({
  nowS: 0,
  hands: [{ freeAtS: more.nowS ?? 0, open: null }],
  buckets,
  pots,
  deadline: null,
  seed: 1,
  ...more,
})

export const twoHands = (nowS = 0): readonly [Hands, Hands] => [
  { freeAtS: nowS, open: null },
  { freeAtS: nowS, open: null },
]

/** Example 1: one pot, overlap. 40 min. */
export const exampleOne = (): PlanInput =>
  board(
    [bucket('X'), bucket('Y'), bucket('Z')],
    [
      {
        id: 'P1',
        prep: [
          { kind: 'wax', activeS: MIN, waitAfterS: 5 * MIN },
          { kind: 'wipe', activeS: MIN, waitAfterS: 0 },
        ],
        coats: [coat('X', 12), coat('Y', 18), coat('Z', 0, true)],
        readyAtS: 0,
        kilnDryS: 0,
      },
    ],
  )

/** Example 2: three alike pots. 19 min, 2 openings. */
export const exampleTwo = (): PlanInput =>
  board(
    [bucket('X'), bucket('Y')],
    ['P1', 'P2', 'P3'].map((id) => pot(id, ['X', 'Y'], [12])),
  )

/** Example 3: crossed stacks. 23 min, 3 openings, 1 re-stir. */
export const exampleThree = (): PlanInput =>
  board(
    [bucket('X'), bucket('Y')],
    [
      pot('P1', ['X', 'Y'], [12]),
      pot('P2', ['X', 'Y'], [12]),
      pot('P3', ['Y', 'X'], [12]),
      pot('P4', ['Y', 'X'], [12]),
    ],
  )

/** Example 4: twelve pots, four stacks, four buckets. 47 min, 4 openings, 3 re-stirs. */
export const exampleFour = (): PlanInput =>
  board(
    ['G', 'B', 'L', 'H'].map((id) => bucket(id)),
    [
      ['G', 'B', 'H'],
      ['G', 'H'],
      ['B', 'L'],
      ['G', 'L', 'H'],
    ].flatMap((stack, s) => [1, 2, 3].map((k) => pot(`S${s + 1}-${k}`, stack, [12, 18]))),
  )

/** Example 5: start 10:30 in seconds of the day, loading 16:30, `workMin` of work in one chain, `dryMin` to kiln-dry. */
export const exampleFive = (workMin: number, dryMin: number): PlanInput => {
  const start = (10 * 60 + 30) * MIN
  // Two coats, each opened anew: 3 + 1 + wait + 1 (the second opening falls into the wait).
  return board(
    [bucket('X'), bucket('Y')],
    [pot('P1', ['X', 'Y'], [workMin - 5], { readyAtS: start, kilnDryS: dryMin * MIN })],
    {
      nowS: start,
      deadline: { loadStartS: (16 * 60 + 30) * MIN },
    },
  )
}
