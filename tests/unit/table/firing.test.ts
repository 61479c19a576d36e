import { describe, expect, test } from 'vitest'
import { conesOf } from '../../../src/engine/melt/cones.ts'
import { coneAheadOf } from '../../../src/table/firing/cone-ahead.ts'
import { coolingOf, LID_C } from '../../../src/table/firing/cooling.ts'
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

describe('readings of a kiln that rises', () => {
  const ahead = (text: string, firing = USUAL_FIRING) => {
    const play = new Play()
      .act({ do: 'plan-firing', firing })
      .act({ do: 'log-firing', log: readLog(text, 'C')! })
    return coneAheadOf(play.table)
  }

  test('tell when the cone falls: at 60 degC/h from 1132 degC, some 90 min on', () => {
    const told = ahead('12:00 1012, 13:00 1072, 14:00 1132')!
    expect(told.cone).toBe('6')
    expect(told.fallsMin.likely).toBeGreaterThan(80)
    expect(told.fallsMin.likely).toBeLessThan(125)
    expect(told.fallsMin.lower).toBeGreaterThan(60)
  })

  test('say nothing of a kiln that cools or is far off, and of a cone without a chart of rates', () => {
    expect(ahead('12:00 1132, 13:00 1072')).toBeUndefined()
    expect(ahead('12:00 600, 13:00 700')).toBeUndefined()
    expect(ahead('12:00 1012, 14:00 1132', { ...USUAL_FIRING, cone: '7', make: 'seger' })).toBeUndefined()
  })
})

describe('readings of a kiln that cools', () => {
  const cooling = (text: string) => {
    const play = new Play().act({ do: 'log-firing', log: readLog(text, 'C')! })
    return coolingOf(play.table)
  }

  test('tell nothing while it is hot, ask for a second one, then when lid and pots may go', () => {
    expect(cooling('14:00 1000, 17:45 1225')).toBeUndefined()
    expect(cooling('14:00 1000, 17:45 1225, 23:00 590')).toMatchObject({ lid: null, unload: null })
    const told = cooling('14:00 1000, 17:45 1225, 23:00 590, 0:30 480, 2:00 394')!
    expect(told.lid!.likely).toBeGreaterThan(60)
    expect(told.unload!.likely).toBeGreaterThan(told.lid!.likely)
    expect(told.readAgainC).toBeGreaterThan(LID_C)
    expect(told.readAgainC).toBeLessThan(394)
  })

  test('below both the pots may go, and no reading is asked for', () => {
    const told = cooling('17:45 1225, 23:00 590, 6:00 200, 12:00 55')!
    expect(told).toEqual({
      lid: { lower: 0, likely: 0, upper: 0 },
      unload: { lower: 0, likely: 0, upper: 0 },
    })
  })
})
