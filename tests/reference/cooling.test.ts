/**
 * Cooling at a rate that is a constant (s = 0), against worked examples of handbooks whose rate is h A / (rho V c); and the
 * law with an exponent, against a numerical integration by an independent method. Read in open companions of the books.
 */
import { describe, expect, test } from 'vitest'
import { excessAfterK, hoursToExcess, nextReadingC } from '../../src/engine/melt/cooling.ts'

describe('by worked examples', () => {
  test('a steel ball of 5 cm: 450 to 150 degC in air of 100 (Holman, Heat Transfer, example 4-1: 5819 s)', () => {
    const perS = (10 * 3) / (7800 * 0.025 * 460)
    expect(hoursToExcess(350, 50, perS * 3600, 0) * 3600).toBeCloseTo(5819, -1)
    expect(Math.abs(hoursToExcess(350, 50, perS * 3600, 0) * 3600 - 5819)).toBeLessThan(2)
  })

  test('a junction of a time constant of 1 s, 25 to 199 degC in gas of 200 (Incropera, Heat and Mass Transfer, 5.1: 5.2 s)', () => {
    expect(Math.abs(hoursToExcess(200 - 25, 200 - 199, 3600, 0) * 3600 - 5.2)).toBeLessThan(0.05)
  })

  test('a body as a cylinder of water, 37 to 25 degC in air of 20 (Cengel, Heat Transfer, example 4-2: 12.2 h)', () => {
    const [diameterM, lengthM, density, heat] = [0.3, 1.7, 996, 4178]
    const areaM2 = Math.PI * diameterM * lengthM + (Math.PI / 2) * diameterM ** 2
    const volumeM3 = (Math.PI / 4) * diameterM ** 2 * lengthM
    const perH = ((8 * areaM2) / (density * volumeM3 * heat)) * 3600
    expect(Math.abs(hoursToExcess(17, 5, perH, 0) - 12.2)).toBeLessThan(0.05)
  })

  test('a steel ball in a medium of 394.3 K, 699.9 K after an hour (Geankoplis, Transport Processes, 5.2-1: 474.6 K)', () => {
    const perH = (11.36 / (7849 * (0.0254 / 3) * 460.8)) * 3600
    expect(Math.abs(394.3 + excessAfterK(699.9 - 394.3, perH, 0, 1) - 474.6)).toBeLessThan(0.5)
  })
})

describe('with an exponent', () => {
  /** Runge and Kutta's fourth order, steps of a thousandth. */
  function integrated(excessK: number, rate: number, s: number, hours: number): number {
    const slope = (theta: number) => -rate * (theta / 200) ** s * theta
    const n = 1000
    const h = hours / n
    let theta = excessK
    for (let i = 0; i < n; i++) {
      const a = slope(theta)
      const b = slope(theta + (h / 2) * a)
      const c = slope(theta + (h / 2) * b)
      const d = slope(theta + h * c)
      theta += (h / 6) * (a + 2 * b + 2 * c + d)
    }
    return theta
  }

  test.each([0, 0.07, 0.25, 1, 3])('of %d the law is that of its own rate, forth and back', (s) => {
    for (const [excessK, rate, hours] of [
      [400, 0.16, 5],
      [550, 0.4, 2],
      [120, 0.05, 20],
    ] as const) {
      const after = excessAfterK(excessK, rate, s, hours)
      expect(after).toBeCloseTo(integrated(excessK, rate, s, hours), 5)
      expect(hoursToExcess(excessK, after, rate, s)).toBeCloseTo(hours, 9)
    }
  })

  test('half of the folds lie before the reading that is asked for', () => {
    expect(nextReadingC(420, 20, 45)).toBeCloseTo(120, 9)
  })
})
