import { signal } from '@preact/signals'
import { describe, expect, it, vi } from 'vitest'
import type { Away, HitBy } from '../../../src/screens/app.ts'
import type { Extras } from '../../../src/screens/extras.ts'
import { openBar } from '../../../src/wire/press-bar.ts'
import { Play } from '../table/play.ts'

const WAYS: readonly HitBy[] = ['press', 'hold', 'key', 'media', 'knock']

/** The bench of one demo pot, as hits find it. */
function bench(number = 33) {
  const play = new Play().act({ do: 'lay-demo' })
  for (const pot of Object.values(play.table.pots))
    if (pot.facts.number !== number) play.act({ do: 'gone', potId: pot.facts.potId })
  const card = signal(play.card)
  const away = signal<Away | undefined>(undefined)
  const extras = signal<Extras | undefined>(undefined)
  const act = vi.fn((action) => play.try(action))
  const refused = vi.fn()
  const hush = vi.fn()
  let route: string = 'bench'
  const opened = openBar({
    hits: { act, refused } as never,
    moment: { card, now: signal(play.nowMs), seen: signal(play.table) } as never,
    away: { at: away, back: () => (away.value = undefined) },
    extras,
    atBench: () => route === 'bench',
    hush,
  })
  const look = () => (card.value = play.card)
  return { play, card, away, extras, act, refused, hush, opened, look, leave: () => (route = 'board') }
}

describe('the bar', () => {
  it.each(WAYS)('hit by %s does what the card says', (by) => {
    const { opened, act, play } = bench()
    opened.pressBar(by, 1000)
    expect(act).toHaveBeenCalledWith({ do: 'waxed', potId: 'demo.33' }, 1000)
    expect(play.table.pots['demo.33']?.waxedAt).toBeDefined()
  })

  it('that stops a count says what was logged, until the next hit', () => {
    const { opened, play, look } = bench()
    while (play.card.kind !== 'armed') {
      if (play.card.big) play.bar()
      else play.wait(20)
    }
    play.bar().wait(7)
    look()
    const dipId = play.table.pots['demo.33']!.dips[0]!.dipId
    opened.pressBar('press', 1000)
    expect(play.table.pots['demo.33']!.dips[0]).toMatchObject({ how: 'measured' })
    expect(opened.slip.value).toMatchObject({ dipId })
    play.wait(20)
    look()
    opened.pressBar('press', 30_000)
    expect(opened.slip.value).toBeUndefined()
  })

  it.each(WAYS)('is not hit by %s twice within 400 ms, whatever hit it first', (by) => {
    const { opened, act } = bench()
    opened.pressBar('press', 1000)
    opened.pressBar(by, 1399)
    expect(act).toHaveBeenCalledTimes(1)
    opened.pressBar(by, 1400)
    expect(act).toHaveBeenCalledTimes(2)
  })

  it.each(WAYS)(
    'that brings another card is not hit by %s again by the other stroke of a double knock',
    (by) => {
      const { opened, act, look } = bench()
      opened.pressBar('press', 1000)
      look()
      opened.pressBar(by, 1499)
      opened.pressSmall(1499)
      expect(act).toHaveBeenCalledTimes(1)
      opened.pressBar(by, 1500)
      expect(act).toHaveBeenCalledTimes(2)
    },
  )

  it('that asks for a pot does not answer for it before it can have been touched', () => {
    const { opened, act, card, play } = bench()
    const offer = { do: 'pick', potId: 'demo.33', touch: true } as const
    card.value = { kind: 'wait', next: { at: play.nowMs, what: 'touch' }, after: [], offer }
    opened.pressBar('press', 1000)
    const big = { do: 'touched', potIds: ['demo.33'], dry: true } as const
    card.value = { kind: 'ready', potIds: ['demo.33'], bucketId: 'x', big, small: { ...big, dry: false } }
    opened.pressBar('press', 1999)
    opened.pressSmall(1999)
    expect(act.mock.calls).toEqual([[offer, 1000]])
    opened.pressBar('press', 2000)
    expect(act).toHaveBeenLastCalledWith(big, 2000)
  })

  it('of what came due meanwhile is not hit through to the card below it', () => {
    const { opened, act, away } = bench()
    away.value = { from: 0, to: 1 }
    opened.pressBar('press', 1000)
    opened.pressBar('press', 1499)
    expect(away.value).toBeUndefined()
    expect(act).not.toHaveBeenCalled()
  })

  it.each(['key', 'media', 'knock'] as const)('is not hit by %s that was meant for the card before', (by) => {
    const { opened, act } = bench()
    opened.cardShown(5000)
    opened.pressBar(by, 5349)
    expect(act).not.toHaveBeenCalled()
    opened.pressBar(by, 5350)
    expect(act).toHaveBeenCalledTimes(1)
  })

  it.each(WAYS)('lies under what was opened over it: a hit by %s is refused, not done unseen', (by) => {
    const { opened, act, refused } = bench()
    opened.sheet.value = 'other'
    opened.pressBar(by, 1000)
    expect(act).not.toHaveBeenCalled()
    expect(refused).toHaveBeenCalledTimes(1)
  })

  it.each(WAYS)('of another screen does what that says, for %s, and nothing of the bench', (by) => {
    const { opened, act, leave } = bench()
    const elsewhere = vi.fn()
    opened.elsewhere.value = elsewhere
    leave()
    opened.pressBar(by, 1000)
    opened.pressBar(by, 1399)
    expect(elsewhere).toHaveBeenCalledTimes(1)
    expect(elsewhere).toHaveBeenCalledWith(1000)
    expect(act).not.toHaveBeenCalled()
  })

  it.each(WAYS)('is not there on another screen for %s', (by) => {
    const { opened, act, refused, leave } = bench()
    leave()
    opened.pressBar(by, 1000)
    expect(act).not.toHaveBeenCalled()
    expect(refused).not.toHaveBeenCalled()
  })

  it('ends the list of what came due, and OUT, before anything of the card', () => {
    const { opened, act, away, card, play, hush, look } = bench()
    away.value = { from: 0, to: 1 }
    opened.pressBar('key', 1000)
    expect(away.value).toBeUndefined()
    play
      .act({ do: 'waxed', potId: 'demo.33' })
      .act({ do: 'wax-pan', is: 'off' })
      .wait(400)
      .act({ do: 'wiped', potId: 'demo.33' })
      .wait(62)
    play.bar()
    look()
    expect(card.value.kind).toBe('armed')
    opened.pressBar('key', 3000)
    while (play.card.kind !== 'out') play.wait(1)
    look()
    act.mockClear()
    opened.pressBar('media', 20_000)
    expect(hush).toHaveBeenCalledTimes(1)
    expect(act).not.toHaveBeenCalled()
  })

  it('says why a hit came to nothing, until the next one', () => {
    const { opened, act } = bench()
    act.mockReturnValueOnce({ code: 'held' })
    opened.pressBar('press', 1000)
    expect(opened.said.value?.refusal.code).toBe('held')
    opened.pressBar('press', 2000)
    expect(opened.said.value).toBeUndefined()
  })

  it('answers for the pots that were not tapped out, until another card shows', () => {
    const { opened, act, card } = bench()
    const big = { do: 'touched', potIds: ['a', 'b'], dry: true } as const
    card.value = { kind: 'ready', potIds: ['a', 'b'], bucketId: 'x', big, small: { ...big, dry: false } }
    opened.leftOut.value = new Set(['b'])
    opened.pressBar('press', 1000)
    expect(act).toHaveBeenLastCalledWith({ ...big, potIds: ['a'] }, 1000)
    opened.pressSmall(2000)
    expect(act).toHaveBeenLastCalledWith({ ...big, dry: false, potIds: ['a'] }, 2000)
    opened.cardShown(2100)
    opened.pressBar('press', 3000)
    expect(act).toHaveBeenLastCalledWith(big, 3000)
  })
})
