/**
 * What air takes off a wet face, and what a film leaves on it, against the equations behind the laws, marched here from
 * nothing but those equations: boundary layers of Blasius and Pohlhausen and of Ostrach, the meniscus of Landau, Levich
 * and Derjaguin, a draining film cell by cell.
 */
import { describe, expect, test } from 'vitest'
import { nusseltSheet, nusseltUpright } from '../../src/engine/air/air.ts'
import { dragOutMm, meanDrainedMm } from '../../src/engine/slop/film.ts'
import { near } from './near.ts'

/** Runge and Kutta's fourth order: `y` after `steps` of `h`. */
function marched(
  slope: (y: readonly number[]) => number[],
  from: readonly number[],
  h: number,
  steps: number,
) {
  let y = [...from]
  const beside = (d: readonly number[], part: number) => y.map((v, i) => v + part * h * d[i]!)
  for (let k = 0; k < steps; k++) {
    const a = slope(y)
    const b = slope(beside(a, 0.5))
    const c = slope(beside(b, 0.5))
    const d = slope(beside(c, 1))
    y = y.map((v, i) => v + (h / 6) * (a[i]! + 2 * b[i]! + 2 * c[i]! + d[i]!))
  }
  return y
}

describe('a sheet along a stream', () => {
  // f''' + f f''/2 = 0, scaled after Töpfer so that the stream is 1; of heat, theta'' + Pr f theta'/2 = 0. The mean over
  // the sheet is twice what its end has. A cube root of Pr is 1.5 % off at 0.6 and exact at 1.
  test.each([0.6, 0.72, 1])('at Pr %d loses what its boundary layer does, marched', (prandtl) => {
    const stream = marched(([f, u, s]) => [u!, s!, (-f! * s!) / 2], [0, 0, 1], 0.01, 1500)[1]!
    const a = 1 / Math.sqrt(stream)
    // Sum of exp(-Pr/2 * sum of f) is one over the slope of theta at the wall.
    const [, , , , sum] = marched(
      ([f, u, s, within]) => [u!, s!, (-f! * s!) / 2, f!, Math.exp((-prandtl / 2) * within!)],
      [0, 0, a ** 3, 0, 0],
      0.01,
      1500,
    )
    for (const reynolds of [1e3, 1e5])
      near(nusseltSheet(reynolds, prandtl), (2 / sum!) * Math.sqrt(reynolds), { part: 0.016 })
  })
})

describe('an upright face in still air', () => {
  /** Slope of temperature at the wall: f''' + 3 f f'' - 2 f'^2 + theta = 0, theta'' + 3 Pr f theta' = 0 (Ostrach). */
  function slopeAtWall(prandtl: number): number {
    const far = (pull: number, slope: number, steps: number) => {
      const y = marched(
        ([f, u, s, theta, g]) => [u!, s!, -3 * f! * s! + 2 * u! * u! - theta!, g!, -3 * prandtl * f! * g!],
        [0, 0, pull, 1, slope],
        0.02,
        steps,
      )
      return [y[1]!, y[3]!] as const
    }
    let [pull, slope] = [0.7, -0.5]
    // Both ends of the layer by Newton's way, the outer one moved out by and by.
    for (const steps of [100, 150, 200, 300, 400])
      for (let k = 0; k < 6; k++) {
        const [u, theta] = far(pull, slope, steps)
        const d = 1e-6
        const [uP, thetaP] = far(pull + d, slope, steps).map((v, i) => (v - [u, theta][i]!) / d) as [
          number,
          number,
        ]
        const [uS, thetaS] = far(pull, slope + d, steps).map((v, i) => (v - [u, theta][i]!) / d) as [
          number,
          number,
        ]
        const whole = uP * thetaS - uS * thetaP
        pull -= (u * thetaS - uS * theta) / whole
        slope -= (uP * theta - u * thetaP) / whole
      }
    return -slope
  }

  // Its mean Nusselt number grows by 4/3 of the end's, (Gr/4)^(1/4) times the slope.
  test.each([0.6, 0.72, 1])('at Pr %d takes heat as its boundary layer does, marched', (prandtl) => {
    const perRoot = ((4 / 3) * slopeAtWall(prandtl)) / (4 * prandtl) ** 0.25
    const [low, high] = [1e6, 1e9]
    const rise = nusseltUpright(high, prandtl) - nusseltUpright(low, prandtl)
    near(rise / (high ** 0.25 - low ** 0.25), perRoot, { part: 0.01 })
  })
})

describe('films', () => {
  // Film over its flat end, lengths of the meniscus: h''' = (h - 1)/h^3; far up the bath's surface h'' is 0.643037, so that
  // the plate carries that times 3^(2/3)/sqrt 2. A film so thin that gravity takes 0.03 % off.
  test('a film drawn from a bath ever so slowly is that of its meniscus, marched', () => {
    const [, , curvature] = marched(
      ([h, s, c]) => [s!, c!, (h! - 1) / h! ** 3],
      [1 + 1e-6, 1e-6, 1e-6],
      0.01,
      6000,
    )
    expect(curvature).toBeCloseTo(0.643037, 4)
    const [viscosity, kgPerM3, tension, speed] = [1e-3, 1000, 0.072, 1e-8]
    const capillary = (viscosity * speed) / tension
    const length = Math.sqrt(tension / (kgPerM3 * 9.80665))
    const film = ((curvature! * 3 ** (2 / 3)) / Math.SQRT2) * length * capillary ** (2 / 3)
    near(dragOutMm({ viscosity, kgPerM3, yieldPa: 0 }, speed, tension), 1000 * film, { part: 5e-4 })
  })

  // h_t + q_z = 0, q = rho g (h - h0)^2 (2h + h0)/(6 mu), nothing from above: mass alone, without its waves.
  test.each([
    [0, 0.06, 1450, 0.42, 1],
    [2, 0.06, 1450, 0.56, 1],
    [2, 0.06, 1450, 0.56, 11],
    [4, 0.19, 1550, 0.95, 11],
  ])(
    '%d Pa, %d Pa s, %d kg/m3, drawn up to %d mm, drains for %d s as cells do',
    (yieldPa, viscosity, kgPerM3, mostMm, seconds) => {
      const [cells, lengthM] = [500, 0.1]
      const weight = kgPerM3 * 9.80665
      const h0 = yieldPa / weight
      const h = new Float64Array(cells).fill(mostMm / 1000)
      const flux = (at: number): number =>
        at > h0 ? (weight * (at - h0) ** 2 * (2 * at + h0)) / (6 * viscosity) : 0
      const most = mostMm / 1000
      const steps = Math.ceil((seconds * weight * most * (most - h0) * cells) / (viscosity * lengthM) / 0.8)
      const part = ((seconds / steps) * cells) / lengthM
      for (let k = 0; k < steps; k++) {
        let into = 0
        for (let z = 0; z < cells; z++) {
          const out = flux(h[z]!)
          h[z]! += part * (into - out)
          into = out
        }
      }
      const meanMm = (1000 * h.reduce((sum, at) => sum + at, 0)) / cells
      near(meanDrainedMm({ viscosity, yieldPa, kgPerM3 }, lengthM, seconds, mostMm), meanMm, { part: 3e-3 })
    },
  )
})
