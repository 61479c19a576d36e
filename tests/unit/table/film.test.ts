/** A story as it is played: from what was logged, in a minute at most. */
import { expect, test } from 'vitest'
import '../../../src/table/forecast/walls.ts'
import type { TableEvent } from '../../../shared/events.ts'
import { filmOf, sceneAt } from '../../../src/table/opening/film.ts'
import { firedLoad, LOAD } from '../../fixtures/opened.ts'
import { yearOf } from '../../fixtures/year.ts'
import { Play, START_MS } from './play.ts'

function opened(more: readonly TableEvent[] = []): Play {
  const play = new Play()
  for (const [i, events] of firedLoad(START_MS, 'up').entries()) play.append(events, `e${i}`)
  play.append(more, 'more')
  return play
}
const of = (play: Play, potId: string) => {
  const pot = play.table.pots[potId]
  if (!pot) throw new Error(`no ${potId}`)
  return filmOf(play.table, pot)
}

test('a story is played from bare bisque to the photo, coat by coat, each drying before the next', () => {
  const { play } = yearOf(25, START_MS)
  const film = of(play, 'y0.0')
  expect(film.map(({ what }) => what)).toEqual([
    'bare',
    'waxed',
    ...['coat', 'wait', 'coat', 'wait', 'coat', 'wait'],
    ...['loaded', 'fire', 'found', 'photo'],
  ])
  expect(film.map(({ coats }) => coats)).toEqual([0, 0, 1, 1, 2, 2, 3, 3, 3, 3, 3, 3])
  for (const scene of film) {
    if (scene.what !== 'wait') continue
    expect(scene.waterG.length).toBeGreaterThan(2)
    expect(scene.waterG[0]).toBeGreaterThan(5)
    expect(scene.waterG).toEqual(scene.waterG.toSorted((a, b) => b - a))
  }
})

test('air that was noted later, of another day, leaves a wait as it was', () => {
  const play = opened()
  const waits = () => of(play, 'demo.33').flatMap((scene) => (scene.what === 'wait' ? [scene.waterG] : []))
  const before = waits()
  expect(before[0]?.[0]).toBeGreaterThan(5)
  play.wait(48 * 3600).append([{ kind: 'air-set', air: { tempC: 22, rh: 0.3, draught: 'room' } }], 'air')
  expect(waits()).toEqual(before)
})

test('it lasts a minute at most, however many coats there are', () => {
  const { play } = yearOf(1, START_MS)
  const pot = play.table.pots['y0.0']
  if (!pot) throw new Error('no pot')
  const dips = Array.from({ length: 12 }, (_, i) => ({
    ...(pot.dips[0] ?? ({} as never)),
    dipId: `d${i}`,
    outAt: START_MS + i * 3_600_000,
    tappedAt: START_MS + i * 3_600_000 - 9000,
  }))
  const lasts = (film: ReturnType<typeof filmOf>) => film.reduce((sum, { ms }) => sum + ms, 0)
  expect(lasts(filmOf(play.table, pot))).toBeLessThanOrEqual(60_000)
  expect(lasts(filmOf(play.table, { ...pot, dips }))).toBeCloseTo(60_000, 3)
})

test('of a pot of which nothing was noted what there is plays', () => {
  const shape = { form: 'beaker', heightMm: 95, rimMm: 80, wallMm: 5, footLineMm: 8 } as const
  const play = opened([
    {
      kind: 'pot-set',
      pot: { potId: 'p', number: 90, place: { board: 'Z', spot: 1 }, shape, stackId: 'demo.tideline' },
    },
    { kind: 'taken-out', potId: 'p' },
  ])
  expect(of(play, 'p').map(({ what }) => what)).toEqual(['bare'])
  play.append([{ kind: 'judged', potId: 'p', run: { is: 'none' }, faults: [] }], 'judge')
  expect(of(play, 'p').map(({ what }) => what)).toEqual(['bare', 'fire', 'found'])
})

test('of a coat counted by eye nothing is told of how wet it was', () => {
  const play = opened([{ kind: 'coats-counted', potId: 'demo.36', coats: 2 }])
  const waits = of(play, 'demo.36').filter(({ what }) => what === 'wait')
  expect(waits.length).toBeGreaterThan(0)
  for (const wait of waits) expect(wait).toMatchObject({ waterG: [] })
})

test('before its first part a story is at its beginning, past its last at its end', () => {
  const play = opened([{ kind: 'judged', potId: 'demo.36', loadId: LOAD, run: { is: 'shelf' }, faults: [] }])
  const film = of(play, 'demo.36')
  expect(sceneAt(film, -5)).toEqual({ index: 0, share: 0 })
  expect(sceneAt(film, (film[0]?.ms ?? 0) * 1.0001)).toMatchObject({ index: 1 })
  expect(sceneAt(film, 1e9)).toEqual({ index: film.length - 1, share: 1 })
})
