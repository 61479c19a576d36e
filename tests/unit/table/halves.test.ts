import { describe, expect, test } from 'vitest'
import type { CoatFacts, PotFacts } from '../../../shared/nouns.ts'
import { fitOf } from '../../../src/table/advice/fitting-stack.ts'
import type { Warning } from '../../../src/table/advice/warning.ts'
import { warningsFor } from '../../../src/table/advice/warnings.ts'
import { outlookOf, planDrawing } from '../../../src/table/advice/what-if.ts'
import { stepShape } from '../../../src/table/entry/offer.ts'
import { drawingOf } from '../../../src/table/forecast/drawing.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { lessonsUsed } from '../../../src/table/forecast/learning.ts'
import type { PotState } from '../../../src/table/model/state.ts'
import { Play } from './play.ts'

const half = (bucket: string, holdS = 3): CoatFacts => ({
  bucketId: `demo.${bucket}`,
  cover: { kind: 'side' },
  holdS,
})

/** A wide bowl or plate, alone with a stack of these coats. */
function table(
  coats: readonly CoatFacts[],
  form: 'plate' | 'bowl' = 'plate',
): { play: Play; facts: PotFacts } {
  const play = new Play().act({ do: 'lay-demo' })
  play.act({ do: 'set-stack', stack: { name: 'Halves', coats } })
  const stackId = Object.keys(play.table.stacks).at(-1)!
  play.act({ do: 'set-pot', pot: { shape: stepShape(play.table.board, form, 'medium'), stackId } })
  return { play, facts: Object.values(play.table.pots).at(-1)!.facts }
}
const potOf = ({ play, facts }: ReturnType<typeof table>): PotState => play.table.pots[facts.potId]!
const warned = (at: ReturnType<typeof table>, bucket: string) =>
  warningsFor(at.play.table, potOf(at), `demo.${bucket}`, at.play.nowMs)
const found = <K extends Warning['kind']>(said: readonly Warning[], kind: K) =>
  said.find((warning): warning is Extract<Warning, { kind: K }> => warning.kind === kind)

describe('half and half', () => {
  test('the overlap carries both coats, each half its own', () => {
    const { play, facts } = table([half('gatepost', 3), half('gatepost', 5)])
    const { zones } = outlookOf(play.table, facts, [half('gatepost', 3), half('gatepost', 5)], play.nowMs)
    expect(zones.map(({ label }) => label)).toEqual(['overlap', 'half', 'otherHalf'])
    const [overlap, one, other] = zones.map(({ likelyMm }) => likelyMm) as [number, number, number]
    expect(overlap).toBeGreaterThan(other * 1.2)
    expect(other).toBeGreaterThan(one * 1.05)
    const single = outlookOf(play.table, facts, [half('gatepost', 3)], play.nowMs)
    expect(one).toBeCloseTo(Math.max(...single.zones.map(({ likelyMm }) => likelyMm)), 6)
  })

  test('a third coat over all of it lies on each half, and on both in the overlap', () => {
    const coats = [
      half('gatepost'),
      half('gatepost'),
      { ...half('heather'), cover: { kind: 'full' } },
    ] as const
    const { play, facts } = table(coats)
    const of = (some: readonly CoatFacts[]) => outlookOf(play.table, facts, some, play.nowMs).zones
    const [three, two] = [of(coats), of(coats.slice(0, 2))]
    for (const i of [0, 1, 2]) expect(three[i]!.likelyMm).toBeGreaterThan(two[i]!.likelyMm + 0.1)
  })

  test('too thick is said of the overlap, with seconds that fit', () => {
    const at = table([half('gatepost', 11), half('gatepost', 11)])
    expect(found(warned(at, 'gatepost'), 'build')).toBeUndefined()
    at.play.act({ do: 'logged', potId: at.facts.potId, agoMin: 60 })
    const build = found(warned(at, 'gatepost'), 'build')!
    expect(build).toMatchObject({ zone: 'overlap', grade: 'over' })
    expect(build.remedyS).toBeLessThan(11)
    const halves = outlookOf(at.play.table, at.facts, [half('gatepost', 11)], at.play.nowMs)
    expect(halves.zones.every(({ grade }) => grade !== 'over')).toBe(true)
  })

  test('the pair is that of the overlap; the bare half is not told to be thin', () => {
    const at = table([half('brackwater', 4), half('gatepost', 4)])
    at.play.act({ do: 'logged', potId: at.facts.potId, agoMin: 2 })
    const said = warned(at, 'gatepost')
    expect(found(said, 'pair')).toMatchObject({
      is: 'untried',
      over: 'demo.gatepost',
      under: 'demo.brackwater',
      zone: 'overlap',
    })
    expect(found(said, 'thin')).toBeUndefined()
  })

  test('where a runny half meets a stiff one, the larger dose and the sum of both run', () => {
    const run = (coats: readonly CoatFacts[]) => {
      const at = table(coats, 'bowl')
      for (let i = 1; i < coats.length; i++)
        at.play.act({ do: 'logged', potId: at.facts.potId, agoMin: 90 - i })
      const last = coats.at(-1)!.bucketId.slice(5)
      return found(warned(at, last), 'run')
    }
    const alone = run([half('brackwater', 6)])
    const both = run([half('gatepost', 6), half('brackwater', 6)])!
    expect(both.overlap).toBe(true)
    expect(both.runMm).toBeGreaterThan(alone?.runMm ?? 0)
    expect(alone?.overlap).toBeUndefined()
  })

  test('the drawing shows each half across its side, overlapping in the middle', () => {
    const { play, facts } = table([half('gatepost'), half('brackwater')])
    const { bands } = planDrawing(play.table, facts, [half('gatepost'), half('brackwater')])
    const [left, right] = bands.map(({ across }) => across!)
    expect([left![0], right![1]]).toEqual([-1, 1])
    expect(left![1]).toBeGreaterThan(right![0])
    const next = drawingOf(play.table, play.table.pots[facts.potId]!, 'with-next').bands
    expect(next.map(({ across }) => across)).toEqual([left])
  })

  test('touch where the halves overlap, once both have a coat', () => {
    const at = table([half('gatepost'), half('gatepost')])
    at.play.act({ do: 'logged', potId: at.facts.potId, agoMin: 60 })
    expect(forecastOf(at.play.table, potOf(at))!.halves).toBeUndefined()
    at.play.act({ do: 'touched', potIds: [at.facts.potId], dry: true })
    at.play.act({ do: 'logged', potId: at.facts.potId, agoMin: 0 })
    expect(forecastOf(at.play.table, potOf(at))!.halves).toBeDefined()
  })

  test('a pot dipped half and half weighs as neither half is computed: the scale teaches nothing', () => {
    const lessons = (coats: readonly CoatFacts[]) => {
      const at = table(coats)
      const { potId } = at.facts
      at.play.act({ do: 'weigh', potId, grams: 700, as: 'bisque' })
      for (const i of coats.keys()) at.play.act({ do: 'logged', potId, agoMin: 90 - 40 * i })
      at.play.act({ do: 'weigh', potId, grams: 800, as: 'now' })
      return lessonsUsed(at.play.table).length
    }
    expect(lessons([{ ...half('gatepost'), cover: { kind: 'full' } }])).toBe(1)
    expect(lessons([half('gatepost'), half('gatepost')])).toBe(0)
  })

  test('a stack fits by its half, and the second is shortened like the first', () => {
    const { play, facts } = table([half('gatepost', 3), half('gatepost', 3)])
    const thin = { ...facts, shape: { ...facts.shape, wallMm: 3 } }
    const long = [half('gatepost', 12), half('gatepost', 8)]
    const fit = fitOf(play.table, thin, long, play.nowMs)!
    const [first, second] = fit.shorter!.map(({ holdS }) => holdS) as [number, number]
    expect(first).toBeLessThan(12)
    expect(second / 8).toBeCloseTo(first / 12, 1)
    expect(fit.split).toBeUndefined()
    expect(fitOf(play.table, facts, [half('gatepost', 3), half('gatepost', 3)], play.nowMs)).toBeUndefined()
  })
})
