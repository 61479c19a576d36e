import { describe, expect, it } from 'vitest'
import type { Plan } from '../../src/planner/index.ts'
import { board, bucket, exampleFour, MIN, pot } from './boards.ts'
import { plan } from './plan.ts'
import { faults } from './verify.ts'

/** Pots in the order of their first dips. */
const firstDips = ({ actions }: Plan): readonly string[] => [
  ...new Set(actions.flatMap((action) => (action.kind === 'dip' ? [action.potId] : []))),
]

describe('pots that nothing tells apart', () => {
  it('go in the order they are listed in, whatever the search drew', () => {
    for (const seed of [1, 2, 3, 4]) {
      const input = { ...exampleFour(), seed }
      const found = plan(input)
      expect(faults(input, found)).toEqual([])
      for (const stack of [1, 2, 3, 4]) {
        const alike = firstDips(found).filter((id) => id.startsWith(`S${stack}`))
        expect(alike).toEqual([1, 2, 3].map((k) => `S${stack}-${k}`))
      }
    }
  })

  it('wait for the one that is ready later', () => {
    const input = board(
      [bucket('X'), bucket('Y')],
      [
        pot('A', ['X', 'Y'], [12], { readyAtS: 10 * MIN }),
        pot('B', ['X', 'Y'], [12]),
        pot('C', ['X', 'Y'], [12]),
      ],
    )
    const found = plan(input)
    expect(faults(input, found)).toEqual([])
    expect(firstDips(found).slice(0, 2)).toEqual(['B', 'C'])
  })

  it('go taller first where they differ in that', () => {
    const input = board(
      [bucket('X')],
      [pot('A', ['X'], [], { heightMm: 90 }), pot('B', ['X'], [], { heightMm: 240 })],
    )
    expect(firstDips(plan(input))).toEqual(['B', 'A'])
  })
})
