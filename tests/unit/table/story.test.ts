/** A fired pot's whole story, and finding it among a year's. */
import { describe, expect, test } from 'vitest'
import type { TableEvent } from '../../../shared/events.ts'
import { firedOf } from '../../../src/table/fired/fired-pot.ts'
import {
  firedElsewhere,
  isAnyFired,
  loadsToJudge,
  loadToOpen,
  potsToOpen,
  toLookAt,
} from '../../../src/table/opening/queue.ts'
import { answers, firedPots, storyOf } from '../../../src/table/opening/story.ts'
import { firedLoad, LOAD, nextLoad } from '../../fixtures/opened.ts'
import { PATIENCE_MS, processorMs } from '../../fixtures/patience.ts'
import { Play, START_MS } from './play.ts'

const DAY_S = 86_400

function opened(): Play {
  const play = new Play()
  for (const [i, events] of firedLoad(START_MS, 'up').entries()) play.append(events, `e${i}`)
  return play
}
const judged = (play: Play, potId: string) =>
  play.act({
    do: 'judge',
    potId,
    run: { is: 'measured', mm: 2 },
    faults: ['crawled'],
  })
const potIn = (play: Play, potId: string) => {
  const pot = play.table.pots[potId]
  if (!pot) throw new Error(`no ${potId}`)
  return pot
}

test('a story tells what was done in the order in which it happened, whenever it was said', () => {
  const play = opened()
  judged(play, 'demo.36')
  play.wait(2 * DAY_S).act({ do: 'look-again', potId: 'demo.36', faults: ['crazed'] })
  const story = storyOf(play.table, potIn(play, 'demo.36'))
  expect(story.map(({ at }) => at)).toEqual(story.map(({ at }) => at).toSorted((a, b) => a - b))
  const told = story.map(({ what }) => what)
  expect(told.filter((what) => what === 'dipped').length).toBeGreaterThan(0)
  for (const what of ['foot', 'lit', 'cone', 'off', 'loaded', 'opened', 'judged', 'looked'] as const)
    expect(told).toContain(what)
  expect(told.indexOf('lit')).toBeLessThan(told.indexOf('cone'))
  expect(told.at(-1)).toBe('looked')
  const dips = story.flatMap((line) => (line.what === 'dipped' ? [line.likelyMm ?? 0] : []))
  for (const mm of dips) expect(mm).toBeGreaterThan(0.05)
})

test('pots are opened from the top shelf down, a jar before its lid, those without a place last', () => {
  const play = opened()
  const load = play.table.loads?.[LOAD]
  if (!load) throw new Error('no load')
  const order = () => potsToOpen(play.table, load).map(({ facts }) => facts.potId)
  expect(order().slice(0, 4)).toEqual(['demo.35', 'demo.36', 'demo.37', 'demo.38'])
  const lid = { ...potIn(play, 'demo.36').facts, potId: 'lid', lidOf: 'demo.36' }
  play.append([{ kind: 'pot-set', pot: lid }], 'lid')
  expect(order().slice(1, 3)).toEqual(['demo.36', 'lid'])
  judged(play, 'demo.35')
  expect(order()[0]).toBe('demo.35')
})

test('a pot is looked at again after a day and after a week, and not asked for twice', () => {
  const play = opened()
  judged(play, 'demo.35')
  const due = () => toLookAt(play.table, play.nowMs).length
  expect(due()).toBe(0)
  play.wait(DAY_S)
  expect(due()).toBe(1)
  play.act({ do: 'look-again', potId: 'demo.35', faults: [] })
  expect(due()).toBe(0)
  play.wait(6 * DAY_S)
  expect(due()).toBe(1)
  play.act({ do: 'look-again', potId: 'demo.35', faults: [] }).wait(30 * DAY_S)
  expect(due()).toBe(0)
  judged(play, 'demo.34').act({
    do: 'judge',
    potId: 'demo.34',
    run: { is: 'shelf' },
    stuck: 'lost',
    faults: [],
  })
  play.wait(DAY_S)
  expect(due()).toBe(0)
})

describe('pots of an earlier load', () => {
  const ids = (pots: readonly { readonly facts: { readonly potId: string } }[]) =>
    pots.map(({ facts }) => facts.potId)
  const later = () => {
    const play = opened().wait(3 * DAY_S)
    for (const [i, events] of nextLoad(play.nowMs).entries()) play.append(events, `n${i}`)
    return play
  }
  test('are judged, and put right, while the next kiln is on and after it was opened', () => {
    const play = later()
    const left = () =>
      loadsToJudge(play.table, play.nowMs).map(({ load, pots }) => [load.loadId, pots.length])
    expect(left()).toEqual([[LOAD, 8]])
    expect(loadToOpen(play.table, play.nowMs)?.loadId).toBe(LOAD)
    judged(play, 'demo.36')
    expect(left()).toEqual([[LOAD, 7]])
    play.wait(DAY_S).append([{ kind: 'kiln-off', loadId: 'l.next' }], 'off')
    play.append([{ kind: 'lid-opened', loadId: 'l.next' }], 'lid')
    expect(left()).toEqual([
      ['l.next', 1],
      [LOAD, 7],
    ])
    expect(loadToOpen(play.table, play.nowMs)?.loadId).toBe('l.next')
    judged(play, 'demo.33.1')
    expect(left()).toEqual([[LOAD, 7]])
    play.act({ do: 'judge', potId: 'demo.36', run: { is: 'none' }, faults: [] })
    expect(storyOf(play.table, potIn(play, 'demo.36')).at(-1)).toMatchObject({
      look: { run: { is: 'none' } },
    })
  })

  test('ask nobody any more after two months, and are listed all the same', () => {
    const play = later().wait(61 * DAY_S)
    expect(loadsToJudge(play.table, play.nowMs)).toEqual([])
    expect(ids(firedPots(play.table)).toSorted()).toEqual(
      Array.from({ length: 8 }, (_, i) => `demo.${31 + i}`),
    )
    expect(isAnyFired(play.table)).toBe(true)
    expect(ids(firedElsewhere(play.table))).not.toContain('demo.31')
    expect(storyOf(play.table, potIn(play, 'demo.31')).map(({ what }) => what)).toContain('lit')
    judged(play, 'demo.31')
  })
})

describe('a search', () => {
  const play = opened()
  judged(play, 'demo.36')
  judged(play, 'demo.31')
  const found = (search: string) =>
    firedPots(play.table)
      .filter((pot) => firedOf(pot).found && answers(play.table, pot, search, 'March 2026 crawled'))
      .map(({ facts }) => facts.number)
  test.each([
    ['', [36, 31]],
    ['36', [36]],
    ['3', []],
    ['2.2', [36]],
    ['gatepost', [36, 31]],
    ['doorst', [36]],
    ['march 2026', [36, 31]],
    ['march 36', [36]],
    ['april', []],
    ['crawled 1.1', [31]],
    ['blistered 1.1', []],
  ])('of %j', (search, numbers) => {
    expect(found(search).toSorted()).toEqual(numbers.toSorted())
  })

  test('among a year of 1,000 pots is answered within a second', () => {
    const many = new Play()
    for (const [i, events] of firedLoad(START_MS, 'up').entries()) many.append(events, `e${i}`)
    const like = potIn(many, 'demo.36').facts
    const events = Array.from({ length: 1000 }, (_, n): TableEvent[] => [
      { kind: 'pot-set', pot: { ...like, potId: `p${n}`, number: 1000 + n } },
      { kind: 'taken-out', potId: `p${n}`, place: `${1 + (n % 4)}.${1 + (n % 9)}` },
      { kind: 'judged', potId: `p${n}`, run: { is: 'none' }, faults: [] },
    ])
    many.append(events.flat(), 'year')
    const from = processorMs()
    const hits = firedPots(many.table).filter((pot) => answers(many.table, pot, '3.3 doorstep', 'March 2026'))
    expect(processorMs() - from).toBeLessThan(PATIENCE_MS)
    expect(hits.length).toBeGreaterThan(10)
  })
})
