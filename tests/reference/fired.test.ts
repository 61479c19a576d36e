/** What the lessons of the fire rest on: laws of chance against printed tables and exact counts. */
import { describe, expect, test } from 'vitest'
import { chanceOfAtMost } from '../../src/engine/fired/guess-score.ts'
import { lnDosePerK } from '../../src/engine/fired/heat.ts'
import { normalCdf } from '../../src/engine/numeric/spread.ts'
import { NORMAL_NODES, t4Cdf, t4Pdf } from '../../src/engine/numeric/student.ts'
import { factorsOf, solvedBy } from '../../src/engine/numeric/symmetric.ts'
import { near } from './near.ts'

describe('Student’s law of four degrees (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2)', () => {
  test.each([
    [1.533, 0.9],
    [2.132, 0.95],
    [2.776, 0.975],
    [3.747, 0.99],
    [4.604, 0.995],
    [7.173, 0.999],
  ])('%d lies above a part of %d', (t, part) => {
    // The table gives t to half a thousandth.
    near(t4Cdf(t), part, { by: 0.0005 * t4Pdf(t) })
    near(t4Cdf(-t), 1 - part, { by: 0.0005 * t4Pdf(t) })
  })

  test('density is the slope of the distribution', () => {
    for (const t of [-6, -1, 0, 0.3, 2.5, 40])
      near((t4Cdf(t + 1e-4) - t4Cdf(t - 1e-4)) / 2e-4, t4Pdf(t), { by: 1e-9 })
    expect(t4Cdf(Number.POSITIVE_INFINITY)).toBe(1)
    expect(t4Cdf(Number.NEGATIVE_INFINITY)).toBe(0)
  })
})

describe('the binomial law’s lower tail, counted', () => {
  /** Every way that `n` can hold or not, one by one. */
  const counted = (most: number, n: number, part: number): number => {
    let sum = 0
    for (let ways = 0; ways < 2 ** n; ways++) {
      let held = 0
      for (let k = 0; k < n; k++) if (ways & (1 << k)) held++
      if (held <= most) sum += part ** held * (1 - part) ** (n - held)
    }
    return sum
  }
  test.each([
    [5, 10, 0.8],
    [6, 10, 0.8],
    [10, 16, 0.8],
    [0, 6, 0.8],
    [3, 9, 0.35],
  ])('at most %d of %d at %d', (most, n, part) => {
    near(chanceOfAtMost(most, n, part), counted(most, n, part), { by: 1e-12 })
  })
})

test.each([
  [180, 0.00968],
  [264, 0.0142],
  [650, 0.03497],
])(
  '%d kJ/mol at 1222 degC change a dose by %d a kelvin (R of CODATA 2018: 8.314462618 J/(mol K))',
  (kJ, perK) => {
    const flow = (tempC: number) => Math.exp((-kJ * 1000) / (8.314462618 * (tempC + 273.15)))
    near(lnDosePerK(1222, kJ), perK, { by: 1e-5 })
    near(lnDosePerK(1222, kJ), Math.log(flow(1222.01) / flow(1221.99)) / 0.02, { part: 1e-6 })
  },
)

test('nine nodes carry the moments of the normal law up to the sixteenth, and its part below 1.5', () => {
  let moment = 1
  for (let n = 2; n <= 16; n += 2) {
    moment *= n - 1
    const sum = NORMAL_NODES.reduce((total, [x, weight]) => total + weight * x ** n, 0)
    near(sum, moment, { part: 1e-9 })
  }
  const mean = NORMAL_NODES.reduce((total, [x, weight]) => total + weight * normalCdf(1.5 + x), 0)
  // A normal law about another is a normal law of both variances.
  near(mean, normalCdf(1.5 / Math.SQRT2), { by: 1e-5 })
})

test('a system of Hilbert’s matrix has its known whole-numbered inverse', () => {
  const hilbert = Float64Array.from({ length: 9 }, (_, i) => 1 / ((i % 3) + Math.floor(i / 3) + 1))
  const factors = factorsOf(hilbert, 3)
  const columns = [0, 1, 2].map((k) => [
    ...solvedBy(
      factors,
      Float64Array.from([0, 1, 2], (i) => (i === k ? 1 : 0)),
    ),
  ])
  const inverse = [
    [9, -36, 30],
    [-36, 192, -180],
    [30, -180, 180],
  ]
  columns.forEach((column, k) => {
    column.forEach((value, i) => {
      near(value, inverse[k]![i]!, { by: 1e-9 })
    })
  })
  expect(() => factorsOf(Float64Array.from([1, 2, 2, 1]), 2)).toThrow('row 1 of the matrix is not positive')
})
