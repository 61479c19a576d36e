import { expect, test } from 'vitest'
import { footRoom } from '../../../src/engine/melt/melt.ts'
import { outlineOf } from '../../../src/engine/shape/geometry.ts'
import { demoEvents } from '../../../src/table/decide/demo.ts'
import { coat } from '../../fixtures/melt.ts'

/** Invented single coats as rooms dip them every day: stiff to medium glazes, at a usual thickness, to the foot line. */
const DOSES_PER_MM = [4, 8, 12, 17, 22]
const DRY_MM = [0.4, 0.5]

test('of 80 ordinary single coats down to the foot line at least 72 are clear', () => {
  const shapes = demoEvents().flatMap((event) => (event.kind === 'pot-set' ? [event.pot.shape] : []))
  const verdicts = shapes.flatMap((shape) => {
    const profile = outlineOf(shape)
    return DOSES_PER_MM.flatMap((dose) =>
      DRY_MM.map((mm) => {
        const one = coat('a', shape.footLineMm, shape.heightMm, mm, dose, {
          upperMm: mm * 1.4,
          dose: { likelyPerMm: dose, highPerMm: dose * 1.5 },
        })
        const input = {
          profile,
          coats: [one],
          footLineMm: shape.footLineMm,
          marginFactor: 2,
          provedPairs: [],
        }
        return footRoom(input).verdict
      }),
    )
  })
  expect(verdicts).toHaveLength(80)
  expect(verdicts.filter((verdict) => verdict === 'clear').length).toBeGreaterThanOrEqual(72)
})
