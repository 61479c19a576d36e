import { describe, expect, it } from 'vitest'
import {
  board,
  bucket,
  exampleFour,
  exampleOne,
  exampleThree,
  exampleTwo,
  MIN,
  pot,
  twoHands,
} from './boards.ts'
import { dispatch } from './plain.ts'
import { plan } from './plan.ts'
import { faults } from './verify.ts'

const lines = (told: ReturnType<typeof dispatch>) =>
  told.actions.map(
    (a) => `${a.kind} ${'potId' in a ? a.potId : a.bucketId} ${a.startS / MIN}-${a.endS / MIN}`,
  )

describe('dispatch by rule', () => {
  it('keeps every rule on the worked examples', () => {
    for (const input of [exampleOne(), exampleTwo(), exampleThree(), exampleFour()])
      expect(faults(input, dispatch(input))).toEqual([])
  })

  it('overlaps stirring and waiting as example 1 does', () => {
    expect(lines(dispatch(exampleOne()))).toEqual([
      'wax P1 0-1',
      'open X 3-6',
      'wipe P1 6-7',
      'dip P1 7-8',
      'open Y 17-20',
      'dip P1 20-21',
      'open Z 35-39',
      'dip P1 39-40',
    ])
  })

  it('takes up a sitting in the middle: open bucket, age of its stir, pots that still dry', () => {
    const input = board(
      [bucket('G'), bucket('B')],
      [pot('31', ['G', 'B'], [12], { readyAtS: 1000 }), pot('32', ['B'], [], { readyAtS: 1600 })],
      { nowS: 1000, hands: [{ freeAtS: 1010, open: { bucketId: 'G', stirEndS: 760, decanted: false } }] },
    )
    const told = dispatch(input)
    expect(faults(input, told)).toEqual([])
    // Stir 250 s old when hands are free: still fresh, no re-stir.
    expect(told.actions[0]).toMatchObject({ kind: 'dip', potId: '31', startS: 1010, reason: 'bucketOpen' })
  })

  it('gives two people two pairs of hands and one count at a time', () => {
    const input = { ...exampleFour(), hands: twoHands() }
    const told = dispatch(input)
    expect(faults(input, told)).toEqual([])
    expect(new Set(told.actions.map((action) => action.potter)).size).toBe(2)
    expect(told.finishS).toBeLessThan(dispatch(exampleFour()).finishS)
  })

  it('answers an empty table with an empty plan', () => {
    const told = dispatch(board([], [], { nowS: 77 }))
    expect(told).toMatchObject({
      actions: [],
      finishS: 77,
      dryAtS: null,
      latenessS: 0,
      slackS: null,
      proven: true,
    })
  })

  it('refuses bad input by name, value and range', () => {
    expect(() => dispatch(board([bucket('G')], [pot('31', ['X'], [])]))).toThrow(
      /pots\[31\].coats.bucketId is X, allowed are G/,
    )
    expect(() => dispatch(board([bucket('G')], [pot('31', ['G'], [], { kilnDryS: -1 })]))).toThrow(
      /pots\[31\].kilnDryS is -1, allowed are whole seconds from 0/,
    )
    expect(() => dispatch(board([bucket('G')], [pot('31', ['G'], [], { readyAtS: Number.NaN })]))).toThrow(
      RangeError,
    )
    expect(() => dispatch(board([bucket('G')], [pot('31', ['G'], []), pot('31', ['G'], [])]))).toThrow(
      /id twice/,
    )
    expect(() => dispatch(board([bucket('G')], [pot('31', [], [])]))).toThrow(/coats.length is 0/)
    for (const work of [Number.NaN, Number.POSITIVE_INFINITY, -1, 0.5])
      expect(() => plan(exampleTwo(), work)).toThrow(`work is ${work}, allowed are whole numbers`)
  })
})
