import { describe, expect, it } from 'vitest'
import { board, bucket, exampleTwo, MIN, pot } from './boards.ts'
import { plan } from './plan.ts'
import { faults } from './verify.ts'

describe('a deadline', () => {
  it('counts pots that need no more coats but are not dry yet', () => {
    const input = { ...exampleTwo(), deadline: { loadStartS: 3600, doneDryAtS: 4000 } }
    const found = plan(input)
    expect(faults(input, found)).toEqual([])
    expect(found).toMatchObject({ latenessS: 400, slackS: -400, dryAtS: 4000 })
  })
})

describe('holding on purpose', () => {
  it('keeps a ready pot back where that saves a stir and costs nothing', () => {
    // A is ready at once, B at 20 min: stirring late serves both with one stir.
    const input = board([bucket('X')], [pot('A', ['X'], []), pot('B', ['X'], [], { readyAtS: 20 * MIN })])
    const found = plan(input)
    expect(found).toMatchObject({ finishS: 21 * MIN, openings: 1, restirs: 0, proven: true })
    const held = found.actions.find((action) => action.kind === 'dip' && action.potId === 'A')
    expect(held).toMatchObject({ reason: 'heldSavesStir' })
  })
})
