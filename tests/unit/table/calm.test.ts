import { describe, expect, it } from 'vitest'
import type { Card } from '../../../src/table/card/card.ts'
import { potsOnCard } from '../../../src/table/card/card.ts'
import { cardOf, type FollowedSchedule } from '../../../src/table/card/card-now.ts'
import { type Shown, shownNow } from '../../../src/table/card/shown.ts'
import { tasksOf } from '../../../src/table/order/schedule.ts'
import { potId } from '../../fixtures/twelve.ts'
import { begun, PlannedPlay } from './planned.ts'
import { Play } from './play.ts'

const MIN_S = 60

const named = (card: Card): string => `${card.kind} ${potsOnCard(card).join()}`

/** The same order with the pots of its dips exchanged. */
function exchanged(schedule: FollowedSchedule, one: string, other: string): FollowedSchedule {
  const to = new Map([
    [one, other],
    [other, one],
  ])
  const actions = schedule.plan.actions.map((action) =>
    action.kind === 'dip' ? { ...action, potId: to.get(action.potId) ?? action.potId } : action,
  )
  return { ...schedule, plan: { ...schedule.plan, actions } }
}

describe('a new order of work', () => {
  it('leaves the words of a stir as they were said', () => {
    const play = begun(['G'], 3).wait(400)
    play.ask()
    const { table, nowMs, schedule } = play
    const shown = shownNow(undefined, table, nowMs, schedule)
    const plan = schedule!.plan
    const dips = plan.actions.filter(({ kind }) => kind === 'dip').slice(1)
    const other = { ...schedule!, plan: { ...plan, actions: dips } }
    expect(shown.card).toMatchObject({ kind: 'stir', visit: { dips: 3 } })
    expect(cardOf(table, nowMs + 1000, other)).toMatchObject({ kind: 'stir', visit: { dips: 2 } })
    expect(shownNow(shown, table, nowMs + 1000, other).card).toEqual(shown.card)
  })

  it('leaves the card in hand as it is, and is followed from the next hit on', () => {
    const play = begun()
    expect(named(play.card)).toBe('armed t.1')
    const told = exchanged(play.schedule!, potId(1), potId(3))
    // Alone it would have another pot first.
    expect(named(cardOf(play.table, play.nowMs, told))).toBe('armed t.3')
    play.schedule = told
    expect(named(play.card)).toBe('armed t.1')
    play.wait(40)
    expect(named(play.card)).toBe('armed t.1')
    const { table, nowMs } = play.bar().wait(MIN_S)
    const shown = shownNow(undefined, table, nowMs, told)
    expect(named(shown.card)).toBe('armed t.3')
  })

  it('leaves it as well when another pot is washed off, put off or told of', () => {
    const play = begun()
    expect(named(play.card)).toBe('armed t.1')
    play.act({ do: 'logged', potId: potId(4), agoMin: 0 })
    expect(named(play.card)).toBe('armed t.1')
    play.wait(20).act({ do: 'wash-off', potId: potId(4) })
    expect(named(play.card)).toBe('armed t.1')
    play.schedule = exchanged(play.schedule!, potId(1), potId(5))
    expect(named(play.card)).toBe('armed t.1')
    play.act({ do: 'put-off', potIds: [potId(2)], later: true })
    expect(named(play.card)).toBe('armed t.1')
    // Gone itself, it moves on.
    play.act({ do: 'gone', potId: potId(1) })
    expect(named(play.card)).not.toBe('armed t.1')
  })

  it('fills hands that are free', () => {
    const play = begun(['GB'], 2)
    const told = play.schedule
    play.schedule = { ...told!, plan: { ...told!.plan, actions: [] } }
    const idle = shownNow(undefined, play.table, play.nowMs, play.schedule)
    const free: Shown = { ...idle, card: { kind: 'wait', after: [] } }
    expect(shownNow(free, play.table, play.nowMs, told).card.kind).toBe('armed')
  })
})

describe('while its line is said', () => {
  it('no clock changes a card, for as long as a line can last, and any hit does', () => {
    const play = begun()
    const at = (s: number) => play.nowMs + s * 1000
    const shown = shownNow(undefined, play.table, at(299), play.schedule)
    expect(named(shown.card)).toBe('armed t.1')
    expect(shownNow(shown, play.table, at(302), play.schedule, true).card).toBe(shown.card)
    expect(shownNow(shown, play.table, at(302), play.schedule, false).card.kind).toBe('stir')
    expect(shownNow(shown, play.table, at(320), play.schedule, true).card.kind).toBe('stir')
    const hit = play.wait(200).act({ do: 'pick', potId: potId(2) })
    expect(named(shownNow(shown, hit.table, hit.nowMs, hit.schedule, true).card)).toBe('armed t.2')
  })
})

describe('a hold', () => {
  it('shows the card that was left, and comes back to it whatever was planned meanwhile', () => {
    const play = begun()
    play.act({ do: 'hold' })
    expect(play.card).toMatchObject({ kind: 'held', left: { kind: 'armed', armed: { potId: potId(1) } } })
    const { card } = play
    expect(card.kind === 'held' && card.lines[0]).toEqual({ potId: potId(1), at: 'dip-next' })
    play.schedule = exchanged(play.schedule!, potId(1), potId(3))
    expect(play.card).toMatchObject({ kind: 'held', left: { kind: 'armed', armed: { potId: potId(1) } } })
    play.wait(30).act({ do: 'resume' })
    expect(named(play.card)).toBe('armed t.1')
    // Its stir is too old when the hands come back: it is still where they were.
    play.act({ do: 'hold' }).wait(10 * MIN_S)
    const later = play.card
    expect(later).toMatchObject({ kind: 'held', left: { kind: 'armed', armed: { potId: potId(1) } } })
    expect(later.kind === 'held' && later.lines[0]).toEqual({ potId: potId(1), at: 'dip-next' })
    expect(play.act({ do: 'resume' }).card.kind).toBe('stir')
  })
})

describe('stirs', () => {
  it('come as late as the dip they are for allows, where the order has them early', () => {
    const play = begun(['GB'], 1)
    play.bar().wait(MIN_S)
    play.act({ do: 'sponged', potId: potId(1) })
    const { plan } = play.schedule!
    const actions = plan.actions.map((action) =>
      action.kind === 'open'
        ? { ...action, startS: action.startS - 480, endS: action.endS - 480, reason: 'stirInWait' as const }
        : action,
    )
    const [open, dip] = tasksOf(play.table, { ...play.schedule!, plan: { ...plan, actions } })
    expect([open!.is, dip!.is]).toEqual(['open', 'dip'])
    expect(open!.endAt).toBe(dip!.startAt)
    expect(open!.endAt - open!.startAt).toBe(180_000)
    expect(open!.reason).toBe('inWait')
  })

  it('come after a dip that the last one is good for, and are not said to be too old while they are good', () => {
    const play = begun()
    const { plan } = play.schedule!
    const nowS = play.nowMs / 1000
    const restir = {
      kind: 'restir' as const,
      bucketId: 'G',
      decant: false,
      dips: 9,
      potter: 0,
      startS: nowS,
      endS: nowS + 60,
      reason: 'stale' as const,
    }
    const told: FollowedSchedule = {
      ...play.schedule!,
      askedAt: play.nowMs,
      plan: { ...plan, actions: [restir, ...plan.actions.filter(({ kind }) => kind === 'dip')] },
    }
    expect(cardOf(play.table, play.nowMs + 1000, told).kind).toBe('armed')
    expect(cardOf(play.table, play.nowMs + 250_000, told)).toMatchObject({
      kind: 'stir',
      reason: 'staleByDip',
    })
    expect(cardOf(play.table, play.nowMs + 301_000, told)).toMatchObject({ kind: 'stir', reason: 'stale' })
  })

  it('have no reason of the dip that waits behind them', () => {
    const play = begun()
    expect(play.card).toMatchObject({ kind: 'armed', reason: expect.any(String) })
    play.wait(301)
    expect(play.card).toMatchObject({ kind: 'stir', reason: 'stale' })
  })
})

describe('waxing and wiping', () => {
  it('go before a stir, each in the order of places, and a stir is followed by its dip', () => {
    const play = new PlannedPlay()
    play.work = 3000
    play.act({ do: 'lay-demo' })
    const done: string[] = []
    for (let i = 0; i < 3000 && done.length < 20; i++) {
      const { card } = play
      const { kind, big } = card
      if (!big || kind === 'count') play.wait(5)
      else {
        if (kind !== 'drip' && kind !== 'wax-pan')
          done.push(`${kind} ${card.kind === 'wipe' ? card.potId : ''}`.trim())
        play.wait(kind === 'stir' ? (card.change ? 180 : 60) : 0).bar()
        if (kind !== 'stir' && kind !== 'wax-pan') play.wait(55)
      }
    }
    const stirs = done.slice(0, -1).flatMap((kind, i) => (kind === 'stir' ? [i] : []))
    expect(stirs.length).toBeGreaterThan(0)
    for (const i of stirs) expect(done[i + 1], done.join()).toBe('armed')
    // Runs of wipes, but for the last of one, which may be dipped at once.
    const wipes = done.map((each) => (each.startsWith('wipe') ? each : '|')).join()
    for (const run of wipes.split('|')) {
      const pots = run.split(',').filter(Boolean).slice(1)
      expect(pots).toEqual([...pots].sort())
    }
  })
})

describe('what is left to do', () => {
  it('counts every pot that still wants the step, those whose wax sets as well', () => {
    const play = new Play().act({ do: 'lay-demo' })
    const left = () => (play.card.kind === 'wax' || play.card.kind === 'wipe' ? play.card.left : undefined)
    expect(left()).toBe(8)
    for (let i = 0; i < 8; i++) play.bar().wait(60)
    expect(play.card).toMatchObject({ kind: 'wax-pan', why: 'waxed' })
    play.bar()
    expect(play.card.kind).toBe('wipe')
    expect(left()).toBe(8)
    play.bar()
    expect(left()).toBe(7)
  })
})

describe('pots that are kept on purpose', () => {
  it('are named with their bucket and its hour, and one can be done now', () => {
    const play = begun(['GB'], 2)
    play
      .bar()
      .wait(MIN_S)
      .act({ do: 'sponged', potId: potId(1) })
    play
      .wait(8 * MIN_S)
      .bar()
      .wait(MIN_S)
      .bar()
      .wait(MIN_S)
    play.act({ do: 'sponged', potId: potId(2) })
    let kept: Card | undefined
    for (let i = 0; i < 1500 && !kept; i++) {
      const { card } = play.wait(1)
      if (card.kind === 'wait' && card.kept?.length) kept = card
    }
    expect(kept).toMatchObject({
      reason: 'heldSavesStir',
      kept: [{ potIds: [potId(1)], bucketId: 'B', at: expect.any(Number) }],
      offer: { do: 'pick', potId: potId(1) },
    })
    expect(kept?.kind === 'wait' && kept.kept?.[0]?.at).toBeGreaterThan(play.nowMs)
    // The other potter has the coat before: for these hands it is not kept.
    const { plan } = play.schedule!
    const actions = plan.actions.map((action) =>
      action.kind === 'dip' && action.potId === potId(1) ? { ...action, bucketId: 'H' } : action,
    )
    const theirs = cardOf(play.table, play.nowMs, { ...play.schedule!, plan: { ...plan, actions } })
    expect(theirs).toMatchObject({ kind: 'wait', kept: [] })
    play.act({ do: 'pick', potId: potId(1) })
    expect(play.card).toMatchObject({ kind: 'stir', change: true, bucketId: 'B' })
  })
})

describe('a foot to be checked', () => {
  it.each([
    ['an order of work', true],
    ['the simple rule', false],
  ])('is what a pot with its last coat is waited for, by %s', (_by, ordered) => {
    const play = begun(['G'], 2)
    play.bar().wait(MIN_S)
    play.bar().wait(MIN_S)
    play.act({ do: 'sponged', potId: potId(2) })
    const due = () => cardOf(play.table, play.nowMs, ordered ? play.schedule : undefined)
    // What ends the sitting fills that wait, all but the floor.
    for (const kind of ['lid', 'tools']) {
      expect(due().kind).toBe(kind)
      play.act(due().big!)
    }
    expect(due()).toMatchObject({ kind: 'wait', next: { what: 'foot-check', potId: potId(1) } })
    play.wait(12 * MIN_S)
    expect(named(due())).toBe(`foot-check ${potId(1)}`)
  })

  it('fills a gap of more than twenty seconds before the next dip, and is not begun in a shorter one', () => {
    const play = begun(['G'], 2)
    play.bar().wait(MIN_S)
    play.act({ do: 'sponged', potId: potId(1) }).wait(600 * MIN_S)
    play.act({ do: 'stirred', bucketId: 'G' })
    const dipIn = (s: number): FollowedSchedule => {
      const startS = play.nowMs / 1000 + s
      const dip = play.schedule!.plan.actions.find(({ kind }) => kind === 'dip')!
      const held = { ...dip, heldS: 60, startS, endS: startS + MIN_S, reason: 'heldSavesStir' as const }
      return { ...play.schedule!, plan: { ...play.schedule!.plan, actions: [held] } }
    }
    expect(named(cardOf(play.table, play.nowMs, dipIn(21)))).toBe(`foot-check ${potId(1)}`)
    expect(cardOf(play.table, play.nowMs, dipIn(19)).kind).toBe('wait')
  })
})
