import { describe, expect, test } from 'vitest'
import {
  compareCones,
  coneEquivalents,
  conesOf,
  coneTemp,
  nearestCone,
  nextCone,
  parseCone,
  queryTemp,
  USUAL_CONES,
} from '../../../src/engine/melt/cones.ts'
import {
  coneOfLog,
  doseScale,
  firingToCone,
  heatWorkMin,
  logOf,
  overLog,
} from '../../../src/engine/melt/firing.ts'

describe('reading a cone', () => {
  test.each([
    ['06', '06'],
    ['6', '6'],
    [' 6 ', '6'],
    ['o6', '06'],
    ['O6', '06'],
    ['5 1/2', '5.5'],
    ['5½', '5.5'],
    ['5 ½', '5.5'],
    ['5,5', '5.5'],
    ['05 1/2', '05.5'],
    ['cone 06', '06'],
    ['Cone 10', '10'],
    ['c6', '6'],
    ['c/6', '6'],
    ['△04', '04'],
    ['022', '022'],
  ])('%s is %s', (text, cone) => {
    expect(parseCone(text, 'american')).toEqual({ ok: true, cone })
  })

  test.each(['', '0', '00', '66', '-6', '6.2', '51/2', '1222', 'six', '006'])('%s is no cone', (text) => {
    const parsed = parseCone(text, 'american')
    expect(parsed).toMatchObject({ ok: false, code: 'notACone' })
    expect(parsed.ok || parsed.accepted).toContain('06')
  })

  test('a cone of the other make is told apart', () => {
    expect(parseCone('6a', 'american')).toMatchObject({ ok: false, code: 'otherMake' })
    expect(parseCone('6a', 'seger')).toEqual({ ok: true, cone: '6a' })
    expect(parseCone('SK 6a', 'seger')).toEqual({ ok: true, cone: '6a' })
    expect(parseCone('6.0', 'american')).toEqual({ ok: true, cone: '6' })
    expect(parseCone('06,0', 'american')).toEqual({ ok: true, cone: '06' })
    expect(parseCone('6', 'seger')).toMatchObject({ ok: false, code: 'otherMake' })
  })
})

describe('order', () => {
  test('from 022 up to 10, half cones between', () => {
    const some = ['10', '6', '5.5', '1', '01', '05.5', '06', '022', '04', '5']
    expect([...some].sort(compareCones)).toEqual([
      '022',
      '06',
      '05.5',
      '04',
      '01',
      '1',
      '5',
      '5.5',
      '6',
      '10',
    ])
  })
  test('the table stands in that order', () => {
    const all = conesOf('american', 'selfSupporting')
    expect(all).toHaveLength(34)
    expect([...all].sort(compareCones)).toEqual(all)
  })
  test('a label that is none is refused', () => {
    expect(() => compareCones('6', 'hot')).toThrow(/cone is hot/)
    expect(() => compareCones('0', '6')).toThrow(RangeError)
  })
  test('the next cone skips the half ones and ends at the top', () => {
    expect(nextCone('5', USUAL_CONES)).toBe('6')
    expect(nextCone('5.5', USUAL_CONES)).toBe('6')
    expect(nextCone('01', USUAL_CONES)).toBe('1')
    expect(nextCone('10', USUAL_CONES)).toBeNull()
  })
})

describe('temperatures', () => {
  test('between charted rates it lies between, by the logarithm', () => {
    const at = coneTemp('6', USUAL_CONES, Math.sqrt(60 * 150))
    expect(at?.tempC).toBeCloseTo((1222 + 1243) / 2, 9)
    expect(at?.beyondChart).toBe(false)
  })
  test('beyond them the nearest column, and it says so', () => {
    expect(coneTemp('6', USUAL_CONES, 400)).toEqual({ tempC: 1243, mark: 'list', beyondChart: true })
    expect(coneTemp('6', USUAL_CONES, 5)).toMatchObject({ tempC: 1185, beyondChart: true })
    expect(coneTemp('022', USUAL_CONES, 20)).toMatchObject({ tempC: 586, beyondChart: true })
  })
  test('the weaker of two marks is given', () => {
    expect(coneTemp('7', USUAL_CONES, 60)?.mark).toBe('list')
    expect(coneTemp('7', USUAL_CONES, 40)?.mark).toBe('memory')
  })
  test('no figure is null, a senseless rate is refused', () => {
    expect(coneTemp('5.5', { make: 'american', mounting: 'large' }, 60)).toBeNull()
    expect(nearestCone(1222, { make: 'seger', mounting: 'large' }, 60)).toBeNull()
    expect(queryTemp(1222, '6', { make: 'seger', mounting: 'large' }, 60)).toBeNull()
    for (const rate of [0, -60, Number.NaN, Infinity])
      expect(() => coneTemp('6', USUAL_CONES, rate)).toThrow(/rateCPerH/)
  })
  test('equivalents keep make, mounting, rate and mark together', () => {
    const rows = coneEquivalents('6', 'american')
    expect(rows.map((r) => [r.mounting, r.rateCPerH, r.tempC])).toEqual([
      ['selfSupporting', 15, 1185],
      ['selfSupporting', 60, 1222],
      ['selfSupporting', 150, 1243],
      ['large', 60, 1220],
      ['large', 150, 1241],
      ['small', 300, 1255],
    ])
  })
  test('nearest cone and the distance to it', () => {
    expect(nearestCone(1224, USUAL_CONES, 60)).toMatchObject({ cone: '6', overC: 2 })
    expect(nearestCone(1200, USUAL_CONES, 60)).toMatchObject({ cone: '5.5', overC: -3 })
    expect(() => nearestCone(2232, USUAL_CONES, 60)).toThrow(/tempC is 2232/)
    expect(() => nearestCone(Number.NaN, USUAL_CONES, 60)).toThrow(RangeError)
  })
  test('a typed temperature that goes with its cone is not asked about', () => {
    for (const typed of [1222, 1215, 1230, 1205]) expect(queryTemp(typed, '6', USUAL_CONES, 60)).toBeNull()
  })
  test('one that does not is handed back as it was typed', () => {
    expect(queryTemp(1260, '6', USUAL_CONES, 60)).toEqual({
      cone: '6',
      typedC: 1260,
      coneTempC: 1222,
      nearest: '9',
      beyondChart: false,
    })
    expect(queryTemp(998, '6', USUAL_CONES, 60)?.nearest).toBe('06')
  })
  test('far above the last cone it is asked about though no other is nearer', () => {
    expect(queryTemp(1400, '10', USUAL_CONES, 60)).toMatchObject({ cone: '10', nearest: '10', typedC: 1400 })
  })
})

describe('firings', () => {
  const six = firingToCone('6', USUAL_CONES, 60)!
  test('a minute at 1222 degC is a minute, whatever the energy', () => {
    const hold = [
      { atMin: 3, tempC: 1222 },
      { atMin: 4, tempC: 1222 },
    ]
    for (const kJ of [180, 264, 650]) expect(heatWorkMin(hold, kJ)).toBeCloseTo(1, 12)
  })
  test('an empty log and a single reading do no work', () => {
    expect(overLog([], () => 1)).toBe(0)
    expect(heatWorkMin([{ atMin: 0, tempC: 1222 }], 264)).toBe(0)
  })
  test('the band holds the likely scale, hotter or cooler', () => {
    const five = firingToCone('5', USUAL_CONES, 60)!
    const up = doseScale(five, six)
    const down = doseScale(six, five)
    expect(up.low).toBeGreaterThan(1)
    expect(up.high).toBeGreaterThan(up.likely)
    expect(down.high).toBeLessThan(1)
    expect(down.high * up.low).toBeCloseTo(1, 9)
    expect(down.low * up.high).toBeCloseTo(1, 9)
  })
  test('a half-hour hold adds a third or so to the likely dose', () => {
    const held = doseScale({ ...six, holdMin: 10 }, { ...six, holdMin: 30 })
    expect(held.likely).toBeGreaterThan(1.15)
    expect(held.likely).toBeLessThan(1.4)
  })
  test('the cone a log reached, and what the next one missed', () => {
    const rise = (tempC: number) => logOf({ peakC: tempC, rateCPerH: 60, holdMin: 0, coolCPerH: 9000 })
    expect(coneOfLog(rise(1225))).toMatchObject({ reached: '6', next: '7' })
    expect(coneOfLog(rise(1225)).missedC).toBeGreaterThan(5)
    expect(coneOfLog(rise(1225)).missedC).toBeLessThan(20)
    expect(coneOfLog(rise(540))).toMatchObject({ reached: null, next: '022' })
    expect(coneOfLog(rise(1400))).toEqual({ reached: '10', next: null, missedC: null })
    // The chart's firings cool too: to cool does not bring down another cone.
    const cooled = [...rise(1225), { atMin: rise(1225).at(-1)!.atMin + 60, tempC: 1165 }]
    expect(coneOfLog(cooled)).toEqual(coneOfLog(rise(1225)))
  })
  test('a hold makes up for a lower peak', () => {
    const short = logOf({ peakC: 1202, rateCPerH: 60, holdMin: 5, coolCPerH: 9000 })
    const held = logOf({ peakC: 1202, rateCPerH: 60, holdMin: 45, coolCPerH: 9000 })
    expect(coneOfLog(short).reached).not.toBe('6')
    expect(coneOfLog(held).reached).toBe('6')
  })
  test('a cone the series lacks has no firing', () => {
    expect(firingToCone('5.5', { make: 'american', mounting: 'large' }, 60)).toBeNull()
  })
  test.each([
    ['firing.peakC', { ...six, peakC: 2232 }],
    ['firing.rateCPerH', { ...six, rateCPerH: 0 }],
    ['firing.holdMin', { ...six, holdMin: -1 }],
    ['firing.coolCPerH', { ...six, coolCPerH: 0 }],
  ])('%s out of range is named', (field, firing) => {
    expect(() => logOf(firing)).toThrow(field)
  })
  test('readings that run backwards, or no temperature, are refused', () => {
    const back = [
      { atMin: 5, tempC: 1000 },
      { atMin: 4, tempC: 1010 },
    ]
    expect(() => heatWorkMin(back, 264)).toThrow(/log\[1\]/)
    expect(() => heatWorkMin([{ atMin: 0, tempC: Number.NaN }], 264)).toThrow(/log\[0\].tempC/)
    expect(() => heatWorkMin([], 20)).toThrow(/kJPerMol/)
    expect(() => coneOfLog([])).toThrow(/log.length/)
  })
})
