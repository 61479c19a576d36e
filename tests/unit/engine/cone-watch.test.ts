import { describe, expect, test } from 'vitest'
import { coneFallsMin, fallsInMin, offsetOf } from '../../../src/engine/melt/cone-watch.ts'
import { coneTemp, USUAL_CONES } from '../../../src/engine/melt/cones.ts'
import { coneWorks, heatWorkMin } from '../../../src/engine/melt/firing.ts'
import { readFiring } from '../../fixtures/firings.ts'

const FIRINGS = process.env.PROVE ? 400 : 120
const endOf = (cone: string) => coneTemp(cone, USUAL_CONES, 60)!.tempC

describe('when the cone of a firing falls', () => {
  test.each([240, 120, 60, 30])(
    'invented firings, %d min before: the band holds what comes true',
    (beforeMin) => {
      let inside = 0
      const offs: number[] = []
      for (let seed = 1; seed <= FIRINGS; seed++) {
        const { cone, log, fellMin } = readFiring(seed)
        const read = log.filter(({ atMin }) => atMin <= fellMin - beforeMin)
        const told = coneFallsMin(read, cone, endOf(cone))
        if (!told) continue
        const truth = fellMin - read.at(-1)!.atMin
        inside += Number(truth >= told.lower && truth <= told.upper)
        offs.push(Math.abs(told.likely - truth))
      }
      const middle = offs.sort((a, b) => a - b)[offs.length >> 1]!
      const held = inside / offs.length
      console.log(
        `${beforeMin} min before: ${offs.length} firings, held ${held.toFixed(2)} (0.75 to 0.95 asked), off by ${middle.toFixed(1)} min`,
      )
      expect(offs.length).toBeGreaterThan(FIRINGS / 6)
      expect(held).toBeGreaterThanOrEqual(0.75)
      if (offs.length >= 100) expect(held).toBeLessThanOrEqual(0.95)
      if (beforeMin <= 120) expect(middle).toBeLessThan(10)
    },
  )

  const rising = [0, 60, 120].map((atMin) => ({ atMin, tempC: 1000 + atMin }))

  test('nothing is told of one reading, of readings close together, of a fall, of a cone far off or unknown', () => {
    expect(coneFallsMin(rising, '6', endOf('6'))).not.toBeNull()
    expect(coneFallsMin(rising.slice(0, 1), '6', endOf('6'))).toBeNull()
    expect(coneFallsMin([rising[0]!, { atMin: 20, tempC: 1020 }], '6', endOf('6'))).toBeNull()
    expect(coneFallsMin([...rising, { atMin: 150, tempC: 1090 }], '6', endOf('6'))).toBeNull()
    expect(coneFallsMin(rising, '6', 1500)).toBeNull()
    expect(coneFallsMin(rising, '99', endOf('6'))).toBeNull()
  })

  test('an earlier reading added afterwards gives the forecast that it would have given in time', () => {
    const late = [...rising, { atMin: -60, tempC: 940 }].sort((a, b) => a.atMin - b.atMin)
    const inTime = [{ atMin: -60, tempC: 940 }, ...rising]
    expect(coneFallsMin(late, '6', endOf('6'))).toEqual(coneFallsMin(inTime, '6', endOf('6')))
  })

  test('cones teach how much hotter than shown a kiln is: by a normal law, and the forecast is earlier by it', () => {
    const { mean, sd } = offsetOf([-12])
    expect(mean).toBeCloseTo(-7.54, 2)
    expect(sd).toBeCloseTo(3.96, 2)
    expect(offsetOf([])).toEqual({ mean: 0, sd: 6.5 })
    const told = (offset?: { mean: number; sd: number }) => coneFallsMin(rising, '6', endOf('6'), offset)
    expect(told({ mean: 0, sd: 6.5 })).toEqual(told())
    expect((told()?.likely ?? 0) - (told({ mean: 8, sd: 3 })?.likely ?? 0)).toBeGreaterThan(5)
  })

  test('one that is down already falls at once, one that never gets there never', () => {
    const work = coneWorks().find(({ cone }) => cone === '6')!
    expect(fallsInMin(work, Math.exp(work.lnWork), 1200, 60, 0)).toBe(0)
    expect(fallsInMin(work, heatWorkMin(rising, work.kJPerMol), 1000, 60, 5)).toBe(Number.POSITIVE_INFINITY)
  })
})
