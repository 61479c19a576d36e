import { describe, expect, test } from 'vitest'
import { conesOf } from '../../../src/engine/melt/cones.ts'
import {
  besideRise,
  endOf,
  firingOf,
  flowScale,
  oneOver,
  reachedBy,
  readLog,
  topQuery,
  USUAL_FIRING,
} from '../../../src/table/firing/firing.ts'
import { isCone } from '../../../src/table/model/cone.ts'
import { Play } from './play.ts'

describe('the firing to come', () => {
  test('is kept as it was said', () => {
    const firing = { cone: '5.5', make: 'american', riseCPerH: 150, holdMin: 15 } as const
    const { table } = new Play().act({ do: 'plan-firing', firing })
    expect(firingOf(table)).toEqual(firing)
    expect(firingOf(new Play().table)).toBeUndefined()
  })

  test('falls where the chart says at its own rise', () => {
    expect(endOf(USUAL_FIRING)).toEqual({ tempC: 1222, sure: true })
    expect(endOf({ ...USUAL_FIRING, riseCPerH: 150 })?.tempC).toBe(1243)
    expect(endOf({ ...USUAL_FIRING, riseCPerH: 400 })).toEqual({ tempC: 1243, sure: false })
    expect(endOf({ ...USUAL_FIRING, cone: '6a', make: 'seger' })).toEqual({ tempC: 1240, sure: false })
  })

  test('is told beside the slower and the faster rise of its own stand, and no others', () => {
    const beside = (riseCPerH: number) =>
      besideRise({ ...USUAL_FIRING, riseCPerH }).map(({ rateCPerH, tempC }) => [rateCPerH, tempC])
    expect(beside(60)).toEqual([
      [15, 1185],
      [150, 1243],
    ])
    expect(beside(100)).toEqual([
      [60, 1222],
      [150, 1243],
    ])
    expect(beside(400)).toEqual([[150, 1243]])
  })

  test('a cone belongs to its make, as the tables have them', () => {
    const labels = [
      ...new Set([...conesOf('american'), ...conesOf('seger'), '6.5', '023', '0', '11', '00', '6 ', '']),
    ]
    for (const make of ['american', 'seger'] as const)
      for (const label of labels)
        expect(isCone(label, make), `${make} ${label}`).toBe(conesOf(make).includes(label))
  })

  test('one cone over skips the half cone, and ends at the top', () => {
    expect(oneOver({ ...USUAL_FIRING, cone: '5' })?.cone).toBe('6')
    expect(oneOver({ ...USUAL_FIRING, cone: '01' })?.cone).toBe('1')
    expect(oneOver({ ...USUAL_FIRING, cone: '10' })).toBeUndefined()
  })

  test('a hold counts as more flow', () => {
    const held = flowScale(USUAL_FIRING, { ...USUAL_FIRING, holdMin: 30 })!
    expect(held.likely).toBeGreaterThan(1.2)
    expect(held.high).toBeGreaterThan(held.likely)
  })
})

describe('a top temperature beside the cone', () => {
  test('that belongs to it is not asked about', () => {
    expect(topQuery(USUAL_FIRING)).toBeUndefined()
    expect(topQuery({ ...USUAL_FIRING, topC: 1225 })).toBeUndefined()
  })

  test('that belongs to another is asked about, and neither is changed', () => {
    const firing = { ...USUAL_FIRING, topC: 1260 }
    const play = new Play().act({ do: 'plan-firing', firing })
    expect(topQuery(firing)).toMatchObject({ cone: '6', nearest: '9', typedC: 1260, coneTempC: 1222 })
    expect(play.table.firing).toEqual(firing)
  })

  test('never moves a flow', () => {
    expect(flowScale(USUAL_FIRING, { ...USUAL_FIRING, topC: 1300 })).toEqual({ low: 1, likely: 1, high: 1 })
  })
})

describe('readings of a firing', () => {
  test('are read as a book has them, past midnight, in either unit', () => {
    expect(readLog('23:30 1050, 0:30 1100; 1.00 1130 C', 'C')).toEqual([
      { atMin: 0, tempC: 1050 },
      { atMin: 60, tempC: 1100 },
      { atMin: 90, tempC: 1130 },
    ])
    expect(readLog('14:00 2232 F\n15:00 1000', 'C')?.map(({ tempC }) => Math.round(tempC))).toEqual([
      1222, 1000,
    ])
    expect(readLog('14:00 2232', 'F')?.[0]?.tempC).toBeCloseTo(1222.2, 1)
  })

  test.each(['14:00', '1222', '25:00 1222', '14:75 1222', 'noon 1222', '14:00 1222 K', '14:00 abc'])(
    '%s is not a reading',
    (text) => {
      expect(readLog(text, 'C')).toBeUndefined()
    },
  )

  test('tell the cone that their heat brought down', () => {
    expect(reachedBy(readLog('14:00 1000, 17:45 1225', 'C')!)?.reached).toBe('6')
    expect(reachedBy(readLog('14:00 1000, 17:00 1180, 17:20 1180', 'C')!)?.reached).toBe('5')
    expect(reachedBy([])).toBeUndefined()
  })

  test('fewer than two, or one too hot, are refused', () => {
    const play = new Play()
    expect(play.try({ do: 'log-firing', log: [{ atMin: 0, tempC: 1000 }] })).toMatchObject({
      code: 'missing',
    })
    const hot = [
      { atMin: 0, tempC: 1000 },
      { atMin: 60, tempC: 1500 },
    ]
    expect(play.try({ do: 'log-firing', log: hot })).toMatchObject({ code: 'out-of-range', field: 'logC' })
    expect(play.table.log).toBeUndefined()
  })
})
