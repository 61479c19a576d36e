/**
 * Censored learning against closed forms: with T = t exp(b + e), b ~ N(m, tau2), e ~ N(0, sigma2), one look that bounds
 * ln(T/t) by z1 and z2 has, with omega2 = tau2 + sigma2, a = (z1 - m)/omega, c = (z2 - m)/omega,
 * M = (phi(a) - phi(c))/(Phi(c) - Phi(a)): mean m + tau2 M/omega (moments of the truncated normal: Johnson, Kotz &
 * Balakrishnan, Continuous Univariate Distributions 1, 13.10). Values computed from it for t 20 min, tau 0.6, sigma 0.3.
 * Normal distribution function: Abramowitz & Stegun, tables 26.1 and 26.2.
 */

import { describe, test } from 'vitest'
import { normalCdf, normalPdf, quantile } from '../../src/engine/numeric/spread.ts'
import { FILL_NODES } from '../../src/engine/wait/learned.ts'
import { timeFactor } from '../../src/engine/wait/time-factor.ts'
import { near } from './near.ts'

describe('one look', () => {
  test.each([
    ['still damp at 30', { dampMin: 30 }, 0.6538, 0.3803],
    ['dry at 15', { dryMin: 15 }, -0.5847, 0.3908],
    ['damp at 25, dry at 40', { dampMin: 25, dryMin: 40 }, 0.3518, 0.2889],
    ['watched, 26', { exactMin: 26 }, 0.2099, 0.2683],
  ])('%s', (_, look, mean, sd) => {
    const got = timeFactor([{ computedMin: 20, sd: 0.3, ...look }], 0, 0.6, 0)
    near(got.mean, mean, { by: 2e-3 })
    near(got.sd, sd, { by: 2e-3 })
  })
})

describe('several looks', () => {
  test('two watched waits are the precision-weighted mean (normal prior, closed form)', () => {
    const looks = [26, 17].map((exactMin) => ({ computedMin: 20, sd: 0.3, exactMin }))
    const precision = 1 / 0.36 + 2 / 0.09
    const mean = (Math.log(26 / 20) + Math.log(17 / 20)) / 0.09 / precision
    const got = timeFactor(looks, 0, 0.6, 0)
    near(got.mean, mean, { by: 2e-3 })
    near(got.sd, Math.sqrt(1 / precision), { by: 2e-3 })
  })

  test('an answer that may be wrong teaches a mixture of knowing and not knowing', () => {
    const [noise, z] = [0.02, Math.log(30 / 20)]
    const omega = Math.hypot(0.6, 0.3)
    const p = 1 - normalCdf(z / omega)
    const knowing = (0.36 / omega) * (normalPdf(z / omega) / p)
    const weight = ((1 - 2 * noise) * p) / (noise + (1 - 2 * noise) * p)
    near(timeFactor([{ computedMin: 20, sd: 0.3, dampMin: 30 }], 0, 0.6, noise).mean, weight * knowing, {
      by: 2e-3,
    })
  })
})

describe('the normal law (Abramowitz & Stegun, table 26.1)', () => {
  test.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
    [-1.5, 0.066807201268858],
  ])('P(%d)', (x, p) => near(normalCdf(x), p, { by: 1e-12 }))

  // Quantiles of a log-normal: exp(mu + sigma z), z(0.9) = 1.281551565545.
  test('quantiles of one log-normal', () => {
    near(quantile([{ minutes: 20, weight: 1 }], 0.4, 0.9), 20 * Math.exp(0.4 * 1.281551565545), {
      part: 1e-5,
    })
    near(quantile([{ minutes: 20, weight: 1 }], 0.4, 0.1), 20 * Math.exp(-0.4 * 1.281551565545), {
      part: 1e-5,
    })
  })

  // Two normal laws in a row are one: ln t = k and residual sd s, k ~ N(0, q2): quantiles of N(0, q2 + s2).
  test('three nodes stand for the normal law of the fill factor to 10 %', () => {
    const [q, s] = [0.25, 0.46]
    const nodes = FILL_NODES.map(([sds, weight]) => ({ minutes: 20 * Math.exp(q * sds), weight }))
    for (const [part, z] of [
      [0.1, -1.2815516],
      [0.5, 0],
      [0.9, 1.2815516],
    ] as const)
      near(quantile(nodes, s, part), 20 * Math.exp(z * Math.hypot(q, s)), { part: 0.1 })
  })
})
