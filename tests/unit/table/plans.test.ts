import { describe, expect, test } from 'vitest'
import { cardOf } from '../../../src/table/card/card-now.ts'
import { outputsOf } from '../../../src/table/card/outputs.ts'
import { coatsOn, nextCoat, planOf, strayed } from '../../../src/table/model/plan.ts'
import { stepOf } from '../../../src/table/steps/steps.ts'
import { panAsk } from '../../../src/table/steps/wax-pan.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const pot = (play: Play, number: number) => play.table.pots[`demo.${number}`]!
const buckets = (play: Play, number: number) => planOf(play.table, pot(play, number)).map((c) => c.bucketId)
const heather = { bucketId: 'demo.heather', cover: { kind: 'full' }, holdS: 2 } as const
const brackwater = { ...heather, bucketId: 'demo.brackwater' } as const

describe('a stack that is changed', () => {
  test('leaves what was done, changes what is to come, and adds nothing to a pot that had all its coats', () => {
    const play = evening().act({ do: 'logged', potId: 'demo.34', agoMin: 90 })
    play
      .act({ do: 'logged', potId: 'demo.36', agoMin: 200 })
      .act({ do: 'touched', potIds: ['demo.36'], dry: true })
    play.act({ do: 'logged', potId: 'demo.36', agoMin: 60 })
    const [done34, done36] = [pot(play, 34).dips, pot(play, 36).dips]
    play.act({
      do: 'set-stack',
      stack: { stackId: 'demo.doorstep', name: 'Doorstep', coats: [heather, brackwater, heather] },
    })
    expect(pot(play, 34).dips).toEqual(done34)
    expect(pot(play, 36).dips).toEqual(done36)
    expect(buckets(play, 37)).toEqual(['demo.heather', 'demo.brackwater', 'demo.heather'])
    expect(buckets(play, 34)).toEqual(['demo.gatepost', 'demo.brackwater', 'demo.heather'])
    expect(buckets(play, 36)).toEqual(['demo.gatepost', 'demo.heather'])
    expect(strayed(play.table, pot(play, 34))).toBeUndefined()
    expect(nextCoat(pot(play, 36))).toBe(2)
    play.act({ do: 'take-back' })
    expect(buckets(play, 34)).toEqual(['demo.gatepost', 'demo.heather'])
  })

  test('another stack for a begun pot keeps the coats that are on', () => {
    const play = evening().act({ do: 'logged', potId: 'demo.33', agoMin: 60 })
    const [dip] = pot(play, 33).dips
    play.act({ do: 'was-other-bucket', dipId: dip!.dipId, bucketId: 'demo.heather' })
    expect(strayed(play.table, pot(play, 33))).toBeDefined()
    play.act({ do: 'restack', potId: 'demo.33', stackId: 'demo.doorstep' })
    expect(strayed(play.table, pot(play, 33))).toBeUndefined()
    expect(buckets(play, 33)).toEqual(['demo.heather', 'demo.heather'])
    expect(pot(play, 33).facts.stackId).toBe('demo.doorstep')
  })
})

describe('a wet wall', () => {
  test('a pot damp from washing is neither waxed nor dipped until it drinks again, sooner in drier air', () => {
    const until = (rh: number) => {
      const play = evening().act({ do: 'set-air', air: { tempC: 21, rh, draught: 'room' } })
      const { facts } = pot(play, 33)
      play.act({ do: 'set-pot', pot: { ...facts, bisqueWater: 'washed' } })
      const step = stepOf(play.table, pot(play, 33), play.nowMs)
      return step.is === 'damp-dries' ? (step.until - play.nowMs) / 60_000 : 0
    }
    expect(until(0.3)).toBeGreaterThan(20)
    expect(until(0.8)).toBeGreaterThan(until(0.3) * 1.5)
    expect(stepOf(evening().table, pot(evening(), 33), evening().nowMs).is).toBe('wax')
  })

  test('after a wash-off the pot is bare, its stack begins anew, and it waits', () => {
    const play = evening().act({ do: 'logged', potId: 'demo.33', agoMin: 60 })
    play.act({ do: 'set-plan', potId: 'demo.33', coats: [heather] }).act({ do: 'wash-off', potId: 'demo.33' })
    expect(coatsOn(pot(play, 33))).toEqual([])
    expect(buckets(play, 33)[0]).toBe('demo.gatepost')
    expect(stepOf(play.table, pot(play, 33), play.nowMs).is).toBe('damp-dries')
    play.wait(24 * 3600)
    expect(stepOf(play.table, pot(play, 33), play.nowMs).is).toBe('dip')
  })

  test('a hotter bisque cone drinks less, unless somebody soaked a shard', () => {
    const play = evening()
    const { board } = play.table
    play.act({ do: 'set-board', board: { ...board, bisqueCone: '1' } })
    expect(play.table.board.absorption).toBeLessThan(0.1)
    play.act({ do: 'set-board', board: { ...play.table.board, absorption: 0.11 } })
    play.act({ do: 'set-board', board: { ...play.table.board, bisqueCone: '04' } })
    expect(play.table.board.absorption).toBe(0.11)
  })
})

describe('the wax pan', () => {
  const waxed = () => evening().act({ do: 'waxed', potId: 'demo.31' })

  test('is on from the first hot wax, not from water-based wax', () => {
    expect(waxed().table.pan).toBeDefined()
    const water = evening().act({ do: 'set-settings', settings: { wax: 'water' } })
    expect(water.act({ do: 'waxed', potId: 'demo.31' }).table.pan).toBeUndefined()
  })

  test('is asked about after five minutes without a hit, after ten in any case, and again', () => {
    const play = waxed().wait(299)
    expect(panAsk(play.table, play.nowMs)).toBeUndefined()
    play.wait(1)
    expect(panAsk(play.table, play.nowMs)).toMatchObject({ onMs: 300_000, times: 1 })
    const said = outputsOf(play.table, play.nowMs, play.card).pan
    expect(said?.words).toEqual(['wax pan is on', 'are you beside it'])
    play.wait(300)
    expect(panAsk(play.table, play.nowMs)?.times).toBe(2)
    expect(outputsOf(play.table, play.nowMs, play.card).pan?.key).not.toBe(said?.key)
    play.act({ do: 'wax-pan', is: 'watched' })
    expect(panAsk(play.table, play.nowMs)).toBeUndefined()
    for (let i = 0; i < 5; i++) play.wait(120).act({ do: 'stirred', bucketId: 'demo.gatepost' })
    expect(panAsk(play.table, play.nowMs)).toMatchObject({ times: 1 })
  })

  test('going on after a Hold says that somebody is beside it; off is off', () => {
    const play = waxed().wait(290).act({ do: 'hold' }).wait(200).act({ do: 'resume' })
    expect(play.table.pan!.watchedAt).toBe(play.nowMs)
    expect(play.act({ do: 'wax-pan', is: 'off' }).table.pan).toBeUndefined()
  })

  test('who waxes is beside it', () => {
    const play = waxed()
    for (let i = 0; i < 6; i++) play.wait(120).act({ do: 'waxed', potId: `demo.${32 + i}` })
    expect(panAsk(play.table, play.nowMs)).toBeUndefined()
  })

  test('the last foot waxed, it is asked at once whether the pan is off, and once only', () => {
    const play = waxed()
    for (let number = 32; number <= 37; number++) play.wait(30).act({ do: 'waxed', potId: `demo.${number}` })
    expect(play.card.kind).not.toBe('wax-pan')
    play.wait(30).act({ do: 'waxed', potId: 'demo.38' })
    expect(play.card).toMatchObject({ kind: 'wax-pan', why: 'waxed', big: { do: 'wax-pan', is: 'off' } })
    const left = waxed()
    for (let number = 32; number <= 38; number++) left.wait(30).act({ do: 'waxed', potId: `demo.${number}` })
    left.act(left.card.small!)
    expect(left.card.kind).not.toBe('wax-pan')
    play.bar()
    expect(play.table.pan).toBeUndefined()
    expect(play.card.kind).not.toBe('wax-pan')
  })

  test('left on, it comes before the next work of hands that hold no pot', () => {
    const play = waxed()
    for (let number = 32; number <= 38; number++) play.wait(30).act({ do: 'waxed', potId: `demo.${number}` })
    play.act({ do: 'wax-pan', is: 'watched' })
    expect(play.card.kind).not.toBe('wax-pan')
    play.wait(601)
    expect(play.card).toMatchObject({ kind: 'wax-pan', why: 'beside' })
  })

  test('nothing is finished while it is on', () => {
    const play = waxed()
    for (const { facts } of Object.values(play.table.pots))
      if (facts.number !== 34) play.act({ do: 'gone', potId: facts.potId })
    play
      .act({ do: 'set-plan', potId: 'demo.34', coats: [heather] })
      .act({ do: 'logged', potId: 'demo.34', agoMin: 300 })
    play.act({ do: 'foot-signed', potId: 'demo.34' })
    expect(play.card).toMatchObject({ kind: 'lid', bucketId: 'demo.heather' })
    play.bar()
    expect(play.card).toMatchObject({ kind: 'wax-pan', why: 'closing' })
    play.bar().bar().bar()
    expect(cardOf(play.table, play.nowMs).kind).toBe('closed')
  })
})

test('a pot goes to a place, and the one that stands there changes places with it', () => {
  const play = evening().act({ do: 'move', potId: 'demo.33', place: { board: 'B', spot: 1 } })
  expect(pot(play, 33).facts.place).toEqual({ board: 'B', spot: 1 })
  expect(pot(play, 35).facts.place).toEqual({ board: 'A', spot: 3 })
  play.act({ do: 'move', potId: 'demo.33', place: { board: 'C', spot: 4 } })
  expect(pot(play, 33).facts.place).toEqual({ board: 'C', spot: 4 })
  expect(play.try({ do: 'move', potId: 'demo.33', place: { board: 'C', spot: 4 } })).toMatchObject({
    code: 'nothing-to-do',
  })
})
