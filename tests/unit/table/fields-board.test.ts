import { expect, test } from 'vitest'
import { boardView } from '../../../src/table/card/board-view.ts'
import { Play } from './play.ts'

const viewOf = (play: Play) => boardView(play.table, play.card, play.nowMs - play.table.skewMs)
const tileOf = (play: Play, number: number) => viewOf(play).tiles.find((tile) => tile.number === number)!

test('an empty table has no tiles', () => {
  expect(viewOf(new Play())).toEqual({ tiles: [], waiting: 0, ready: 0 })
})

test('pots stand in the order of their places', () => {
  const { tiles } = viewOf(new Play().act({ do: 'lay-demo' }))
  expect(tiles.map(({ number }) => number)).toEqual([31, 32, 33, 34, 35, 36, 37, 38])
  expect(tiles[4]!.bands).toHaveLength(4)
})

test('a tile follows its pot from wax to READY', () => {
  const play = new Play().act({ do: 'lay-demo' })
  expect(tileOf(play, 33).state.is).toBe('wax')
  play.act({ do: 'waxed', potId: 'demo.33' })
  expect(tileOf(play, 33).state.is).toBe('wait')
  play.wait(600).act({ do: 'wiped', potId: 'demo.33' }).wait(120)
  expect(tileOf(play, 33).state.is).toBe('dip')
  play.act({ do: 'pick', potId: 'demo.33' }).act({ do: 'stirred', bucketId: 'demo.gatepost' })
  expect(tileOf(play, 33).state.is).toBe('next')
  play.act({ do: 'start', potId: 'demo.33', again: false, unstirred: false }).wait(2)
  expect(tileOf(play, 33)).toMatchObject({ state: { is: 'count' } })
  play.wait(30).act({ do: 'sponged', potId: 'demo.33' })
  expect(tileOf(play, 33)).toMatchObject({
    state: { is: 'wait' },
    bands: [{ on: true }, { on: false }, { on: false }],
  })
  expect(viewOf(play)).toMatchObject({ waiting: 1, ready: 0 })
  play.wait(3600)
  expect(tileOf(play, 33).state.is).toBe('ready')
  expect(viewOf(play)).toMatchObject({ waiting: 0, ready: 1 })
})
