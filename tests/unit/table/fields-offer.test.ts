import { describe, expect, test } from 'vitest'
import { mixTo } from '../../../src/table/entry/mix.ts'
import {
  BISQUE_CONES,
  FORMS,
  freeLetter,
  freePattern,
  freeStackName,
  lastForm,
  lastStack,
  nextPot,
  outerOf,
  readPlace,
  SIZES,
  stepShape,
} from '../../../src/table/entry/offer.ts'
import { DEFAULT_BOARD } from '../../../src/table/model/defaults.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })

describe('a pot in two taps', () => {
  test('a number that was said is gone on from, past those that are taken', () => {
    const play = evening()
    expect(nextPot(play.table, 7).number).toBe(7)
    expect(nextPot(play.table, 33).number).toBe(39)
  })

  test('a stack is named after its form, counted on where there is one', () => {
    const play = evening()
    const coats = [{ bucketId: 'demo.heather', cover: { kind: 'full' as const }, holdS: 3 }]
    for (const name of ['Cup', 'Cup 2', 'Cup 3']) {
      expect(freeStackName(play.table, 'cup')).toBe(name)
      play.act({ do: 'set-stack', stack: { name, coats } })
    }
  })

  test('every form and size is taken as it is offered', () => {
    for (const form of FORMS)
      for (const size of SIZES) {
        const play = evening()
        const shape = stepShape(play.table.board, form, size)
        expect(outerOf(shape)).toBeDefined()
        expect(play.try({ do: 'set-pot', pot: { shape, stackId: 'demo.tideline' } })).toBeUndefined()
      }
  })

  test('wall and foot line are the board’s; a low plate keeps its foot line below its flange', () => {
    const board = { ...DEFAULT_BOARD, wallMm: 7, footLineMm: 12 }
    expect(stepShape(board, 'jar', 'medium')).toMatchObject({ wallMm: 7, footLineMm: 12 })
    expect(stepShape(board, 'plate', 'small').footLineMm).toBeLessThan(8)
  })

  test('the stack and form of the pot put down last are offered again', () => {
    const play = evening()
    const shape = stepShape(play.table.board, 'jar', 'small')
    play.act({ do: 'set-pot', pot: { shape, stackId: 'demo.doorstep' } })
    expect(lastStack(play.table)).toBe('demo.doorstep')
    expect(lastForm(play.table)).toBe('jar')
    expect(lastStack(new Play().table)).toBeUndefined()
  })

  test('six beakers: one entry, six numbers, six places', () => {
    const play = evening()
    expect(nextPot(play.table)).toEqual({ number: 39, place: { board: 'C', spot: 1 } })
    const shape = stepShape(play.table.board, 'beaker', 'small')
    play.act({ do: 'set-pot', pot: { shape, stackId: 'demo.tideline' }, copies: 6 })
    const added = Object.values(play.table.pots).slice(8)
    expect(added.map(({ facts }) => facts.number)).toEqual([39, 40, 41, 42, 43, 44])
    expect(added.map(({ facts }) => `${facts.place.board}${facts.place.spot}`)).toEqual([
      'C1',
      'C2',
      'C3',
      'C4',
      'D1',
      'D2',
    ])
  })
})

test.each([
  ['B 3', { board: 'B', spot: 3 }],
  ['b3', { board: 'B', spot: 3 }],
  [' aa 12 ', { board: 'AA', spot: 12 }],
])('place %s', (text, place) => {
  expect(readPlace(text)).toEqual(place)
})

test.each(['', '3', 'B', 'B0', 'B 100', '3B', 'ABC1', 'B-3', 'B 3 4', 'Ä3'])('no place: %j', (text) => {
  expect(readPlace(text)).toBeUndefined()
})

test('a bucket’s letter comes from its name, then from the alphabet, and is its own', () => {
  const { table } = evening()
  expect(freeLetter(table, 'Lampsmoke', undefined)).toBe('L')
  expect(freeLetter(table, 'Ghost', undefined)).toBe('O')
  expect(freeLetter(table, 'Gatepost', 'demo.gatepost')).toBe('G')
  expect(freeLetter(table, '', undefined)).toBe('A')
  expect(freePattern(table)).toBe('dots')
})

test('bisque cones run from cool to hot without the glaze cones above 6', () => {
  expect(BISQUE_CONES).toContain('04')
  expect(BISQUE_CONES).not.toContain('10')
  expect(BISQUE_CONES.indexOf('06')).toBeLessThan(BISQUE_CONES.indexOf('04'))
  expect(BISQUE_CONES.indexOf('01')).toBeLessThan(BISQUE_CONES.indexOf('1'))
})

describe('what brings a bucket to its target', () => {
  const facts = { litres: 10, targetGramsPerMl: 1.48, toleranceGramsPerMl: 0.02, solidsGravity: 2.58 }

  test('water for 10 L from 1.53 to 1.48: two thirds of 10 · 0.05 / 0.48 first', () => {
    const mix = mixTo(facts, 1.53)
    expect(mix).toMatchObject({ is: 'water' })
    if (mix.is !== 'water') return
    expect(mix.allLitres).toBeCloseTo((10 * 0.05) / 0.48, 9)
    expect(mix.firstLitres).toBeCloseTo((mix.allLitres * 2) / 3, 9)
  })

  test('at the edge of the tolerance nothing is asked for', () => {
    expect(mixTo(facts, 1.5)).toEqual({ is: 'on-target' })
    expect(mixTo(facts, 1.46)).toEqual({ is: 'on-target' })
  })

  test('dry mix where it is too thin, and it lands on the target', () => {
    const mix = mixTo(facts, 1.4)
    expect(mix).toMatchObject({ is: 'dry' })
    if (mix.is !== 'dry') return
    const litres = 10 + mix.allKg / 2.58
    expect((10 * 1.4 + mix.allKg) / litres).toBeCloseTo(1.48, 9)
  })
})
