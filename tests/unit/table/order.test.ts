import { describe, expect, it } from 'vitest'
import type { Card } from '../../../src/table/card/card.ts'
import { spokenOf } from '../../../src/table/card/spoken.ts'
import { handsLine } from '../../../src/table/order/hands-line.ts'
import { potId, twelve } from '../../fixtures/twelve.ts'
import { PlannedPlay } from './planned.ts'

/** A table of the twelve pots' kind, every wax long set. */
function laid(...of: Parameters<typeof twelve>): PlannedPlay {
  const play = new PlannedPlay()
  twelve(...of).forEach((events, i) => {
    play.append(events, `laid-${i}`)
  })
  return play.wait(3600)
}

const MIN_S = 60

/** The hit that starts the dip of this pot, its minute, and its foot. */
const dipAndSponge = (play: PlannedPlay, number: number) =>
  play
    .bar()
    .wait(MIN_S)
    .act({ do: 'sponged', potId: potId(number) })

/** Does what the card says and takes as long as the order of work expects; idle hands wait a second. */
function obey(play: PlannedPlay, done: string[]): void {
  const { card } = play
  if (card.kind === 'stir') {
    play.wait(card.change ? 3 * MIN_S : MIN_S).bar()
    done.push(`${card.change ? 'open' : 'stir'} ${card.bucketId}`)
  } else if (card.kind === 'armed') {
    play.bar().wait(MIN_S)
    done.push(`${card.armed.potId} ${card.armed.bucketId}`)
  } else if (card.kind === 'drip' && card.done) {
    play.bar()
    done.push('foot')
  } else play.wait(1)
}

const allDipped = (play: PlannedPlay, coats: number): boolean =>
  Object.values(play.table.pots).reduce((sum, pot) => sum + pot.dips.length, 0) === coats

describe('twelve pots (scenario 14)', () => {
  it('takes 47 min and 4 openings by the cards alone, one hit a coat, one a stir, and a foot where a wait follows', () => {
    const play = laid()
    // A search once; told again it only has to keep up.
    play.work = 300_000
    play.ask()
    play.work = 5000
    const hits = play.hits
    const began = play.nowMs
    const done: string[] = []
    expect(play.schedule!.plan.finishS * 1000 - began).toBe(47 * MIN_S * 1000)
    // Nobody's hands are as quick as the bare work, or hardly: told is a range from it on.
    const { finish, finishAt } = handsLine(play.table, play.schedule, play.nowMs)!
    expect(finish!.early).toBeLessThanOrEqual(began + 47.5 * MIN_S * 1000)
    expect(finishAt).toBeGreaterThan(began + 47 * MIN_S * 1000)
    expect(finish!.late).toBeGreaterThan(finishAt)
    for (let i = 0; i < 4000 && !allDipped(play, 30); i++) obey(play, done)
    expect((play.nowMs - began) / 60_000).toBe(47)
    expect(done.filter((what) => what.startsWith('open'))).toHaveLength(4)
    expect(done.filter((what) => what.startsWith('stir'))).toHaveLength(3)
    const feet = done.filter((what) => what === 'foot').length
    expect(feet).toBeLessThanOrEqual(4)
    expect(play.hits - hits).toBe(30 + 4 + 3 + feet)
    for (const pot of Object.values(play.table.pots))
      expect(pot.dips.some((dip) => dip.unstirred)).toBe(false)
  })

  it('shows a stir that is next as the drip ends: FOOT CLEAN does not turn into STIRRED', () => {
    const play = laid().ask()
    let stirs = 0
    for (let i = 0; i < 4000 && !allDipped(play, 30); i++) {
      const { kind } = play.card
      if (kind === 'armed' || kind === 'stir') play.wait(kind === 'stir' ? MIN_S : 0).bar()
      const before = play.card
      play.wait(1)
      if (play.card.kind !== 'stir') continue
      // Later than these hands need for the foot, the pot has long been put down.
      const quick = before.kind === 'drip' && play.nowMs < before.dip.tappedAt + (MIN_S + 2) * 1000
      expect(quick && before.until < play.nowMs - 1000).toBe(false)
      stirs++
    }
    expect(stirs).toBeGreaterThan(3)
  })

  it('says how many for a bucket, which of them is next, and what follows when', () => {
    const play = laid().ask()
    const began = play.nowMs
    expect(play.card).toMatchObject({
      kind: 'stir',
      change: true,
      visit: { dips: 9 },
      bucketId: 'G',
    })
    expect(spokenOf(play.table, play.card, play.nowMs).card?.words).toEqual(['stir', 'name:G:G', '9', 'dips'])
    const follows = (stirs: string | null) => handsLine(play.table, play.schedule, began, stirs)?.follows
    expect(follows('G')).toMatchObject({ bucketId: 'B' })
    // While the hands do something else first, the bucket of this visit is still to come.
    expect(follows(null)).toMatchObject({ bucketId: 'G' })
    play.wait(3 * MIN_S).bar()
    expect(play.card).toMatchObject({ kind: 'armed', nth: 1 })
    play.bar().wait(MIN_S)
    expect(play.card).toMatchObject({ kind: 'armed', nth: 2, inHand: potId(1) })
  })
})

describe('a pot of their own choice', () => {
  it('goes into its bucket once its time is over, and no other hour is told for it meanwhile', () => {
    const play = laid().ask()
    const done: string[] = []
    for (let i = 0; i < 4000 && !done.includes('open B'); i++) obey(play, done)
    play.wait(9 * MIN_S).ask()
    // Pots of a visit to come: dry by the clock, and kept for their bucket.
    const kept = Object.values(play.table.pots).find(
      (pot) =>
        pot.dips.length === 1 && play.table.stacks[pot.facts.stackId ?? '']?.coats[1]?.bucketId === 'H',
    )!
    expect(play.nowMs).toBeGreaterThan(kept.dips[0]!.outAt + 13 * MIN_S * 1000)
    expect(handsLine(play.table, play.schedule, play.nowMs)?.follows).toBeDefined()
    play.act({ do: 'pick', potId: kept.facts.potId })
    expect(play.card).toMatchObject({ kind: 'stir', change: true, bucketId: 'H' })
    expect(handsLine(play.table, play.schedule, play.nowMs)?.follows).toBeUndefined()
  })
})

describe('a calm bench', () => {
  it('keeps the card in hand while the hands are slow and answers come in', () => {
    const play = laid()
      .ask()
      .wait(3 * MIN_S)
      .bar()
    const shown = cardOf(play.card)
    expect(shown).toBe('armed t.1 G')
    for (let i = 0; i < 8; i++) {
      play.wait(30).ask()
      expect(cardOf(play.card)).toBe(shown)
    }
    // A hard rule broke: the stir is too old.
    play.wait(62).ask()
    expect(play.card).toMatchObject({ kind: 'stir', change: false, bucketId: 'G' })
  })

  it('goes on by what is left of the old order until the answer is there', () => {
    const play = laid()
      .ask()
      .wait(3 * MIN_S)
      .bar()
    const before = play.schedule
    play.bar().wait(MIN_S)
    play.schedule = before
    expect(play.card).toMatchObject({ kind: 'armed', armed: { potId: potId(2) } })
  })

  it('goes on by the simple rule without any order of work', () => {
    const play = laid()
    play.schedule = undefined
    expect(play.card).toMatchObject({ kind: 'stir', bucketId: 'G', visit: undefined })
  })
})

describe('hands free', () => {
  it('says until when, and what is stirred then', () => {
    const play = laid(['GB'], 1)
      .ask()
      .wait(3 * MIN_S)
      .bar()
    dipAndSponge(play, 1)
    const out = play.table.pots[potId(1)]!.dips[0]!.outAt
    const dryAt = out + (12 * 60 + 52) * 1000
    expect(play.card).toMatchObject({
      kind: 'wait',
      next: { what: 'stir', bucketId: 'B', at: dryAt - 180_000 },
    })
    while (play.card.kind === 'wait') play.wait(1)
    expect(play.nowMs).toBe(dryAt - 180_000)
    expect(play.card).toMatchObject({ kind: 'stir', change: true, bucketId: 'B' })
  })

  it('holds a ready pot on purpose where that saves a stir, and says so', () => {
    // Pot 2 comes eight minutes after pot 1: two stirs, or one and a little patience.
    const play = laid(['GB'], 2)
      .ask()
      .wait(3 * MIN_S)
      .bar()
    dipAndSponge(play, 1)
    play
      .wait(6 * MIN_S)
      .bar()
      .wait(MIN_S)
    dipAndSponge(play, 2)
    let heldS = 0
    let stirs = 0
    for (let i = 0; i < 3600 && !allDipped(play, 4); i++) {
      const { card } = play
      const ready = play.table.pots[potId(1)]!.dips[0]!.outAt + (12 * 60 + 52) * 1000
      if (card.kind === 'stir') stirs++
      if (card.kind === 'wait' && card.reason === 'heldSavesStir' && play.nowMs >= ready - 180_000) heldS++
      obey(play, [])
    }
    expect(stirs).toBe(1)
    expect(heldS).toBeGreaterThan(30)
    const [one, other] = [1, 2].map((number) => play.table.pots[potId(number)]!.dips[1]!)
    expect(other!.tappedAt - one!.tappedAt).toBeLessThanOrEqual(5 * MIN_S * 1000)
    expect(other!.tappedAt - play.table.pots[potId(2)]!.dips[0]!.outAt).toBeLessThan((12 * 60 + 53) * 1000)
  })
})

const cardOf = (card: Card): string =>
  card.kind === 'armed' ? `armed ${card.armed.potId} ${card.armed.bucketId}` : card.kind
