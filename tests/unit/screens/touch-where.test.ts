import { expect, test } from 'vitest'
import type { PotFacts } from '../../../shared/nouns.ts'
import { touchWhere } from '../../../src/screens/bench/touch-where.ts'
import { lessonOf } from '../../../src/table/forecast/learning.ts'
import { WORDS } from '../../../src/words/bench.ts'
import { Play } from '../table/play.ts'

/** A pot of the demo evening after one coat of its plan. */
function coated(...potIds: string[]): Play {
  const play = new Play().act({ do: 'lay-demo' })
  for (const potId of potIds) play.act({ do: 'logged', potId, agoMin: 1 })
  return play
}
const said = (play: Play, ...potIds: string[]) =>
  touchWhere(
    WORDS.en,
    play.table,
    potIds.map((potId) => play.table.pots[potId]!),
  )
const reshaped = (play: Play, potId: string, shape: Partial<PotFacts['shape']>) => {
  const pot = play.table.pots[potId]!.facts
  return play.act({ do: 'set-pot', pot: { ...pot, shape: { ...pot.shape, ...shape } } })
}

test('nobody is asked to touch where no hand goes: a bottle that was poured in and out is touched at its rim', () => {
  const play = coated('demo.35')
  expect(play.table.pots['demo.35']?.dips[0]?.cover.kind).toBe('inside')
  expect(said(play, 'demo.35')).toBe('touch just inside the rim')
  reshaped(play, 'demo.35', { rimMm: 95 })
  expect(said(play, 'demo.35')).toBe('touch the inside floor')
})

test('a form without a belly is touched halfway up', () => {
  const play = coated('demo.31')
  const { shape } = play.table.pots['demo.31']!.facts
  expect(shape.bellyMm).toBeUndefined()
  expect(said(play, 'demo.31')).not.toContain('belly')
})

test('of pots touched at different places each is told its own', () => {
  const play = coated('demo.31', 'demo.33', 'demo.35')
  expect(said(play, 'demo.31', 'demo.35')).toMatch(/^touch 31 .+; 35 just inside the rim$/)
  expect(said(play, 'demo.33', 'demo.33')).not.toMatch(/\d/)
})

test('a touch beside the rim teaches of that place: what was dry there is no quicker than told', () => {
  const play = coated('demo.35')
    .wait(300)
    .act({ do: 'touched', potIds: ['demo.35'], dry: true })
  const wide = reshaped(coated('demo.35'), 'demo.35', { rimMm: 95 })
    .wait(300)
    .act({ do: 'touched', potIds: ['demo.35'], dry: true })
  const { timeMean } = lessonOf(play.table)
  expect(timeMean).toBeGreaterThan(lessonOf(wide.table).timeMean)
})
