/** Which board of a room dries faster, from its own touches. */
import { describe, expect, test } from 'vitest'
import type { TableEvent } from '../../../shared/events.ts'
import { boardsOf } from '../../../src/table/forecast/board-memory.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { roomChangedAt } from '../../../src/table/model/taken.ts'
import { whole } from '../../fixtures/fired/kiln-play.ts'
import { Play } from './play.ts'

const SITTINGS = 8

/** Sittings of three pots a board; on board S coats are found dry half as late again as told, on board F in good time. */
function evenings(overnight = false): Play {
  const play = new Play().act({ do: 'lay-demo' })
  for (let sitting = 0; sitting < SITTINGS; sitting++) evening(play, sitting, overnight)
  return play
}

function dip(play: Play, potId: string, number: number, board: string, spot: number): void {
  const shape = { form: 'beaker', heightMm: 95, rimMm: 80, wallMm: 5, footLineMm: 8 } as const
  const pot = { potId, number, place: { board, spot }, shape, stackId: 'demo.tideline' }
  const dipped: TableEvent = {
    kind: 'dipped',
    dipId: `${potId}.d`,
    potId,
    coat: 0,
    ...whole('gatepost', 4),
    gramsPerMl: 1.45,
    leadS: 4,
    lowerS: 1,
    outAt: play.nowMs,
    unstirred: false,
    told: true,
  }
  const plan: TableEvent = { kind: 'plan-changed', potId, coats: [whole('gatepost', 4)] }
  play.append([{ kind: 'pot-set', pot }, plan, dipped], `dip ${potId}`)
}

const touch = (play: Play, potId: string, dry: boolean) =>
  play.append([{ kind: 'touched', potIds: [potId], dry }], `touch ${potId} ${dry}`)

function evening(play: Play, sitting: number, overnight = false): void {
  const pots = (['F', 'S'] as const).flatMap((board, b) =>
    [1, 2, 3].map((spot) => {
      const potId = `${board}${sitting}.${spot}`
      dip(play, potId, 700 + 6 * sitting + 3 * b + spot, board, spot)
      return { potId, overs: board === 'F' ? 0.9 : 1.5 }
    }),
  )
  const from = play.nowMs
  const first = play.table.pots[`F${sitting}.1`]
  const waitMs = ((first && forecastOf(play.table, first)?.touch.likely) ?? from) - from
  for (const { potId, overs } of pots) {
    if (!overnight) {
      play.nowMs = from + waitMs * overs * 0.9
      touch(play, potId, false)
    }
    play.nowMs = overnight ? from + 9 * 3_600_000 : from + waitMs * overs * 1.1
    touch(play, potId, true)
  }
  play.nowMs = from + 24 * 3_600_000
}

test('the board whose coats are found dry later is told with its sittings, the other one is for late pots', () => {
  const { boards, fastest } = boardsOf(evenings().table)
  const slow = boards.find(({ board }) => board === 'S')
  expect(slow).toMatchObject({ sittings: SITTINGS, touches: 3 * SITTINGS, speak: true })
  expect(slow?.ln).toBeGreaterThan(0.2)
  expect(fastest).toBe('F')
})

test('coats that nobody looked at till the next day tell nothing of a board', () => {
  expect(boardsOf(evenings(true).table).boards).toEqual([])
})

describe('a room that has changed', () => {
  test('is learned anew, by coats that were dipped since', () => {
    const play = evenings()
    const hour = 3600
    dip(play, 'late', 800, 'S', 1)
    play.wait(hour / 2).act({ do: 'change-room', changed: true })
    expect(boardsOf(play.table).boards).toEqual([])
    // Dipped in the room as it was: its wait says nothing of the room as it is.
    play.wait(hour / 2)
    touch(play, 'late', false)
    play.wait(hour)
    touch(play, 'late', true)
    expect(boardsOf(play.table).boards).toEqual([])
    evening(play, SITTINGS)
    expect(boardsOf(play.table).boards).toMatchObject([
      { board: 'F', sittings: 1 },
      { board: 'S', sittings: 1, touches: 3 },
    ])
  })

  test('is as it was once that was said by mistake, the last change first', () => {
    const play = evenings()
    const before = boardsOf(play.table)
    const at = play.nowMs
    play.act({ do: 'change-room', changed: true }).wait(60).act({ do: 'change-room', changed: true })
    expect(roomChangedAt(play.table)).toBe(at + 60_000)
    play.act({ do: 'change-room', changed: false })
    expect(roomChangedAt(play.table)).toBe(at)
    play.act({ do: 'change-room', changed: false })
    expect(boardsOf(play.table)).toEqual(before)
    expect(play.try({ do: 'change-room', changed: false })).toEqual({ code: 'nothing-to-do' })
    play.act({ do: 'change-room', changed: true }).act({ do: 'take-back' })
    expect(boardsOf(play.table)).toEqual(before)
  })
})
