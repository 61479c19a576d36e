import { describe, expect, it } from 'vitest'
import { otherView, viewOf } from '../../../src/table/model/potters.ts'
import { potId, twelve } from '../../fixtures/twelve.ts'
import { PlannedPlay } from './planned.ts'

const MIN_S = 60

/** Twelve pots, every wax long set, two potters at the phone. */
function two(planned: boolean): PlannedPlay {
  const play = new PlannedPlay()
  twelve().forEach((events, i) => {
    play.append(events, `laid-${i}`)
  })
  play.append([{ kind: 'settings-set', settings: { potters: 2 } }], 'two')
  play.wait(3600)
  play.work = 20_000
  return planned ? play.ask() : play
}

/** Pots and buckets that a card would have the hands take. */
function wants(play: PlannedPlay, potter: 0 | 1) {
  const card = play.cardOf(potter)
  const pots = card.kind === 'armed' ? [card.armed.potId] : card.kind === 'ready' ? card.potIds : []
  const bucketId =
    card.kind === 'armed' ? card.armed.bucketId : card.kind === 'stir' ? card.bucketId : undefined
  return { card, pots, bucketId }
}

describe('two pairs of hands at one table', () => {
  it('turned twice is the same table', () => {
    const { table } = two(false).act({ do: 'stirred', bucketId: 'G' })
    expect(otherView(structuredClone(otherView(table)))).toEqual(table)
    expect(viewOf(table, 1).openBucket).toBeUndefined()
    expect(viewOf(table, 0).openBucket).toBe('G')
  })

  it('each has an own card, and no bucket is open in both', () => {
    const play = two(true)
    const [first, second] = [wants(play, 0), wants(play, 1)]
    expect(first.card.kind).toBe('stir')
    expect(second.card.kind).toMatch(/stir|wait/)
    expect(first.bucketId).not.toBe(second.bucketId)
    play.potter = 0
    play.wait(3 * MIN_S).act({ do: 'stirred', bucketId: 'G' })
    play.potter = 1
    play.act({ do: 'stirred', bucketId: 'B' })
    expect(viewOf(play.table, 0).openBucket).toBe('G')
    expect(viewOf(play.table, 1).openBucket).toBe('B')
    play.act({ do: 'stirred', bucketId: 'G' })
    expect(viewOf(play.table, 0).openBucket).toBeUndefined()
  })

  it('a pot in one pair of hands is not offered to the other, nor taken by it', () => {
    const play = two(true)
    play.wait(3 * MIN_S).bar()
    const taken = wants(play, 0).pots[0]!
    play.bar()
    play.potter = 1
    expect(play.cardOf(1)).toMatchObject({ kind: 'count', potId: taken })
    const other = { do: 'start', potId: potId(7), again: false, unstirred: true } as const
    expect(play.try(other)).toMatchObject({ code: 'counting' })
    play.wait(12)
    expect(wants(play, 1).pots).not.toContain(taken)
    expect(play.try({ ...other, potId: taken })).toMatchObject({ code: 'other-hands' })
    // It still drips over its bucket: nobody else dips there.
    const sameBucket = play.table.pots[potId(4)]!
    expect(sameBucket.dips).toEqual([])
    expect(play.try({ ...other, potId: potId(4) })).toMatchObject({ code: 'bucket-busy' })
  })

  it('without an order of work the second is not shown the pot on the first one’s card', () => {
    const play = two(false)
    play.schedule = undefined
    play.append([{ kind: 'stirred', bucketId: 'G' }], 'g')
    play.append([{ kind: 'stirred', bucketId: 'B', hands: 1 }], 'b')
    const [first, second] = [wants(play, 0), wants(play, 1)]
    expect(first.card.kind).toBe('armed')
    expect(second.card.kind).toBe('armed')
    expect(first.pots).not.toEqual(second.pots)
  })

  it('an event carries whose it was, the first hands’ by silence', () => {
    const play = two(true)
    play.act({ do: 'stirred', bucketId: 'G' })
    expect(play.events.at(-1)!.event).toEqual({ kind: 'stirred', bucketId: 'G' })
    play.potter = 1
    play.act({ do: 'stirred', bucketId: 'B' })
    expect(play.events.at(-1)!.event).toEqual({ kind: 'stirred', bucketId: 'B', hands: 1 })
  })

  it('what somebody else dipped is theirs: told afterwards, or taken out of these hands', () => {
    const play = two(false)
    play.potter = 0
    play.act({ do: 'logged', potId: potId(1), agoMin: 5, by: 1 })
    expect(play.table.pots[potId(1)]!.dips).toMatchObject([{ hands: 1, how: 'logged' }])
    expect(viewOf(play.table, 1).openBucket).toBe('G')
    expect(viewOf(play.table, 0).openBucket).toBeUndefined()
    play.potter = 1
    play.act({ do: 'logged', potId: potId(2), agoMin: 2, by: 0 })
    expect(play.table.pots[potId(2)]!.dips[0]!.hands).toBeUndefined()
    play.potter = 0
    play.act({ do: 'stirred', bucketId: 'G' })
    play.act({ do: 'start', potId: potId(3), again: false, unstirred: false }).wait(20)
    const dip = play.table.pots[potId(3)]!.dips[0]!
    expect(play.cardOf(0)).toMatchObject({ potId: potId(3) })
    play.act({ do: 'was-other-hands', dipId: dip.dipId })
    expect(play.table.pots[potId(3)]!.dips).toMatchObject([{ ...dip, hands: 1 }])
    expect(play.cardOf(0)).not.toMatchObject({ potId: potId(3) })
    expect(play.cardOf(1)).toMatchObject({ potId: potId(3) })
    play.act({ do: 'was-other-hands', dipId: dip.dipId })
    expect(play.table.pots[potId(3)]!.dips).toEqual([dip])
  })

  it('a bucket stays open with the hands that stirred it, whoever dipped into it', () => {
    const play = two(true)
    play.potter = 0
    play.wait(1).act({ do: 'stirred', bucketId: 'G' })
    play.act({ do: 'start', potId: potId(1), again: false, unstirred: false }).wait(70)
    const dip = play.table.pots[potId(1)]!.dips[0]!
    const goesOn = () => {
      expect(viewOf(play.table, 0).openBucket).toBe('G')
      expect(play.cardOf(0)).toMatchObject({ kind: 'armed', armed: { bucketId: 'G' } })
    }
    goesOn()
    play.act({ do: 'was-other-hands', dipId: dip.dipId })
    goesOn()
    const left = Object.values(play.table.pots).find(({ dips }) => dips.length === 0)!
    play.act({ do: 'logged', potId: left.facts.potId, agoMin: 0, by: 1 })
    goesOn()
  })

  it('two at work are done sooner than one, every pot with every coat', () => {
    const play = two(true)
    const began = play.nowMs
    const coats = () => Object.values(play.table.pots).reduce((sum, pot) => sum + pot.dips.length, 0)
    const busyUntil = [began, began]
    for (let s = 0; s < 4 * 3600 && coats() < 30; s++) {
      for (const potter of [0, 1] as const) {
        if (play.nowMs < busyUntil[potter]!) continue
        const { card } = wants(play, potter)
        play.potter = potter
        if (card.kind === 'armed') {
          play.bar()
          busyUntil[potter] = play.nowMs + MIN_S * 1000
        } else if (card.kind === 'stir') {
          // The stir is logged when it is done.
          const spent = card.change ? 3 * MIN_S : MIN_S
          const key = `${card.bucketId}`
          if (stirring[potter]?.key !== key) stirring[potter] = { key, until: play.nowMs + spent * 1000 }
          else if (play.nowMs >= stirring[potter]!.until) {
            play.bar()
            stirring[potter] = undefined
          }
        } else if (card.kind === 'drip' && card.done) play.bar()
      }
      play.wait(5)
    }
    expect(coats()).toBe(30)
    expect((play.nowMs - began) / 60_000).toBeLessThan(47)
  })

  it('the second does not wait for ever for a bucket that the first have open and walked away from', () => {
    const play = two(true)
    play.work = 5000
    play.wait(3 * MIN_S).act({ do: 'stirred', bucketId: 'G' })
    play.potter = 1
    const coats = () => Object.values(play.table.pots).reduce((sum, pot) => sum + pot.dips.length, 0)
    let takenAfter = Number.POSITIVE_INFINITY
    for (let minute = 0; minute < 150 && coats() < 30; minute++) {
      const { card } = wants(play, 1)
      if (card.kind === 'stir') play.wait((card.change ? 3 : 1) * MIN_S).bar()
      else if (card.kind === 'armed' || card.kind === 'foot-check') play.bar().wait(MIN_S)
      else play.wait(MIN_S).ask()
      if (viewOf(play.table, 1).openBucket === 'G') takenAfter = Math.min(takenAfter, minute)
      // Back at the table, the first have something to do at once, though nobody counts on them.
      if (minute === 20) expect(wants(play, 0).card.kind).toMatch(/stir|armed/)
    }
    expect(takenAfter).toBeLessThan(30)
    expect(coats()).toBe(30)
  })
})

/** What each pair of hands is stirring, and until when. */
const stirring: ({ key: string; until: number } | undefined)[] = [undefined, undefined]
