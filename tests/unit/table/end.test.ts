import { describe, expect, it } from 'vitest'
import { CARD_ROWS } from '../../../src/table/card/card.ts'
import { cardOf } from '../../../src/table/card/card-now.ts'
import { lastOf, lateBy, soonerSteps } from '../../../src/table/card/dry-sooner.ts'
import { potsThatDry } from '../../../src/table/card/end-card.ts'
import { outputsOf } from '../../../src/table/card/outputs.ts'
import { fold } from '../../../src/table/fold/fold.ts'
import type { Action } from '../../../src/table/model/action.ts'
import { viewOf } from '../../../src/table/model/potters.ts'
import { latestSitting } from '../../../src/table/steps/close-down.ts'
import { Play } from './play.ts'

const GATEPOST = { bucketId: 'demo.gatepost', cover: { kind: 'full' }, holdS: 3 } as const
const HEATHER = { bucketId: 'demo.heather', cover: { kind: 'collar', depthMm: 25 }, holdS: 3 } as const

/** The demo evening with these pots alone. */
function evening(...numbers: number[]): Play {
  const play = new Play().act({ do: 'lay-demo' })
  for (const { facts } of Object.values(play.table.pots))
    if (!numbers.includes(facts.number)) play.act({ do: 'gone', potId: facts.potId })
  return play
}
const id = (number: number) => `demo.${number}`

/** One coat of Gatepost on each of these, an hour ago; their feet are checked. */
function coated(...numbers: number[]): Play {
  const play = evening(...numbers)
  for (const number of numbers) {
    play.act({ do: 'set-plan', potId: id(number), coats: [GATEPOST] })
    play.act({ do: 'logged', potId: id(number), agoMin: 60 })
    play.act({ do: 'foot-signed', potId: id(number) })
  }
  return play
}

/** Kinds of the cards, from this one on, each hit once. */
function kindsToTheEnd(play: Play): string[] {
  const kinds: string[] = []
  for (let i = 0; i < 30 && play.card.kind !== 'closed'; i++) {
    kinds.push(play.card.kind)
    play.bar()
  }
  return [...kinds, play.card.kind]
}

/** Bar alone, time passing where it rests, until a card of the end or the closing one shows. */
function untilEnd(play: Play): Play {
  for (let i = 0; i < 3000; i++) {
    const { card } = play
    if (CARD_ROWS[card.kind]?.ends || card.kind === 'closed') return play
    if (card.big && card.kind !== 'count') play.bar()
    else play.wait(10)
  }
  throw new Error(`no end but ${play.card.kind}`)
}

describe('the end of a sitting', () => {
  it('goes by the bar alone, in its order, a hit a step, and says what the sitting came to', () => {
    const play = evening(31, 34)
    play.act({ do: 'wax-pan', is: 'on' })
    const kinds: string[] = []
    for (let i = 0; i < 6000 && play.card.kind !== 'closed'; i++) {
      const { card } = play
      if (card.kind !== kinds.at(-1)) kinds.push(card.kind)
      if (card.kind === 'wax-pan' && card.why !== 'closing') play.act({ do: 'wax-pan', is: 'watched' })
      else if (card.big && card.kind !== 'count') play.bar()
      else play.wait(10)
    }
    const from = kinds.lastIndexOf('return')
    const ends = kinds.slice(from).filter((kind) => kind !== 'wait' && kind !== 'foot-check')
    expect(ends).toEqual(['return', 'lid', 'wax-pan', 'tools', 'floor'])
    expect(play.card).toMatchObject({ pots: 2, coats: 5, left: [] })
    const card = play.card.kind === 'closed' ? play.card : undefined
    expect(card?.dry.map(({ potId }) => potId)).toEqual([id(31), id(34)])
    expect(Object.values(play.table.buckets).every(({ lid }) => lid !== undefined)).toBe(true)
    expect(play.table.pan).toBeUndefined()
    expect(play.table.openBucket).toBeUndefined()
  })

  it('has nothing of what was not used, and no pan that is off', () => {
    expect(kindsToTheEnd(coated(31))).toEqual(['lid', 'tools', 'floor', 'closed'])
  })

  it('comes while the last coats still dry, no foot waits for its hour, and the floor is mopped after the last', () => {
    const play = evening(31)
    play.act({ do: 'set-plan', potId: id(31), coats: [GATEPOST] })
    play.act({ do: 'logged', potId: id(31), agoMin: 0 })
    for (const kind of ['lid', 'tools']) {
      expect(play.card.kind).toBe(kind)
      play.bar()
    }
    const { card } = play
    expect(card).toMatchObject({ kind: 'wait', next: { what: 'foot-check', potId: id(31) } })
    // The offer of the bar at rest: its foot now.
    if (card.offer) play.act(card.offer)
    expect(play.card).toMatchObject({ kind: 'foot-check', potId: id(31), left: 1 })
    expect(play.bar().card.kind).toBe('floor')
    expect(play.bar().card.kind).toBe('closed')
  })

  it('logs the level as computed with the lid, less what the dips took; one that was read stands', () => {
    const play = coated(31)
    const { card } = play
    if (card.kind !== 'lid' || !card.level) throw new Error(`no lid but ${card.kind}`)
    expect(card.level.litres).toBeLessThan(12)
    expect(card.level.litres).toBeGreaterThan(11.8)
    play.bar()
    expect(play.table.buckets['demo.gatepost']?.level).toEqual({ at: play.nowMs, litres: card.level.litres })
    expect(play.table.hits.at(-1)).toMatchObject({ kind: 'lid-on', bucketId: 'demo.gatepost' })

    const read = coated(31).act({ do: 'read-level', bucketId: 'demo.gatepost', litres: 9.5 })
    expect(read.card).toMatchObject({ kind: 'lid', levelRead: true, level: { litres: 9.5 } })
    const at = read.table.buckets['demo.gatepost']?.level?.at
    read.wait(60).bar()
    expect(read.table.buckets['demo.gatepost']?.level).toEqual({ at, litres: 9.5 })
  })

  it('takes every step back and puts it back, as if nothing had been', () => {
    const play = coated(31)
    for (const kind of ['lid', 'tools', 'floor']) {
      const before = play.table
      expect(play.card.kind).toBe(kind)
      play.bar()
      const after = play.table
      play.act({ do: 'take-back' })
      expect({ ...play.table, takenBack: undefined }).toEqual({ ...before, takenBack: undefined })
      expect(play.card.kind).toBe(kind)
      play.act({ do: 'put-back' })
      expect(play.table.buckets).toEqual(after.buckets)
      expect([play.table.tools, play.table.floor]).toEqual([after.tools, after.floor])
    }
    expect(play.card.kind).toBe('closed')
    expect(fold(play.events)).toEqual(play.table)
  })

  it('leaves out what is not to be done now, says so, and has it done after all', () => {
    const play = coated(31)
    play.act({ do: 'lid-on', bucketId: 'demo.gatepost', left: true })
    play.bar()
    play.act({ do: 'floor-mopped', left: true })
    const left = (): readonly Action[] => (play.card.kind === 'closed' ? play.card.left : [])
    expect(left()).toEqual([{ do: 'lid-on', bucketId: 'demo.gatepost' }, { do: 'floor-mopped' }])
    for (const action of left()) play.act(action)
    expect(left()).toEqual([])
  })

  it('opens again for a coat planned or a pot added after it, and nothing done is asked for twice', () => {
    const play = coated(31, 32)
    play.act({ do: 'set-plan', potId: id(32), coats: [GATEPOST] })
    kindsToTheEnd(play)
    expect(play.card).toMatchObject({ kind: 'closed', pots: 2, coats: 2 })
    const lids = play.table.buckets['demo.gatepost']?.lid
    play.wait(1800).act({ do: 'set-plan', potId: id(32), coats: [GATEPOST, HEATHER] })
    expect(['ready', 'stir', 'armed']).toContain(play.card.kind)
    untilEnd(play)
    // The collar went back before; the first bucket was not opened again.
    expect(play.table.collar).toBeUndefined()
    expect(play.card).toMatchObject({ kind: 'lid', bucketId: 'demo.heather', more: 0 })
    expect(play.table.buckets['demo.gatepost']?.lid).toEqual(lids)
    // The foot is felt again, as glaze went on since.
    const kinds: string[] = []
    for (let i = 0; i < 2000 && play.card.kind !== 'closed'; i++) {
      if (play.card.kind !== kinds.at(-1)) kinds.push(play.card.kind)
      if (play.card.big) play.bar()
      else play.wait(10)
    }
    expect(kinds.filter((kind) => kind !== 'wait')).toEqual(['lid', 'tools', 'foot-check', 'floor'])
    expect(play.card).toMatchObject({ kind: 'closed', pots: 2, coats: 3 })
  })

  it('counts the next sitting anew, and has all of it put away anew', () => {
    const play = coated(31, 32)
    kindsToTheEnd(play)
    play.wait(20 * 3600).act({ do: 'set-plan', potId: id(31), coats: [GATEPOST, GATEPOST] })
    play.act({ do: 'logged', potId: id(31), agoMin: 60 }).act({ do: 'foot-signed', potId: id(31) })
    expect(latestSitting(play.table)).toMatchObject({ pots: 1, coats: 1 })
    expect(kindsToTheEnd(play)).toEqual(['lid', 'tools', 'floor', 'closed'])
  })

  it('does not come while a pot of this sitting has a coat to come, and does past those put off', () => {
    const play = coated(31)
    play.append(
      [
        {
          kind: 'pot-set',
          pot: {
            ...play.table.pots[id(31)]!.facts,
            potId: 'new',
            number: 50,
            place: { board: 'C', spot: 1 },
          },
        },
      ],
      'added',
    )
    expect(play.card.kind).toBe('wax')
    play.act({ do: 'put-off', potIds: ['new'], later: true })
    expect(kindsToTheEnd(play)).toEqual(['lid', 'tools', 'floor', 'closed'])
    play.act({ do: 'put-off', potIds: ['new'], later: false })
    expect(play.card.kind).toBe('wax')
  })

  it('comes before a wait that is longer than hands stay, and the wait shows again after it', () => {
    const play = evening(36)
    play.act({ do: 'set-air', air: { tempC: 8, rh: 0.98, draught: 'still' } })
    play.act({ do: 'logged', potId: id(36), agoMin: 0 })
    expect(play.card.kind).toBe('lid')
    play.bar().bar().bar()
    expect(play.card).toMatchObject({ kind: 'wait', next: { potId: id(36), what: 'touch' } })
  })

  it('is whose hands come first, of two at the phone, the other’s collar glaze too', () => {
    const play = coated(31, 32).act({ do: 'set-settings', settings: { potters: 2 } })
    play.append([{ kind: 'decanted', bucketId: 'demo.heather', litres: 0.5, hands: 1 }], 'decant')
    const both = () => ([0, 1] as const).map((hands) => cardOf(viewOf(play.table, hands), play.nowMs))
    expect(both()).toMatchObject([{ kind: 'return' }, { kind: 'return' }])
    play.bar()
    expect(viewOf(play.table, 1).collar).toBeUndefined()
    expect(both()).toMatchObject([{ kind: 'lid' }, { kind: 'lid' }])
    play.bar()
    expect(both()).toMatchObject([{ kind: 'tools' }, { kind: 'tools' }])
  })

  it('keeps the screen on until it is done', () => {
    const play = coated(31).wait(6 * 3600)
    const awake = () => outputsOf(play.table, play.nowMs, play.card).awake
    expect([play.card.kind, awake()]).toEqual(['lid', true])
    kindsToTheEnd(play)
    expect(awake()).toBe(false)
  })
})

describe('what would have the pots dry sooner', () => {
  const helps = (play: Play) => {
    const steps = soonerSteps(play.table, play.nowMs)
    for (;;) {
      const { done, value } = steps.next()
      if (done) return value
    }
  }

  it('is what the forecast gains by it, the cheapest first, and nothing once they are dry', () => {
    const play = coated(31, 37)
    const found = helps(play)
    expect(found.map(({ cut }) => cut)).toEqual(['fan', 'otherBoard', 'candling'])
    const before = lastOf(potsThatDry(play.table))!
    for (const { action, last, gainMs } of found) {
      expect(gainMs).toBeGreaterThan(0)
      expect(last.likely).toBeLessThan(before.likely)
      const after = coated(31, 37).act(action)
      expect(lastOf(potsThatDry(after.table))!.likely).toBeCloseTo(last.likely, 3)
    }
    play.wait(40 * 3600)
    expect(helps(play)).toEqual([])
  })

  it('is told against the hour of the kiln, where one is set', () => {
    const play = coated(31)
    const dry = potsThatDry(play.table)
    expect(lateBy(play.table, dry, play.nowMs)).toBeUndefined()
    const { likely } = lastOf(dry)!
    play.act({ do: 'set-settings', settings: { kilnOnAt: Math.round(likely) + 90 * 60_000, loadMin: 30 } })
    expect(lateBy(play.table, dry, play.nowMs)! / 60_000).toBeCloseTo(-60, 1)
  })
})
