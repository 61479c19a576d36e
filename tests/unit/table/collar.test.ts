import { describe, expect, test } from 'vitest'
import { mostDecant } from '../../../src/table/advice/collar.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const rim = (potId: string) => [{ potId, depthMm: 25 }]

describe('the collar’s vessel', () => {
  test('is the room’s own where the rim has room for a hand', () => {
    const { table } = evening()
    expect(mostDecant(table, 'demo.heather', rim('demo.34'))).toMatchObject({ vessel: 'own' })
  })

  test('a wide rim needs a wider one, and more glaze to the same line', () => {
    const play = evening()
    const own = mostDecant(play.table, 'demo.heather', rim('demo.34'))!
    play.act({ do: 'set-settings', settings: { collarVesselMm: 150 } })
    const wider = mostDecant(play.table, 'demo.heather', rim('demo.34'))!
    // 160 mm across, 5 mm of hand on either side.
    expect(wider.vessel).toEqual({ wideMm: 170 })
    expect(wider.litres).toBeLessThan(own.litres)
    expect(wider.levelMm).toBeLessThan(own.levelMm)
  })

  test('one vessel takes all the rims of a visit', () => {
    const play = evening().act({ do: 'set-settings', settings: { collarVesselMm: 150 } })
    const both = [...rim('demo.31'), ...rim('demo.34')]
    expect(mostDecant(play.table, 'demo.heather', both)).toMatchObject({ vessel: { wideMm: 170 } })
  })

  test('a rim wider than the bucket itself is poured from a jug, which goes back as well', () => {
    const play = evening()
    const { facts } = play.table.pots['demo.34']!
    play.act({ do: 'set-pot', pot: { ...facts, shape: { ...facts.shape, rimMm: 300 } } })
    const decant = mostDecant(play.table, 'demo.heather', rim('demo.34'))!
    expect(decant.vessel).toBe('jug')
    play.act({ do: 'stirred', bucketId: 'demo.heather', decantLitres: decant.litres })
    expect(play.table.collar).toMatchObject({ bucketId: 'demo.heather', litres: decant.litres })
  })

  test('grown too old, it is the vessel that is stirred, not the bucket', () => {
    const play = evening()
    play.act({ do: 'logged', potId: 'demo.34', agoMin: 60 })
    play.act({ do: 'touched', potIds: ['demo.34'], dry: true })
    play.act({ do: 'pick', potId: 'demo.34' })
    const first = play.card
    expect(first).toMatchObject({ kind: 'stir', bucketId: 'demo.heather' })
    expect(first).not.toHaveProperty('inVessel')
    play.act({ do: 'stirred', bucketId: 'demo.heather', decantLitres: 0.7 }).wait(6 * 60)
    play.act({ do: 'pick', potId: 'demo.34' })
    expect(play.card).toMatchObject({ kind: 'stir', bucketId: 'demo.heather', inVessel: true })
  })
})
