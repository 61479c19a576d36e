import { describe, expect, test } from 'vitest'
import {
  AS_IS,
  outlookOf,
  planDrawing,
  type Suppose,
  supposing,
  warningsOf,
} from '../../../src/table/advice/what-if.ts'
import { samplePot } from '../../../src/table/entry/offer.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })

function demo(number: number) {
  const { table, nowMs } = evening()
  const facts = table.pots[`demo.${number}`]!.facts
  return outlookOf(table, facts, table.stacks[facts.stackId]!.coats, nowMs)
}

describe('a plan seen before it is dipped', () => {
  test('every coat has its wait, and the whole is at least their sum', () => {
    const { coats, totalMin } = demo(33)
    expect(coats).toHaveLength(3)
    for (const { waitMin } of coats) {
      expect(waitMin.lower).toBeGreaterThan(0)
      expect(waitMin.likely).toBeGreaterThanOrEqual(waitMin.lower)
      expect(waitMin.upper).toBeGreaterThanOrEqual(waitMin.likely)
    }
    expect(totalMin).toBeCloseTo(
      coats.reduce((sum, { waitMin }) => sum + waitMin.likely, 0),
      6,
    )
  })

  test('zones run from the rim down, the inside last, and the collar carries most', () => {
    const { zones } = demo(33)
    expect(zones.map(({ label }) => label)).toEqual(['collar', 'body', 'skirt', 'inside'])
    const [collar, body, skirt] = zones
    expect(collar!.likelyMm).toBeGreaterThan(body!.likelyMm)
    expect(body!.likelyMm).toBeGreaterThan(skirt!.likelyMm)
    for (const { likelyMm, upperMm } of zones) expect(upperMm).toBeGreaterThanOrEqual(likelyMm)
  })

  test('8, 8 and 5 s on a thirsty 8 mm wall: the collar is marked, the skirt is fine', () => {
    const { table, nowMs } = evening()
    const bowl = table.pots['demo.33']!.facts
    const thick = { ...bowl, shape: { ...bowl.shape, wallMm: 8 } }
    const coats = table.stacks['demo.tideline']!.coats.map((coat, i) => ({ ...coat, holdS: [8, 8, 5][i]! }))
    const { zones } = outlookOf(table, thick, coats, nowMs)
    expect(zones.find(({ label }) => label === 'collar')!.grade).not.toBe('fine')
    expect(zones.find(({ label }) => label === 'skirt')!.grade).toBe('fine')
  })

  test('a poured inside comes first where the pot asks for it', () => {
    const { coats } = demo(35)
    expect(coats.map(({ coat }) => coat.cover.kind)).toEqual(['inside', 'full', 'toSkirt', 'collar'])
  })

  test('what the bench would say stands at the coat it is about', () => {
    const { table, nowMs } = evening()
    const facts = table.pots['demo.35']!.facts
    const { coats } = table.stacks['demo.tideline']!
    const warnings = warningsOf(table, facts, coats, outlookOf(table, facts, coats, nowMs))
    const run = warnings.map((said) => said.some(({ kind }) => kind === 'run'))
    expect(run[0]).toBe(false)
    expect(run[2]).toBe(true)
  })

  test('changes nothing on the table', () => {
    const { table, nowMs } = evening()
    const before = JSON.stringify(table)
    outlookOf(table, samplePot(table), table.stacks['demo.tideline']!.coats, nowMs)
    expect(JSON.stringify(table)).toBe(before)
  })
})

test('the drawing has every coat where it covers the outside, in order', () => {
  const { table } = evening()
  const facts = table.pots['demo.31']!.facts
  const { bands, footLineMm } = planDrawing(table, facts, table.stacks['demo.tideline']!.coats)
  expect(bands.map(({ pattern }) => pattern)).toEqual(['hatch', 'wave', 'brick'])
  expect(bands.map(({ fromMm }) => fromMm)).toEqual([footLineMm, footLineMm + 20, 95 - 25])
  expect(bands.every(({ toMm, planned }) => toMm === 95 && !planned)).toBe(true)
})

describe('supposing', () => {
  const seen = (by: Partial<Suppose>) => {
    const play = new Play().act({ do: 'lay-demo' })
    const [table, facts] = supposing(play.table, play.table.pots['demo.34']!.facts, { ...AS_IS, ...by })
    const coat = { bucketId: 'demo.gatepost', cover: { kind: 'full' }, holdS: 4 } as const
    const { zones, totalMin } = outlookOf(table, facts, [coat, coat], play.nowMs)
    return { likelyMm: Math.max(...zones.map((zone) => zone.likelyMm)), totalMin }
  }

  test('a thicker bucket builds more; damp air makes it wait; a thinner wall waits too', () => {
    const now = seen({})
    expect(seen({ gramsPerMl: 0.06 }).likelyMm).toBeGreaterThan(now.likelyMm)
    expect(seen({ rh: 0.4 }).totalMin).toBeGreaterThan(now.totalMin)
    expect(seen({ wallMm: -2 }).totalMin).toBeGreaterThan(now.totalMin)
  })

  test('stays within what each number may be, and changes nothing as it is', () => {
    const play = new Play().act({ do: 'lay-demo' })
    const { facts } = play.table.pots['demo.36']!
    const [table, pot] = supposing(play.table, facts, { gramsPerMl: 9, wallMm: -9, rh: 9 })
    expect(table.buckets['demo.heather']!.gramsPerMl).toBe(1.9)
    expect(pot.shape.wallMm).toBe(1)
    expect(table.air.at(-1)!.air.rh).toBe(1)
    expect(supposing(play.table, facts, AS_IS)).toEqual([play.table, facts])
  })
})
