import { describe, expect, test } from 'vitest'
import { historyOf } from '../../../src/table/forecast/pot-history.ts'
import { bodyOf } from '../../../src/table/forecast/wall-inputs.ts'
import { stepOf } from '../../../src/table/steps/steps.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const pot = (play: Play, number: number) => play.table.pots[`demo.${number}`]!
const absorption = (play: Play, number: number) => bodyOf(play.table, pot(play, number).facts).absorption

describe('the bisque of the board', () => {
  test('comes wet for every bare pot but those of their own, and dries before wax', () => {
    const play = evening().act({ do: 'logged', potId: 'demo.33', agoMin: 5 })
    play.act({ do: 'set-pot', pot: { ...pot(play, 34).facts, bisqueWater: 'dry' } })
    play.act({ do: 'set-board', board: { ...play.table.board, bisqueWater: 'washed' } })
    const steps = [31, 33, 34].map((number) => stepOf(play.table, pot(play, number), play.nowMs).is)
    expect(steps[0]).toBe('damp-dries')
    expect(steps[2]).toBe('wax')
    expect(pot(play, 33).damp).toBeUndefined()
    expect(historyOf(play.table, pot(play, 31)).pot.startWater).toBe(1)
    const { shape, stackId } = pot(play, 31).facts
    play.act({ do: 'set-pot', pot: { shape, stackId } })
    expect(Object.values(play.table.pots).at(-1)?.damp?.water).toBe('washed')
    play.act({ do: 'set-board', board: { ...play.table.board, bisqueWater: 'dry' } })
    expect(stepOf(play.table, pot(play, 31), play.nowMs).is).toBe('wax')
  })

  test('damp holds less than washed, and the moment it was said stands', () => {
    const play = evening()
    const { facts } = pot(play, 36)
    play.act({ do: 'set-pot', pot: { ...facts, bisqueWater: 'damp' } })
    const since = pot(play, 36).damp!.at
    expect(historyOf(play.table, pot(play, 36)).pot.startWater).toBe(0.5)
    play.wait(600).act({ do: 'set-pot', pot: { ...facts, bisqueWater: 'damp', number: 60 } })
    expect(pot(play, 36).damp!.at).toBe(since)
  })
})

describe('a bisque cone of its own', () => {
  test('sets what the pot drinks, on the board’s own clay, and gives it back', () => {
    const play = evening()
    const { facts } = pot(play, 31)
    play.act({ do: 'set-pot', pot: { ...facts, bisqueCone: '1' } })
    expect(absorption(play, 31)).toBeCloseTo(0.07, 3)
    expect(absorption(play, 32)).toBe(play.table.board.absorption)
    play.act({ do: 'set-pot', pot: { ...pot(play, 31).facts, bisqueCone: '06' } })
    expect(absorption(play, 31)).toBeCloseTo(0.13, 3)
    play.act({ do: 'set-pot', pot: { ...pot(play, 31).facts, bisqueCone: '06', absorption: 0.1 } })
    play.act({ do: 'set-pot', pot: { ...pot(play, 31).facts, bisqueCone: '1' } })
    expect(absorption(play, 31)).toBe(0.1)
    const { bisqueCone: _cone, absorption: _own, ...asBoard } = pot(play, 31).facts
    play.act({ do: 'set-pot', pot: asBoard })
    expect(absorption(play, 31)).toBe(play.table.board.absorption)
  })

  test('scales what was measured on the board’s clay', () => {
    const play = evening().act({ do: 'set-board', board: { ...evening().table.board, absorption: 0.18 } })
    play.act({ do: 'set-pot', pot: { ...pot(play, 31).facts, bisqueCone: '1' } })
    expect(absorption(play, 31)).toBeCloseTo((0.18 * 0.07) / 0.12, 3)
  })
})
