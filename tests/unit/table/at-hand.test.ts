import { describe, expect, it } from 'vitest'
import type { Card } from '../../../src/table/card/card.ts'
import { potsOnCard } from '../../../src/table/card/card.ts'
import { cardOf } from '../../../src/table/card/card-now.ts'
import { type Shown, shownNow } from '../../../src/table/card/shown.ts'
import { touchFirst } from '../../../src/table/order/touch-first.ts'
import { stepsOf } from '../../../src/table/steps/work.ts'
import { toldDip } from '../../fixtures/told-dip.ts'
import { potId, twelve } from '../../fixtures/twelve.ts'
import { begun, PlannedPlay } from './planned.ts'

const MIN_S = 60

const named = (card: Card): string => `${card.kind} ${potsOnCard(card).join()}`

describe('work that hands are at', () => {
  const kind = (play: PlannedPlay) => play.card.kind

  it('stays on the card when another foot comes due: the hit is meant for the pot in hand', () => {
    const play = begun(['G'], 2)
    const clean = (number: number) => play.act({ do: 'sponged', potId: potId(number) })
    // The second pot goes in first, and its foot can be checked first.
    play
      .act({ do: 'pick', potId: potId(2) })
      .bar()
      .wait(MIN_S)
    clean(2).wait(MIN_S).bar().wait(MIN_S)
    clean(1)
    while (kind(play) !== 'foot-check') play.wait(1)
    expect(named(play.card)).toBe('foot-check t.2')
    const both = () => stepsOf(play.table, play.nowMs).every(({ step }) => step.is === 'foot-check')
    while (!both()) play.wait(1)
    expect(named(play.card)).toBe('foot-check t.2')
    expect(named(play.bar().card)).toBe('foot-check t.1')
  })

  it('is a stir first where a pot of their own choice would meet one that is too old by START', () => {
    const left = (s: number) => {
      const play = begun(['G'], 2).wait(5 * MIN_S - s)
      play.act({ do: 'pick', potId: potId(2) })
      return play
    }
    expect(kind(left(59))).toBe('stir')
    expect(kind(left(59).bar())).toBe('armed')
    const aimed = left(70)
    for (let s = 0; s < 65; s++) expect(kind(aimed.wait(1))).toBe('armed')
  })

  it('stays when the next stir comes due, until a hit or for as long as a step can take', () => {
    const play = begun(['GB'], 2)
    play.bar().wait(MIN_S)
    play.act({ do: 'sponged', potId: potId(1) })
    const told = play.schedule!
    const shown: Shown = {
      card: {
        kind: 'ready',
        potIds: [potId(1)],
        bucketId: 'B',
        big: { do: 'touched', potIds: [potId(1)], dry: true },
      },
      schedule: told,
      table: play.table,
      since: play.nowMs,
    }
    const then = (s: number) => shownNow(shown, play.table, play.nowMs + s * 1000, told).card.kind
    expect(then(30)).toBe('ready')
    expect(then(299)).toBe('ready')
    expect(then(301)).not.toBe('ready')
    play.wait(30).act({ do: 'stirred', bucketId: 'G' })
    expect(shownNow(shown, play.table, play.nowMs, told).card.kind).not.toBe('ready')
  })
})

describe('a pot that is about to go in', () => {
  it('stays until its bucket has to be stirred, whatever comes due meanwhile', () => {
    const play = begun()
    const { table, nowMs, schedule } = play
    // Another order, that has the third pot first.
    const turned = schedule!.plan.actions.filter(
      ({ kind, ...at }) => kind !== 'dip' || !('potId' in at) || at.potId === potId(3),
    )
    const other = { ...schedule!, plan: { ...schedule!.plan, actions: turned } }
    const shown = { ...shownNow(undefined, table, nowMs, schedule), schedule: other }
    expect(named(cardOf(table, nowMs, other))).toBe('armed t.3')
    expect(named(shownNow(shown, table, nowMs + 60_000, other).card)).toBe('armed t.1')
    expect(shownNow(shown, table, nowMs + 302_000, other).card.kind).toBe('stir')
  })

  it('is none any more once it is washed off', () => {
    const play = begun()
    play.act({ do: 'pick', potId: potId(2) })
    expect(named(play.card)).toBe('armed t.2')
    play.act({ do: 'wash-off', potId: potId(2) })
    expect(play.table.picked).toBeUndefined()
    expect(named(play.card)).toBe('armed t.1')
  })
})

describe('the pot to touch first', () => {
  it('is offered where a coat is still to come: another has nothing to answer', () => {
    const play = begun(['GB'], 2)
    const out = { coat: 1, bucketId: 'B', outAt: play.nowMs - 60_000 }
    play.append([toldDip({ potId: potId(1), ...out, coat: 0 }), toldDip({ potId: potId(1), ...out })], 'told')
    play.append([{ kind: 'sponged', potId: potId(1), implied: true }], 'down')
    play
      .act({ do: 'pick', potId: potId(2) })
      .bar()
      .wait(MIN_S)
    play.act({ do: 'sponged', potId: potId(2) })
    const touch = (number: number) => {
      const told = { ...play.schedule!, touch: { potId: potId(number), others: 1 } }
      const card = cardOf(play.table, play.nowMs, told)
      return card.kind === 'wait' ? card.touch?.potId : card.kind
    }
    expect(touch(2)).toBe(potId(2))
    expect(touch(1)).toBeUndefined()
  })

  it('counts the others that have a coat to come: of those that are done nothing follows', () => {
    const play = new PlannedPlay()
    for (const [i, events] of twelve(['GB'], 6).entries()) play.append(events, `laid-${i}`)
    play.append([{ kind: 'settings-set', settings: { readyMeans: 'touch' } }], 'touched')
    play.wait(3600)
    const told = (number: number, coat: number) =>
      toldDip({ potId: potId(number), coat, bucketId: 'GB'[coat]!, outAt: play.nowMs - 120_000 })
    const coats = [1, 2, 3, 4, 5, 6].flatMap((number) =>
      number <= 2 ? [told(number, 0)] : [told(number, 0), told(number, 1)],
    )
    play.append(coats, 'told')
    for (let number = 1; number <= 6; number++)
      play.append([{ kind: 'sponged', potId: potId(number), implied: true }], `down-${number}`)
    expect(touchFirst(play.table, play.nowMs)?.others).toBe(1)
  })
})

describe('a stir of the open bucket', () => {
  it('comes after the touch of the pot that it is for, and gives way to it again where DRY is taken back', () => {
    const play = begun(['GB'], 1)
    play.append([{ kind: 'settings-set', settings: { readyMeans: 'touch', staleMin: 2 } }], 'touch')
    play.act({ do: 'logged', potId: potId(1), agoMin: 2 }).act({ do: 'stirred', bucketId: 'B' })
    play.wait(130).ask()
    const shown = () => named(cardOf(play.table, play.nowMs, play.schedule))
    expect(shown()).toBe('ready t.1')
    play.act({ do: 'touched', potIds: [potId(1)], dry: true })
    expect(shown()).toBe('stir ')
    play.wait(20).act({ do: 'take-back' })
    expect(shown()).toBe('ready t.1')
  })
})

describe('hands that are free', () => {
  it('are told until when: no wax sets for them before that', () => {
    const play = new PlannedPlay().act({ do: 'lay-demo' })
    play.work = 3000
    play.ask()
    const found: string[] = []
    let waits = 0
    const until = play.nowMs + 9 * 60_000
    for (let told: number | undefined; play.nowMs < until; ) {
      const { card } = play
      if (card.kind === 'wait') {
        if (told === undefined) waits++
        told = Math.max(told ?? 0, card.next?.at ?? 0)
        play.wait(1)
        continue
      }
      if (told !== undefined && card.kind === 'wipe' && play.nowMs < told - 1500)
        found.push(`${named(card)} ${(told - play.nowMs) / 1000} s early`)
      told = undefined
      if (card.big && card.kind !== 'count') play.wait(30).act(play.card.big!)
      else play.wait(5)
    }
    expect(waits).toBeGreaterThan(0)
    expect(found).toEqual([])
  })
})
