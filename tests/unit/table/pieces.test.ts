import { describe, expect, test } from 'vitest'
import type { PotFacts } from '../../../shared/nouns.ts'
import { kilnOf } from '../../../src/table/advice/lid.ts'
import { warningsFor } from '../../../src/table/advice/warnings.ts'
import { spokenOf } from '../../../src/table/card/spoken.ts'
import { stepShape } from '../../../src/table/entry/offer.ts'
import { plannedDip, zonesWith } from '../../../src/table/forecast/hypothetical-dip.ts'
import { otherPiece } from '../../../src/table/model/pieces.ts'
import { potsOnTable } from '../../../src/table/model/plan.ts'
import { stepOf } from '../../../src/table/steps/steps.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const facts = (play: Play, number: number): readonly PotFacts[] =>
  potsOnTable(play.table)
    .map((pot) => pot.facts)
    .filter((pot) => pot.number === number)
const jar = (play: Play) => stepShape(play.table.board, 'jar', 'medium')
const lidded = (play: Play, copies = 1) =>
  play.act({
    do: 'set-pot',
    pot: { shape: jar(play), stackId: 'demo.tideline' },
    copies,
    lid: { stackId: 'demo.doorstep' },
  })

describe('a jar with its lid', () => {
  test('is one entry: two pieces of one number on two places, each with its own stack', () => {
    const play = lidded(evening(), 2)
    const [body, lid] = facts(play, 39)
    expect([body!.place, lid!.place]).toEqual([
      { board: 'C', spot: 1 },
      { board: 'C', spot: 2 },
    ])
    expect([body!.stackId, lid!.stackId]).toEqual(['demo.tideline', 'demo.doorstep'])
    expect(lid!.lidOf).toBe(body!.potId)
    expect(body!.shape.galleryMm).toBeGreaterThan(0)
    expect(lid!.shape.rimMm).toBeLessThan(body!.shape.rimMm)
    expect(lid!.shape.rimMm).toBeGreaterThan(body!.shape.rimMm - 2 * body!.shape.wallMm)
    expect(facts(play, 40).map(({ place }) => place.spot)).toEqual([3, 4])
    play.act({ do: 'take-back' })
    expect(facts(play, 39)).toEqual([])
  })

  test('keeps one number, and nobody else gets it', () => {
    const play = lidded(evening())
    const [body, lid] = facts(play, 39)
    play.act({ do: 'set-pot', pot: { ...body!, number: 77 } })
    expect(facts(play, 77).map(({ potId }) => potId)).toEqual([body!.potId, lid!.potId])
    expect(play.try({ do: 'set-pot', pot: { ...facts(play, 31)[0]!, number: 77 } })?.code).toBe(
      'number-taken',
    )
    expect(play.try({ do: 'set-pot', pot: { ...lid!, place: body!.place } })?.code).toBe('place-taken')
  })

  test('goes into one firing, when the slower piece is dry', () => {
    const play = lidded(evening())
    const [body, lid] = facts(play, 39).map(({ potId }) => potId)
    play.act({ do: 'put-off', potIds: [lid!], later: true })
    expect([body!, lid!].map((potId) => play.table.pots[potId]!.later)).toEqual([true, true])
    const coat = { bucketId: 'demo.gatepost', cover: { kind: 'full' }, holdS: 3 } as const
    for (const potId of [body!, lid!]) play.act({ do: 'set-plan', potId, coats: [coat] })
    play.act({ do: 'logged', potId: body!, agoMin: 60 })
    expect(kilnOf(play.table, play.table.pots[lid!]!)).toBeUndefined()
    play.act({ do: 'logged', potId: lid!, agoMin: 0 })
    const ends = [body!, lid!].map((potId) => {
      const step = stepOf(
        play.table,
        { ...play.table.pots[potId]!, footSignedAt: play.nowMs },
        play.nowMs + 9e8,
      )
      return step.is === 'kiln' ? step.dry.likely : 0
    })
    expect(kilnOf(play.table, play.table.pots[body!]!)?.likely).toBe(Math.max(...ends))
    expect(otherPiece(play.table, facts(play, 31)[0]!)).toBeUndefined()
  })

  test('ledge and edge stay bare, above and below; the lid has no neck to fill', () => {
    const play = lidded(evening())
    const [body, lid] = facts(play, 39)
    const full = { bucketId: 'demo.gatepost', cover: { kind: 'full' }, holdS: 3 } as const
    const glazed = (pot: PotFacts, face: string) =>
      zonesWith(play.table, play.table.pots[pot.potId]!, plannedDip(0, full, 1.45, play.nowMs))!.filter(
        (zone) => zone.face === face && zone.coats.length > 0,
      )
    const { heightMm, galleryMm } = body!.shape
    expect(Math.max(...glazed(body!, 'inside').map(({ toMm }) => toMm))).toBeLessThanOrEqual(
      heightMm - galleryMm!,
    )
    for (const face of ['outside', 'inside']) {
      expect(glazed(lid!, face).length).toBeGreaterThan(0)
      expect(Math.min(...glazed(lid!, face).map(({ fromMm }) => fromMm))).toBeGreaterThanOrEqual(
        lid!.shape.footLineMm,
      )
    }
    const pot = play.table.pots[lid!.potId]!
    expect(warningsFor(play.table, pot, 'demo.gatepost', play.nowMs).map(({ kind }) => kind)).not.toContain(
      'neck',
    )
  })

  test('the lid is called by its place', () => {
    const play = lidded(evening())
    const lid = facts(play, 39)[1]!
    const armed = {
      potId: lid.potId,
      coat: 0,
      coats: 2,
      bucketId: 'demo.gatepost',
      holdS: 4,
      stirredAt: 0,
      cover: { kind: 'full' },
      warnings: [],
      filled: 0,
      hasIt: false,
    } as const
    expect(spokenOf(play.table, { kind: 'armed', armed }, play.nowMs).card?.words.slice(0, 2)).toEqual([
      'C',
      '2',
    ])
  })

  test.each([
    ['galleryMm', { galleryMm: 60 }],
    ['galleryMm', { galleryMm: 0.5 }],
    ['galleryMm', { galleryMm: Number.NaN }],
    ['wallMm', { form: 'lid', heightMm: 20, wallMm: 12 }],
  ] as const)('%s of %o is refused', (field, wrong) => {
    const play = evening()
    const shape = { ...jar(play), ...wrong }
    expect(play.try({ do: 'set-pot', pot: { shape, stackId: 'demo.tideline' } })?.field).toBe(field)
  })
})

test('one more like a pot has its own coats with their waits, and its slab; its lid has the lid’s', () => {
  const play = lidded(evening())
  const [body, lid] = facts(play, 39)
  const own = [
    { bucketId: 'demo.gatepost', cover: { kind: 'full' }, holdS: 4 },
    { bucketId: 'demo.brackwater', cover: { kind: 'full' }, holdS: 1, afterMin: 146 },
  ] as const
  play.act({ do: 'set-plan', potId: body!.potId, coats: own })
  play.act({ do: 'set-slab', potId: body!.potId, slab: true })
  play.act({ do: 'set-plan', potId: lid!.potId, coats: own.slice(0, 1) })
  const { potId: likePotId, number: _number, place: _place, ...like } = body!
  play.act({ do: 'set-pot', pot: like, likePotId, copies: 2, lid: { stackId: lid!.stackId } })
  for (const number of [40, 41]) {
    const [more, moreLid] = facts(play, number).map(({ potId }) => play.table.pots[potId]!)
    expect(more).toMatchObject({ ownPlan: own, slab: true })
    expect(moreLid).toMatchObject({ ownPlan: own.slice(0, 1) })
    expect(moreLid!.slab).toBeUndefined()
  }
  play.act({ do: 'set-pot', pot: like })
  expect(play.table.pots[facts(play, 42)[0]!.potId]!.ownPlan).toBeUndefined()
})
