import { describe, expect, test } from 'vitest'
import { warningsFor } from '../../../src/table/advice/warnings.ts'
import { footOf } from '../../../src/table/fired/foot.ts'
import { pairOf, pairsOver } from '../../../src/table/fired/pairs.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const set = (play: Play, over: string, under: string, proved: number, wrong: number) =>
  play.act({
    do: 'set-pair',
    pair: { overId: `demo.${over}`, underId: `demo.${under}`, proved, wrong },
  })

describe('one glaze over another', () => {
  test('the order matters, and the list says what went wrong first', () => {
    const play = set(evening(), 'gatepost', 'heather', 3, 0)
    expect(pairOf(play.table, 'demo.gatepost', 'demo.heather')).toMatchObject({ is: 'proved', proved: 3 })
    expect(pairOf(play.table, 'demo.brackwater', 'demo.heather').is).toBe('untried')
    set(play, 'brackwater', 'heather', 5, 1)
    expect(pairsOver(play.table, 'demo.heather').map(({ overId, is }) => [overId, is])).toEqual([
      ['demo.brackwater', 'went-wrong'],
      ['demo.gatepost', 'proved'],
    ])
    expect(pairOf(play.table, 'demo.heather', 'demo.gatepost')).toMatchObject({ proved: 4, tiles: 2 })
  })

  test.each([-1, 1.5, 1000, Number.NaN])('%s firings are refused', (proved) => {
    expect(
      evening().try({
        do: 'set-pair',
        pair: { overId: 'demo.gatepost', underId: 'demo.heather', proved, wrong: 0 },
      }),
    ).toMatchObject({ code: 'out-of-range', field: 'firings' })
  })

  test('an untried pair is said before the dip with its zone; once proved it is not; once wrong it is grave', () => {
    const play = evening()
    const coats = [
      { bucketId: 'demo.heather', cover: { kind: 'full' }, holdS: 2 },
      { bucketId: 'demo.brackwater', cover: { kind: 'collar', depthMm: 20 }, holdS: 2 },
    ] as const
    play.act({ do: 'set-plan', potId: 'demo.37', coats }).act({ do: 'logged', potId: 'demo.37', agoMin: 60 })
    const said = () =>
      warningsFor(play.table, play.table.pots['demo.37']!, 'demo.brackwater', play.nowMs).find(
        ({ kind }) => kind === 'pair',
      )
    expect(said()).toEqual({
      kind: 'pair',
      is: 'untried',
      over: 'demo.brackwater',
      under: 'demo.heather',
      zone: 'collar',
    })
    set(play, 'heather', 'brackwater', 9, 0)
    expect(said()).toMatchObject({ is: 'untried' })
    set(play, 'brackwater', 'heather', 1, 0)
    expect(said()).toBeUndefined()
    set(play, 'brackwater', 'heather', 1, 1)
    expect(said()).toMatchObject({ is: 'went-wrong' })
  })

  test('what is proved goes to the foot room', () => {
    const play = set(evening(), 'gatepost', 'heather', 2, 0).act({
      do: 'logged',
      potId: 'demo.37',
      agoMin: 60,
    })
    const pot = play.table.pots['demo.37']!
    const { input } = footOf(play.table, pot, forecastOf(play.table, pot)!.pot.zones)
    expect(input.provedPairs).toContainEqual({ over: 'demo.gatepost', under: 'demo.heather' })
    expect(input.provedPairs).not.toContainEqual({ over: 'demo.heather', under: 'demo.brackwater' })
  })
})
