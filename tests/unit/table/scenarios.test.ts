import { describe, expect, it } from 'vitest'
import { outputsOf } from '../../../src/table/card/outputs.ts'
import { isQuiet } from '../../../src/table/card/quiet.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import type { PotState } from '../../../src/table/model/state.ts'
import { STEP_ROWS } from '../../../src/table/steps/step-rows.ts'
import { stepOf } from '../../../src/table/steps/steps.ts'
import { Play, START_MS } from './play.ts'

/** The demo evening with everything but one pot put away, its foot waxed, set and wiped. */
function onePot(number: number): Play {
  const play = new Play().act({ do: 'lay-demo' })
  for (const pot of Object.values(play.table.pots))
    if (pot.facts.number !== number) play.act({ do: 'gone', potId: pot.facts.potId })
  const potId = `demo.${number}`
  play.act({ do: 'waxed', potId }).act({ do: 'wax-pan', is: 'off' })
  play.wait(300).act({ do: 'wiped', potId }).wait(61)
  return play
}

const pot = (play: Play, number: number): PotState => play.table.pots[`demo.${number}`] as PotState

/** Hits START and lets the count run to its end. */
function dip(play: Play): Play {
  expect(play.card.kind).toBe('armed')
  play.bar()
  const card = play.card
  if (card.kind !== 'count') throw new Error(`no count but ${card.kind}`)
  play.nowMs = card.dip.outAt
  return play
}

describe('main path (scenario 1)', () => {
  it('logs the planned dose with no further touch, the clock from OUT', () => {
    const play = onePot(33).bar().wait(60)
    expect(play.card.kind).toBe('armed')
    const tapped = play.nowMs
    dip(play)
    const logged = pot(play, 33).dips[0]
    const lowerS = 70 / 120
    expect(logged).toMatchObject({ holdS: 4, how: 'planned', coat: 0, unstirred: false })
    expect(logged?.outAt).toBeCloseTo(tapped + (4 + Math.round(lowerS * 10) / 10 + 4) * 1000, 0)
    expect(play.card.kind).toBe('out')
    expect(play.wait(3).card.kind).toBe('drip')
    play.wait(10)
    expect(play.card).toMatchObject({ kind: 'drip', big: { do: 'sponged', potId: 'demo.33' } })
    const forecast = forecastOf(play.table, pot(play, 33))
    expect(forecast?.ready.lower).toBeGreaterThan(logged?.outAt ?? Number.NaN)
  })

  it('takes START elsewhere for foot and set-down', () => {
    const play = new Play().act({ do: 'lay-demo' })
    for (const number of [31, 32, 34, 35, 36, 37]) play.act({ do: 'gone', potId: `demo.${number}` })
    for (const step of ['wax', 'wax'] as const) {
      expect(play.card.kind).toBe(step)
      play.bar()
    }
    expect(play.card).toMatchObject({ kind: 'wax-pan', why: 'waxed' })
    play.bar().wait(400).bar().bar().wait(61)
    expect(play.card.kind).toBe('stir')
    play.bar()
    dip(play).wait(13)
    expect(play.card).toMatchObject({ kind: 'armed', inHand: 'demo.33', armed: { potId: 'demo.38' } })
    play.bar()
    expect(pot(play, 33).dips[0]?.spongedAt).toBe(play.nowMs)
    expect(pot(play, 33).dips[0]?.setDownAt).toBe(play.nowMs)
    expect(play.events.filter(({ event }) => 'implied' in event && event.implied)).toHaveLength(2)
  })

  it('goes from wax to kiln-dry by the bar alone, one hit a coat', () => {
    const play = new Play().act({ do: 'lay-demo' })
    for (const number of [31, 32, 34, 35, 36, 37, 38]) play.act({ do: 'gone', potId: `demo.${number}` })
    const before = play.hits
    const counted = new Map<string, number>()
    const tiles: string[] = []
    for (let i = 0; i < 300 && play.card.kind !== 'closed'; i++) {
      const { card } = play
      const step = stepOf(play.table, pot(play, 33), play.nowMs)
      const { tile } = STEP_ROWS[step.is]
      if (tile !== tiles.at(-1)) tiles.push(tile)
      if (card.kind === 'count') play.nowMs = card.dip.outAt
      else if (card.kind === 'out' || card.kind === 'wait' || card.kind === 'drip') play.wait(10)
      else {
        counted.set(card.kind, (counted.get(card.kind) ?? 0) + 1)
        play.bar()
      }
    }
    expect(play.card.kind).toBe('closed')
    // What its tile on the board says, from step to step; the foot is left to the ready card.
    const coat = ['dip', 'count', 'foot']
    expect(tiles).toEqual([
      ...['wax', 'wait', 'wipe', 'wait'],
      ...[...coat, 'ready', ...coat, 'ready', ...coat],
      ...['check', 'kiln'],
    ])
    expect(counted.get('armed')).toBe(3)
    expect(counted.get('ready')).toBe(2)
    expect(counted.get('stir')).toBeLessThanOrEqual(3)
    // The wax pan asks on its own account.
    const pan = counted.get('wax-pan') ?? 0
    // At the end a lid a bucket, the tools, the mop.
    const ends = 3 + 1 + 1
    expect(play.hits - before - pan).toBeLessThanOrEqual(3 + 3 + 2 + 4 + ends)
  })
})

describe('stir gate (scenario 2)', () => {
  it('asks for a stir after five minutes, not at five', () => {
    const play = onePot(33)
    expect(play.card).toMatchObject({ kind: 'stir', bucketId: 'demo.gatepost', stirredAt: undefined })
    play.bar().wait(300)
    expect(play.card.kind).toBe('armed')
    const { big } = play.card
    if (!big) throw new Error('an armed card without START')
    play.wait(1)
    expect(play.card).toMatchObject({ kind: 'stir', stirredAt: play.nowMs - 301_000 })
    // START of the card that stood there a moment ago.
    expect(play.try(big)).toMatchObject({ code: 'stir-first' })
    const held = play.card.heldBar
    if (!held) throw new Error('no hold on a stale stir')
    play.act(held)
    expect(pot(play, 33).dips[0]?.unstirred).toBe(true)
  })
})

describe('late and forgotten taps', () => {
  it('gives the same ready time for a late FOOT CLEAN (scenario 8)', () => {
    const prompt = dip(onePot(33).bar())
    const late = dip(onePot(33).bar())
    prompt.wait(14).act({ do: 'sponged', potId: 'demo.33' })
    late.wait(200).act({ do: 'sponged', potId: 'demo.33' })
    const ready = (play: Play) => forecastOf(play.table, pot(play, 33))?.ready
    expect(ready(late)).toEqual(ready(prompt))
  })

  it('takes a dip told five minutes later (scenario 9)', () => {
    const play = onePot(34).wait(600)
    play.act({ do: 'logged', potId: 'demo.34', agoMin: 5 })
    expect(pot(play, 34).dips[0]).toMatchObject({ how: 'logged', outAt: play.nowMs - 300_000, holdS: 4 })
    const told = forecastOf(play.table, pot(play, 34))
    const now = onePot(34).wait(600).act({ do: 'logged', potId: 'demo.34', agoMin: 0 })
    const fresh = forecastOf(now.table, pot(now, 34))
    const leftTold = (told?.ready.likely ?? 0) - play.nowMs
    const leftFresh = (fresh?.ready.likely ?? 0) - now.nowMs
    expect(leftFresh - leftTold).toBeGreaterThan(295_000)
  })
})

describe('humidity (scenario 3) and wax (scenario 5) at the table', () => {
  const waits = (rh: number, potId: number, coats: number) => {
    const play = onePot(potId).act({ do: 'set-air', air: { tempC: 22, rh, draught: 'room' } })
    for (let i = 0; i < coats; i++) {
      play.act({ do: 'logged', potId: `demo.${potId}`, agoMin: 0 })
      if (i + 1 < coats) play.wait(1800).act({ do: 'touched', potIds: [`demo.${potId}`], dry: true })
    }
    const dip = pot(play, potId).dips.at(-1)
    return (forecastOf(play.table, pot(play, potId))?.touch.likely ?? 0) - (dip?.outAt ?? 0)
  }
  it('is never shorter in damper air, and much longer on a full thin wall', () => {
    expect(waits(0.8, 33, 1)).toBeGreaterThanOrEqual(waits(0.35, 33, 1))
    expect(waits(0.8, 36, 2) / waits(0.35, 36, 2)).toBeGreaterThan(2)
  })

  it('sets hot wax by time, water-based wax by the air', () => {
    const until = (wax: 'hot' | 'water', rh: number) => {
      const play = new Play().act({ do: 'lay-demo' }).act({ do: 'set-settings', settings: { wax } })
      play.act({ do: 'set-air', air: { tempC: 22, rh, draught: 'room' } })
      for (const { facts } of Object.values(play.table.pots)) play.act({ do: 'waxed', potId: facts.potId })
      const { card } = play
      return card.kind === 'wait' ? (card.next?.at ?? 0) - play.nowMs : Number.NaN
    }
    expect(until('hot', 0.9)).toBe(until('hot', 0.3))
    expect(until('water', 0.9)).toBeGreaterThan(until('water', 0.3) * 1.3)
  })
})

describe('layer count (scenario 4) through the table', () => {
  it('makes coat two wait longer than coat one on a 4 mm wall', () => {
    const coat = { bucketId: 'demo.gatepost', cover: { kind: 'full' }, holdS: 3 } as const
    const play = onePot(31).act({ do: 'set-plan', potId: 'demo.31', coats: [coat, coat] })
    play.act({ do: 'logged', potId: 'demo.31', agoMin: 0 })
    const wait = () => {
      const last = pot(play, 31).dips.at(-1)
      return (forecastOf(play.table, pot(play, 31))?.touch.likely ?? 0) - (last?.outAt ?? 0)
    }
    const first = wait()
    play.nowMs += first
    play
      .act({ do: 'touched', potIds: ['demo.31'], dry: true })
      .act({ do: 'logged', potId: 'demo.31', agoMin: 0 })
    expect(wait()).toBeGreaterThan(first)
  })
})

describe('a coat that is NOT YET dry', () => {
  it.each([
    [4, 2],
    [20, 5],
    [100, 15],
  ])('after %d min is asked about again in %d min: a quarter of its age, 2 to 15 min', (ageMin, againMin) => {
    const play = onePot(36).act({ do: 'logged', potId: 'demo.36', agoMin: 0 })
    play.act({ do: 'set-settings', settings: { readyMeans: 'clock', firstWaitMin: 1 } })
    play.wait(ageMin * 60).act({ do: 'touched', potIds: ['demo.36'], dry: false })
    expect(play.card.kind).toBe('wait')
    play.wait(againMin * 60 - 1)
    expect(play.card.kind).toBe('wait')
    expect(play.wait(1).card.kind).toBe('ready')
  })
})

describe('double dip and wrong bucket (scenarios 10, 11)', () => {
  it('says that the coat is on already and wants a second choice; then counts both', () => {
    const play = onePot(34).act({ do: 'logged', potId: 'demo.34', agoMin: 10 })
    play
      .act({ do: 'touched', potIds: ['demo.34'], dry: true })
      .act({ do: 'stirred', bucketId: 'demo.gatepost' })
    play.act({ do: 'pick', potId: 'demo.34', bucketId: 'demo.gatepost' })
    expect(play.card).toMatchObject({ kind: 'armed', armed: { hasIt: true } })
    expect(play.try({ do: 'start', potId: 'demo.34', again: false, unstirred: false })).toMatchObject({
      code: 'has-it-already',
    })
    const before = forecastOf(play.table, pot(play, 34))
    const held = play.card.heldBar
    if (!held) throw new Error('no second choice')
    play.act(held).wait(30)
    expect(pot(play, 34).dips).toHaveLength(2)
    const body = (forecast: typeof before) =>
      forecast?.pot.zones.find((z) => z.name === 'body')?.likelyMm ?? 0
    expect(body(forecastOf(play.table, pot(play, 34)))).toBeGreaterThan(body(before) * 1.2)
  })

  it('stops a pot that went into another bucket until somebody decides', () => {
    const play = onePot(33).bar()
    dip(play).wait(4)
    const [first] = pot(play, 33).dips
    if (!first) throw new Error('no dip')
    play.act({ do: 'was-other-bucket', dipId: first.dipId, bucketId: 'demo.heather' }).wait(1800)
    expect(play.card).toMatchObject({ kind: 'stuck', why: 'strayed', potId: 'demo.33' })
    play.bar()
    expect(play.card.kind).not.toBe('stuck')
    expect(pot(play, 33).ownPlan?.map((coat) => coat.bucketId)).toEqual([
      'demo.heather',
      'demo.brackwater',
      'demo.heather',
    ])
  })
})

describe('clock moved (scenario 12)', () => {
  it('leaves what remains of a wait alone', () => {
    const play = onePot(33).act({ do: 'logged', potId: 'demo.33', agoMin: 0 }).wait(30)
    const left = () => {
      const { card } = play
      return card.kind === 'wait' ? (card.next?.at ?? 0) - (play.nowMs - play.table.skewMs) : Number.NaN
    }
    const before = left()
    play.nowMs += 3_600_000
    play.act({ do: 'clock-moved', byMs: 3_600_000 })
    expect(left()).toBeCloseTo(before, 0)
    expect(left()).toBeGreaterThan(0)
  })
})

describe('batched ready (scenario 13)', () => {
  it('calls together what is due together, and leaves out what is left out', () => {
    const play = new Play().act({ do: 'lay-demo' })
    const three = ['demo.31', 'demo.32']
    for (const { facts } of Object.values(play.table.pots))
      if (!three.includes(facts.potId)) play.act({ do: 'gone', potId: facts.potId })
    for (const potId of three) play.act({ do: 'logged', potId, agoMin: 0 }).wait(10)
    for (let i = 0; i < 2000 && play.card.kind !== 'ready'; i++) play.wait(5)
    expect(play.card).toMatchObject({ kind: 'ready', potIds: three })
    const call = outputsOf(play.table, play.nowMs, play.card).calls[0]
    expect(call?.bucketLetter).toBe('B')
    play.act({ do: 'touched', potIds: ['demo.31'], dry: true })
    expect(pot(play, 32).touches).toEqual([])
    expect(play.card.kind === 'ready' ? play.card.potIds : play.card.kind).not.toContain('demo.31')
  })
})

describe('hold', () => {
  it('disarms every dip, shows where the hands were, and lets the clocks go on', () => {
    const play = onePot(33).bar()
    dip(play).wait(4).act({ do: 'hold' })
    expect(play.card).toMatchObject({ kind: 'held', lines: [{ potId: 'demo.33', at: 'drips' }] })
    expect(play.try({ do: 'start', potId: 'demo.33', again: false, unstirred: false })).toMatchObject({
      code: 'held',
    })
    play.wait(600).bar()
    expect(play.card.kind).toBe('ready')
  })
})

describe('an update waits', () => {
  it('until nothing runs', () => {
    const play = onePot(33)
    expect(isQuiet(play.card, play.table, play.nowMs)).toBe(true)
    play.bar()
    expect(isQuiet(play.card, play.table, play.nowMs)).toBe(false)
    dip(play)
    expect(isQuiet(play.card, play.table, play.nowMs)).toBe(false)
    expect(play.nowMs).toBeGreaterThan(START_MS)
  })
})
