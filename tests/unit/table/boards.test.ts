/** Which board of a room dries faster, from its own touches. */
import { expect, test } from 'vitest'
import { boardsOf } from '../../../src/table/forecast/board-memory.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { whole } from '../../fixtures/fired/kiln-play.ts'
import { Play } from './play.ts'

const SITTINGS = 8

/** Sittings of three pots a board; on board S coats are found dry half as late again as told, on board F in good time. */
function evenings(overnight = false): Play {
  const play = new Play().act({ do: 'lay-demo' })
  let number = 700
  for (let sitting = 0; sitting < SITTINGS; sitting++) {
    const dipped: { potId: string; overs: number }[] = []
    for (const [board, overs] of [
      ['F', 0.9],
      ['S', 1.5],
    ] as const)
      for (let spot = 1; spot <= 3; spot++) {
        const potId = `${board}${sitting}.${spot}`
        number++
        play.append(
          [
            {
              kind: 'pot-set',
              pot: {
                potId,
                number,
                place: { board, spot },
                shape: { form: 'beaker', heightMm: 95, rimMm: 80, wallMm: 5, footLineMm: 8 },
                stackId: 'demo.tideline',
              },
            },
            { kind: 'plan-changed', potId, coats: [whole('gatepost', 4)] },
            {
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
            },
          ],
          `dip ${potId}`,
        )
        dipped.push({ potId, overs })
      }
    const from = play.nowMs
    const first = dipped[0] && play.table.pots[dipped[0].potId]
    const likely = first && forecastOf(play.table, first)?.touch.likely
    const waitMs = (likely ?? from) - from
    for (const { potId, overs } of dipped.toSorted((a, b) => a.overs - b.overs)) {
      for (const [part, dry] of [
        [0.9, false],
        [1.1, true],
      ] as const) {
        play.nowMs = overnight && dry ? from + 9 * 3_600_000 : from + waitMs * overs * part
        if (overnight && !dry) continue
        play.append([{ kind: 'touched', potIds: [potId], dry }], `touch ${potId} ${dry}`)
      }
    }
    play.nowMs = from + 24 * 3_600_000
  }
  return play
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
