import { describe, expect, it } from 'vitest'
import { cardOf } from '../../../src/table/card/card-now.ts'
import { daysSince, isCopyDue } from '../../../src/table/card/copy-due.ts'
import { workedAt } from '../../../src/wire/worked.ts'
import { Play } from './play.ts'

const DAY_MS = 86_400_000
const GATEPOST = { bucketId: 'demo.gatepost', cover: { kind: 'full' }, holdS: 3 } as const
const NEVER = { copiedAt: undefined, putOffAt: 0, workedAt: undefined }

/** One pot with its coat on, all put away. */
function closed(): Play {
  const play = new Play().act({ do: 'lay-demo' })
  for (const { facts } of Object.values(play.table.pots))
    if (facts.number !== 31) play.act({ do: 'gone', potId: facts.potId })
  play.act({ do: 'set-plan', potId: 'demo.31', coats: [GATEPOST] })
  play.act({ do: 'logged', potId: 'demo.31', agoMin: 60 }).act({ do: 'foot-signed', potId: 'demo.31' })
  for (let i = 0; i < 30 && play.card.kind !== 'closed'; i++) play.bar()
  return play
}

describe('the reminder of a copy outside the phone', () => {
  it('comes once all is put away where there never was a copy, or an old one without the coats since', () => {
    const { table, card, nowMs: now } = closed()
    expect(card.kind).toBe('closed')
    expect(isCopyDue(table, card, NEVER, now)).toBe(true)
    const outAt = table.pots['demo.31']!.dips[0]!.outAt
    expect(
      isCopyDue(table, card, { copiedAt: outAt - 30 * DAY_MS, putOffAt: 0, workedAt: undefined }, now),
    ).toBe(true)
    expect(
      isCopyDue(table, card, { copiedAt: now - 30 * DAY_MS + 1, putOffAt: 0, workedAt: undefined }, now),
    ).toBe(false)
    // A year later, but nothing was done since.
    expect(
      isCopyDue(table, card, { copiedAt: outAt + 1, putOffAt: 0, workedAt: undefined }, now + 365 * DAY_MS),
    ).toBe(false)
    // What the clock was set by is in the copy's moment, not in the coat's.
    const copied = { copiedAt: outAt + 3_600_000 - 1, putOffAt: 0, workedAt: undefined }
    expect(isCopyDue({ ...table, skewMs: 3_600_000 }, card, copied, now + 365 * DAY_MS)).toBe(true)
  })

  it('never comes while anything is left to do, without a coat, or on a phone of a class', () => {
    const { table, card, nowMs: now } = closed()
    for (const kind of [
      'wait',
      'ready',
      'count',
      'drip',
      'lid',
      'tools',
      'floor',
      'held',
      'wax-pan',
    ] as const)
      expect(isCopyDue(table, { kind }, NEVER, now)).toBe(false)
    const bare = new Play().act({ do: 'lay-demo' })
    for (const pot of Object.values(bare.table.pots)) if (pot.dips.length > 0) throw new Error('bare')
    expect(isCopyDue(bare.table, { kind: 'closed' }, NEVER, bare.nowMs)).toBe(false)
    expect(isCopyDue({ ...table, settings: { ...table.settings, student: true } }, card, NEVER, now)).toBe(
      false,
    )
    const more = closed().act({ do: 'take-back' })
    expect(isCopyDue(more.table, cardOf(more.table, more.nowMs), NEVER, more.nowMs)).toBe(false)
  })

  it('comes after a clear too, while no copy has what the journal holds', () => {
    const play = closed().act({ do: 'clear-table' })
    const { table, card, nowMs: now } = play
    expect(card.kind).toBe('empty')
    const due = (copiedAt: number | undefined, records = play.events) =>
      isCopyDue(table, card, { copiedAt, putOffAt: 0, workedAt: workedAt(records) }, now + 60 * DAY_MS)
    expect(due(undefined)).toBe(true)
    expect(due(play.events.find(({ event }) => event.kind === 'dipped')!.at - 1)).toBe(true)
    expect(due(play.events.at(-1)!.at)).toBe(false)
    // Nothing was done, or all of it was taken back.
    expect(due(undefined, [])).toBe(false)
    const back = new Play().act({ do: 'lay-demo' }).act({ do: 'logged', potId: 'demo.31', agoMin: 60 })
    expect(workedAt(back.events)).toBeDefined()
    expect(workedAt(back.act({ do: 'take-back' }).events)).toBeUndefined()
  })

  it('is quiet for a week after not now, whichever way the clock was set', () => {
    const { table, card, nowMs: now } = closed()
    const due = (putOffAt: number) =>
      isCopyDue(table, card, { copiedAt: undefined, putOffAt, workedAt: undefined }, now)
    expect([due(now), due(now - 7 * DAY_MS + 1), due(now - 7 * DAY_MS), due(now + 1)]).toEqual([
      false,
      false,
      true,
      true,
    ])
  })

  it('counts whole days, and none of a clock that was set back', () => {
    expect([daysSince(undefined, 5), daysSince(0, 2 * DAY_MS - 1), daysSince(9, 5)]).toEqual([
      undefined,
      1,
      0,
    ])
  })
})
