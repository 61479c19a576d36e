import { describe, expect, test } from 'vitest'
import { loadCalls } from '../../../src/table/load/calls.ts'
import { coneStands, conesTaught, isOdd, offsetLearned } from '../../../src/table/load/cones-taught.ts'
import { loadCooling } from '../../../src/table/load/cool.ts'
import { coneAhead, lookAgainAt } from '../../../src/table/load/fire.ts'
import { KILN_SIZES } from '../../../src/table/load/kiln-sizes.ts'
import { callWords } from '../../../src/table/load/kiln-spoken.ts'
import { coneDown, coneDownAt, isWarm, stageOf } from '../../../src/table/load/loads.ts'
import { coneNearAt } from '../../../src/table/load/look-from.ts'
import { mayFog, steamsAt } from '../../../src/table/load/steam.ts'
import { Play } from './play.ts'

const FIRING = { cone: '6', make: 'american', riseCPerH: 60, holdMin: 0 } as const

/** A load without pots whose kiln is on. */
function on(play = new Play()): { play: Play; loadId: string } {
  if (!play.table.kilns) play.act({ do: 'set-kiln', kiln: KILN_SIZES.round })
  const [kilnId = ''] = Object.keys(play.table.kilns ?? {})
  play.act({ do: 'begin-load', kilnId, firing: FIRING })
  const loadId = Object.keys(play.table.loads ?? {}).at(-1) ?? ''
  play.act({ do: 'light', loadId, sure: true })
  return { play, loadId }
}
const load = (play: Play, loadId: string) => {
  const found = play.table.loads?.[loadId]
  if (!found) throw new Error('no load')
  return found
}
/** Rises to `fromC` in eight hours, then 60 degC an hour, read every half hour, until `toC`. */
function fired(play: Play, loadId: string, fromC: number, toC: number): void {
  play.wait(8 * 3600)
  for (let tempC = fromC; tempC <= toC; tempC += 30) {
    play.act({ do: 'read-heat', loadId, tempC })
    play.wait(1800)
  }
}

describe('when the cone falls', () => {
  test('is told from readings half an hour apart, near where its chart has it at that rise', () => {
    const { play, loadId } = on()
    play.wait(8 * 3600).act({ do: 'read-heat', loadId, tempC: 1100 })
    expect(coneAhead(play.table, load(play, loadId))).toBeUndefined()
    for (const tempC of [1130, 1160, 1190]) play.wait(1800).act({ do: 'read-heat', loadId, tempC })
    const ahead = coneAhead(play.table, load(play, loadId))
    // 32 K at 60 degC/h are 32 minutes to the chart's 1222.
    const min = ((ahead?.likely ?? 0) - play.nowMs) / 60_000
    expect(min).toBeGreaterThan(25)
    expect(min).toBeLessThan(40)
    expect(ahead?.lower).toBeLessThan(ahead?.likely ?? 0)
    expect(loadCalls(play.table)).toMatchObject([{ what: 'cone', at: ahead?.lower }])
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'down' })
    expect(loadCalls(play.table)).toEqual([])
    play.wait(60).act({ do: 'see-cone', loadId, cone: '6', is: 'bending' })
    expect(loadCalls(play.table)).toHaveLength(1)
  })

  test('is told by the cone once it bends, and the bar waits for it', () => {
    const { play, loadId } = on()
    fired(play, loadId, 1100, 1160)
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'standing' })
    const stoodAt = play.nowMs
    play.wait(600).act({ do: 'see-cone', loadId, cone: '6', is: 'bending' })
    const seenAt = play.nowMs
    const ahead = coneAhead(play.table, load(play, loadId))
    // 15 to 25 min from its first bend, which came between the two looks.
    expect(ahead?.lower).toBe(stoodAt + 15 * 60_000)
    expect(ahead?.upper).toBe(seenAt + 25 * 60_000)
    expect(stageOf(play.table, load(play, loadId), seenAt, ahead?.lower).is).toBe('cone')
    expect(loadCalls(play.table)).toMatchObject([{ what: 'cone', at: ahead?.lower }])
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'standing' })
    expect(coneAhead(play.table, load(play, loadId))?.likely).toBeGreaterThan(ahead?.likely ?? Infinity)
  })

  test('a cone that stands when it was due is looked at again in ten minutes, and called then', () => {
    const { play, loadId } = on()
    fired(play, loadId, 1130, 1190)
    const ahead = () => coneAhead(play.table, load(play, loadId)) ?? { lower: 0, likely: 0, upper: 0 }
    const again = () => lookAgainAt(load(play, loadId), ahead())
    const { lower, likely } = ahead()
    play.nowMs = lower - 60_000
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'standing' })
    expect([again(), loadCalls(play.table)[0]?.at]).toEqual([undefined, lower])
    play.nowMs = lower + 60_000
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'standing' })
    expect([again(), loadCalls(play.table)[0]?.at]).toEqual(Array(2).fill(play.nowMs + 600_000))
    play.nowMs = likely + 60_000
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'standing' })
    expect([again(), loadCalls(play.table)[0]?.at]).toEqual(Array(2).fill(play.nowMs + 600_000))
    play.wait(300).act({ do: 'see-cone', loadId, cone: '6', is: 'bending' })
    expect(again()).toBeUndefined()
  })

  test('a bend that nobody saw begin is called when the cone is likely down, and a look puts the call off', () => {
    const { play, loadId } = on()
    fired(play, loadId, 1100, 1160)
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'bending' })
    const seenAt = play.nowMs
    const ahead = coneAhead(play.table, load(play, loadId))
    expect(loadCalls(play.table)).toMatchObject([{ what: 'cone', at: ahead?.likely }])
    expect(ahead?.likely).toBeGreaterThan(seenAt)
    play.wait(20 * 60).act({ do: 'see-cone', loadId, cone: '6', is: 'bending' })
    expect(loadCalls(play.table)).toMatchObject([{ what: 'cone', at: play.nowMs + 5 * 60_000 }])
  })

  test('is not past where the wanted cone was seen to stand after a hotter one was noted down', () => {
    const { play, loadId } = on()
    fired(play, loadId, 1130, 1190)
    play.act({ do: 'see-cone', loadId, cone: '7', is: 'down' })
    expect(coneDown(load(play, loadId))).toMatchObject({ cone: '7', over: true })
    play.wait(60).act({ do: 'see-cone', loadId, cone: '6', is: 'standing' })
    expect(coneDown(load(play, loadId))).toBeUndefined()
    expect(stageOf(play.table, load(play, loadId), play.nowMs).is).not.toBe('off')
    play.wait(60).act({ do: 'see-cone', loadId, cone: '7', is: 'flat' })
    expect(coneDown(load(play, loadId))).toEqual({ cone: '7', at: play.nowMs, over: true })
    play.wait(60).act({ do: 'see-cone', loadId, cone: '6', is: 'down' })
    expect(coneDown(load(play, loadId))).toMatchObject({ cone: '6', over: true })
  })

  test('is past once a hotter cone lies, in a hold too: off, nothing called, and nothing asked', () => {
    const { play, loadId } = on()
    play.act({ do: 'change-firing', loadId, firing: { ...FIRING, holdMin: 20 } })
    fired(play, loadId, 1130, 1190)
    play.act({ do: 'see-cone', loadId, cone: '5', is: 'down' })
    expect(stageOf(play.table, load(play, loadId), play.nowMs).is).toBe('fire')
    play.act({ do: 'see-cone', loadId, cone: '7', is: 'down' })
    expect(coneDownAt(load(play, loadId))).toBe(play.nowMs)
    expect(stageOf(play.table, load(play, loadId), play.nowMs).is).toBe('off')
    expect(loadCalls(play.table)).toEqual([])
    expect(play.try({ do: 'switch-off', loadId })).toBeUndefined()
  })

  test('and the end of a hold is called, until the kiln is off', () => {
    const { play, loadId } = on()
    play.act({ do: 'change-firing', loadId, firing: { ...FIRING, holdMin: 20 } })
    fired(play, loadId, 1130, 1220)
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'down' })
    expect(loadCalls(play.table)).toEqual([{ loadId, what: 'hold', at: play.nowMs + 20 * 60_000 }])
    expect(callWords(play.table, loadId, 'hold')).toEqual(['cone', '6', 'hold is over'])
    play.wait(1200).act({ do: 'switch-off', loadId })
    expect(loadCalls(play.table)).toEqual([])
  })

  test('an earlier reading that is said late tells the same as in time', () => {
    const inTime = on()
    const late = on()
    inTime.play.wait(8 * 3600).act({ do: 'read-heat', loadId: inTime.loadId, tempC: 1100 })
    late.play.wait(8 * 3600)
    inTime.play.wait(1800).act({ do: 'read-heat', loadId: inTime.loadId, tempC: 1130 })
    inTime.play.wait(1800).act({ do: 'read-heat', loadId: inTime.loadId, tempC: 1160 })
    late.play.wait(3600).act({ do: 'read-heat', loadId: late.loadId, tempC: 1160 })
    late.play.act({ do: 'read-heat', loadId: late.loadId, tempC: 1130, agoMin: 30 })
    late.play.act({ do: 'read-heat', loadId: late.loadId, tempC: 1100, agoMin: 60 })
    expect(coneAhead(late.play.table, load(late.play, late.loadId))).toEqual(
      coneAhead(inTime.play.table, load(inTime.play, inTime.loadId)),
    )
  })
})

describe('a cone of a make whose heat work is not known', () => {
  test('has no hour, but is looked at from near where its list has it', () => {
    const { play, loadId } = on()
    play.act({ do: 'change-firing', loadId, firing: { ...FIRING, cone: '7', make: 'seger' } })
    play.wait(8 * 3600)
    const at = () => coneNearAt(load(play, loadId))
    for (const tempC of [1140, 1170, 1200]) play.wait(1800).act({ do: 'read-heat', loadId, tempC })
    expect([coneAhead(play.table, load(play, loadId)), at()]).toEqual([undefined, undefined])
    play.wait(1800).act({ do: 'read-heat', loadId, tempC: 1230 })
    expect(at()).toBe(play.nowMs)
    expect(stageOf(play.table, load(play, loadId), play.nowMs, at()).is).toBe('cone')
    play.act({ do: 'see-cone', loadId, cone: '7', is: 'down' })
    expect(stageOf(play.table, load(play, loadId), play.nowMs, at()).is).toBe('off')
  })
})

describe('the kiln’s own offset', () => {
  const taught = (toC: number) => {
    const { play, loadId } = on()
    fired(play, loadId, toC - 120, toC)
    // Read, and seen to lie within a minute of it.
    play.nowMs -= 1790_000
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'down' })
    return { play, loadId }
  }

  test('a cone that fell 12 below its chart makes it 7.5 hotter than shown, and moves nothing until it is taken', () => {
    const { play, loadId } = taught(1210)
    const [kilnId = ''] = Object.keys(play.table.kilns ?? {})
    const [cone] = conesTaught(load(play, loadId))
    expect(cone?.chartC).toBeCloseTo(1222, 0)
    expect(cone?.overK).toBeCloseTo(12, 0)
    const learned = offsetLearned(play.table, kilnId)
    expect(learned?.mean).toBeCloseTo(7.5, 0)
    expect(learned?.sd).toBeCloseTo(3.96, 1)
    play.act({ do: 'switch-off', loadId, sure: true })
    const next = on(play)
    const ahead = () => {
      const found = coneAhead(play.table, load(play, next.loadId))
      return ((found?.likely ?? 0) - play.nowMs) / 60_000
    }
    fired(play, next.loadId, 1070, 1160)
    const before = ahead()
    play.act({ do: 'take-offset', kilnId, offsetC: 7.5, of: 1 })
    expect(before - ahead()).toBeGreaterThan(4)
  })

  test('a cone first seen to lie after the kiln went off teaches nothing: nobody saw at what heat it fell', () => {
    const { play, loadId } = on()
    fired(play, loadId, 1150, 1190)
    play
      .act({ do: 'switch-off', loadId, sure: true })
      .wait(780)
      .act({ do: 'see-cone', loadId, cone: '6', is: 'down' })
    expect(conesTaught(load(play, loadId))).toEqual([])
  })

  test('a cone far from its chart is asked about, and teaches nothing by itself', () => {
    const { play, loadId } = taught(1150)
    const [kilnId = ''] = Object.keys(play.table.kilns ?? {})
    const [cone] = conesTaught(load(play, loadId))
    expect(cone && isOdd(play.table, kilnId, cone)).toBe(true)
    expect(offsetLearned(play.table, kilnId)).toBeUndefined()
  })

  test('a cone that stands far over its chart is asked about, teaches nothing, and no less far under it', () => {
    const { play, loadId } = on()
    const [kilnId = ''] = Object.keys(play.table.kilns ?? {})
    fired(play, loadId, 1112, 1172)
    const see = () => play.act({ do: 'see-cone', loadId, cone: '6', is: 'standing' })
    const odd = () => {
      const cone = coneStands(load(play, loadId))
      return cone && isOdd(play.table, kilnId, cone)
    }
    play.nowMs -= 1740_000
    see()
    expect(odd()).toBe(false)
    play.nowMs += 1740_000
    for (const tempC of [1202, 1232]) play.act({ do: 'read-heat', loadId, tempC }).wait(1800)
    play.act({ do: 'read-heat', loadId, tempC: 1262 }).wait(60)
    see()
    expect(odd()).toBe(true)
    expect(coneStands(load(play, loadId))?.overK).toBeCloseTo(-41, 0)
    expect([conesTaught(load(play, loadId)), offsetLearned(play.table, kilnId)]).toEqual([[], undefined])
    const { lower = 0, upper = 0 } = coneAhead(play.table, load(play, loadId)) ?? {}
    play.act({ do: 'take-offset', kilnId, offsetC: -41, of: 1 })
    expect(odd()).toBe(false)
    // By its readings alone it fell long ago; a kiln that is so has an hour again.
    expect(upper - lower).toBeLessThan(60_000)
    const told = coneAhead(play.table, load(play, loadId))
    expect((told?.upper ?? 0) - (told?.lower ?? 0)).toBeGreaterThan(60_000)
  })

  test('a cone after a reading that no kiln can have risen from teaches nothing, and is no error', () => {
    const { play, loadId } = on()
    play.wait(20 * 3600).act({ do: 'read-heat', loadId, tempC: 120, sure: true })
    play.wait(120).act({ do: 'read-heat', loadId, tempC: 1210, sure: true })
    play.wait(30).act({ do: 'see-cone', loadId, cone: '6', is: 'down' })
    expect(conesTaught(load(play, loadId))).toEqual([])
    expect(offsetLearned(play.table, load(play, loadId).kiln.kilnId)).toBeUndefined()
  })

  test('a cone seen long after the last reading is tied to none', () => {
    const { play, loadId } = on()
    fired(play, loadId, 1090, 1210)
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'down' }).act({ do: 'switch-off', loadId, sure: true })
    play.wait(5 * 3600).act({ do: 'read-heat', loadId, tempC: 560 })
    expect(conesTaught(load(play, loadId))).toEqual([])
  })
})

describe('cooling', () => {
  const cooled = (play: Play, loadId: string, perH: number) => {
    play
      .wait(8 * 3600)
      .act({ do: 'switch-off', loadId, sure: true })
      .wait(5 * 3600)
    for (let hours = 0; hours < 3; hours++) {
      play.act({ do: 'read-heat', loadId, tempC: Math.round(20 + 500 * Math.exp(-perH * hours)) })
      play.wait(3600)
    }
  }

  test('is told from two readings below 600, with the next one asked where it tells most', () => {
    const { play, loadId } = on()
    play
      .wait(8 * 3600)
      .act({ do: 'switch-off', loadId, sure: true })
      .wait(5 * 3600)
      .act({ do: 'read-heat', loadId, tempC: 520 })
    expect(loadCooling(play.table, load(play, loadId))).toMatchObject({ lid: null, unload: null })
    play.wait(3600).act({ do: 'read-heat', loadId, tempC: 446 })
    const cools = loadCooling(play.table, load(play, loadId))
    // Newton's law at these readings: ln(500/426) an hour, ln(426/100) left.
    const hours = Math.log(426 / 100) / Math.log(500 / 426)
    expect(((cools?.lid?.likely ?? 0) - play.nowMs) / 3_600_000).toBeGreaterThan(0.85 * hours)
    expect(((cools?.lid?.likely ?? 0) - play.nowMs) / 3_600_000).toBeLessThan(1.3 * hours)
    expect(cools?.again?.tempC).toBeCloseTo(20 + Math.sqrt(426 * 100), 0)
    expect(
      loadCalls(play.table)
        .map(({ what }) => what)
        .sort(),
    ).toEqual(['lid', 'read', 'unload'])
  })

  test('after an earlier one of the same kiln a single reading tells, and nearer', () => {
    const first = on()
    cooled(first.play, first.loadId, 0.25)
    const { play, loadId } = on(first.play)
    play
      .wait(8 * 3600)
      .act({ do: 'switch-off', loadId, sure: true })
      .wait(5 * 3600)
      .act({ do: 'read-heat', loadId, tempC: 520 })
    const lid = loadCooling(play.table, load(play, loadId))?.lid
    expect(((lid?.likely ?? 0) - play.nowMs) / 3_600_000).toBeCloseTo(Math.log(5) / 0.25, -1)
  })

  test('a bung that was pulled begins it anew', () => {
    const { play, loadId } = on()
    cooled(play, loadId, 0.16)
    play.act({ do: 'pull-bung', loadId })
    expect(loadCooling(play.table, load(play, loadId))).toBeUndefined()
    play.act({ do: 'read-heat', loadId, tempC: 320 }).wait(1800).act({ do: 'read-heat', loadId, tempC: 240 })
    const lid = loadCooling(play.table, load(play, loadId))?.lid
    expect(((lid?.likely ?? 0) - play.nowMs) / 3_600_000).toBeLessThan(3)
  })

  test('a reading that was none is left out', () => {
    const { play, loadId } = on()
    cooled(play, loadId, 0.16)
    const before = loadCooling(play.table, load(play, loadId))
    play.act({ do: 'read-heat', loadId, tempC: 200, sure: true })
    expect(loadCooling(play.table, load(play, loadId))).not.toEqual(before)
    play.act({ do: 'drop-reading', loadId, readId: load(play, loadId).readings.at(-1)?.id ?? '' })
    expect(loadCooling(play.table, load(play, loadId))).toEqual(before)
  })
})

describe('the last look at a cone wins', () => {
  test('a cone that stands after a false fall is waited for again, and teaches by its true fall alone', () => {
    const { play, loadId } = on()
    fired(play, loadId, 1100, 1160)
    const see = (is: 'down' | 'standing' | 'bending') => play.act({ do: 'see-cone', loadId, cone: '6', is })
    see('down')
    expect(stageOf(play.table, load(play, loadId), play.nowMs).is).toBe('off')
    play.wait(12)
    see('standing')
    expect(coneDownAt(load(play, loadId))).toBeUndefined()
    expect(stageOf(play.table, load(play, loadId), play.nowMs).is).toBe('fire')
    expect(conesTaught(load(play, loadId))).toEqual([])
    fired(play, loadId, 1190, 1220)
    play.nowMs -= 1790_000
    see('down')
    const fellAt = play.nowMs
    play.wait(60)
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'flat' })
    expect(coneDownAt(load(play, loadId))).toBe(fellAt)
    expect(conesTaught(load(play, loadId)).map(({ at }) => at)).toEqual([fellAt])
  })
})

describe('a fall that no kiln has', () => {
  const hot = (tempC: number) => {
    const { play, loadId } = on()
    play
      .wait(8 * 3600)
      .act({ do: 'switch-off', loadId, sure: true })
      .wait(3600)
    play.act({ do: 'read-heat', loadId, tempC })
    const read = (next: number) => play.try({ do: 'read-heat', loadId, tempC: next })
    return { play, loadId, read }
  }

  test('is asked about with the lid shut, so that no slip brings the lid', () => {
    const { play, read } = hot(300)
    play.wait(1200)
    expect(read(110)?.field).toBe('leap')
    expect(read(230)).toBeUndefined()
  })

  test('is asked about beyond three times what this kiln did before', () => {
    const { play, loadId } = on()
    play
      .wait(8 * 3600)
      .act({ do: 'switch-off', loadId, sure: true })
      .wait(3600)
    for (let hours = 0; hours < 4; hours++) {
      play.act({ do: 'read-heat', loadId, tempC: Math.round(20 + 500 * Math.exp(-0.1 * hours)) })
      play.wait(3600)
    }
    play.act({ do: 'open-lid', loadId, sure: true })
    const next = on(play)
    play
      .wait(8 * 3600)
      .act({ do: 'switch-off', loadId: next.loadId, sure: true })
      .wait(3600)
    play.act({ do: 'read-heat', loadId: next.loadId, tempC: 500 }).wait(3600)
    expect(play.try({ do: 'read-heat', loadId: next.loadId, tempC: 300 })?.field).toBe('leap')
    expect(play.try({ do: 'read-heat', loadId: next.loadId, tempC: 400 })).toBeUndefined()
  })

  test('is asked about with the lid up, and after a hot lid one cold reading is none', () => {
    const { play, loadId } = hot(900)
    const stage = () => stageOf(play.table, load(play, loadId), play.nowMs)
    play.wait(600).act({ do: 'open-lid', loadId, tempC: 640, sure: true }).wait(3600)
    expect(play.try({ do: 'read-heat', loadId, tempC: 58 })?.field).toBe('leap')
    play.act({ do: 'read-heat', loadId, tempC: 58, sure: true })
    expect(stage()).toEqual({ is: 'unload', cold: false })
    expect(isWarm(load(play, loadId), play.nowMs)).toBe(true)
    play.wait(1140).act({ do: 'read-heat', loadId, tempC: 57 })
    expect(stage()).toEqual({ is: 'unload', cold: false })
    play.wait(120).act({ do: 'read-heat', loadId, tempC: 56 })
    expect(stage()).toEqual({ is: 'unload', cold: true })
  })

  test('is asked about while the kiln is on, once it is too hot to steam', () => {
    const { play, loadId } = on()
    const next = (tempC: number) => play.try({ do: 'read-heat', loadId, tempC })
    play
      .wait(2 * 3600)
      .act({ do: 'read-heat', loadId, tempC: 240 })
      .wait(1800)
    expect(next(150)).toBeUndefined()
    play
      .wait(4 * 3600)
      .act({ do: 'read-heat', loadId, tempC: 900 })
      .wait(1800)
    expect(next(600)?.field).toBe('leap')
    expect(next(800)).toBeUndefined()
  })

  test('a kiln that has just gone on is at no 600', () => {
    const { play, loadId } = on()
    play.wait(60)
    expect(play.try({ do: 'read-heat', loadId, tempC: 600 })?.field).toBe('leap')
    expect(play.try({ do: 'read-heat', loadId, tempC: 40 })).toBeUndefined()
  })
})

describe('a kiln that climbs on fogged glass', () => {
  const candling = () => {
    const play = new Play()
    play.act({ do: 'set-settings', settings: { candle: true } })
    const { loadId } = on(play)
    return {
      play,
      read: (tempC: number) => play.wait(1200).act({ do: 'read-heat', loadId, tempC, sure: true }),
      glass: (fogged: boolean) => play.act({ do: 'hold-glass', loadId, fogged }),
      fogs: () => mayFog(play.table, load(play, loadId), play.nowMs),
      steams: () => steamsAt(play.table, load(play, loadId)),
      stage: () => stageOf(play.table, load(play, loadId), play.nowMs).is,
    }
  }

  test('is said until the glass was clear twice, and candles on once it is down again', () => {
    const { play, read, glass, steams, fogs, stage } = candling()
    play.wait(4 * 3600)
    read(90)
    glass(true)
    const foggedAt = play.nowMs
    expect(steams()).toBeUndefined()
    read(240)
    expect(steams()).toEqual({ foggedAt, tempC: 240, atHeat: false, wet: [] })
    glass(false)
    expect(steams()).toEqual({ foggedAt, clearAt: play.nowMs, tempC: 240, atHeat: false, wet: [] })
    play.wait(600)
    play.wait(1200)
    glass(false)
    expect([steams(), fogs()]).toEqual([undefined, true])
    glass(true)
    expect(stage()).toBe('fire')
    read(90)
    expect([steams(), stage()]).toEqual([undefined, 'candle'])
  })

  test('may be seen after a glass that was clear twice, until it is beyond steam or nobody looked for long', () => {
    const { play, read, glass, steams, fogs } = candling()
    play.wait(600)
    read(120)
    glass(false)
    // Too soon after it was lit: that tells nothing, and is said.
    expect(steams()?.early).toMatchObject({ at: play.nowMs })
    play.wait(3600)
    glass(false).wait(1200)
    glass(false)
    expect([steams(), fogs()]).toEqual([undefined, true])
    play.wait(7300)
    expect(fogs()).toBe(false)
    read(200)
    expect(fogs()).toBe(true)
    read(400)
    expect(fogs()).toBe(false)
  })

  test('is said of a glass that nobody tried, and fog seen there makes it graver, not silent', () => {
    const { play, read, glass, steams } = candling()
    play.wait(5400)
    read(140)
    expect(steams()).toEqual({ tempC: 140, atHeat: false, wet: [] })
    read(260)
    expect(steams()).toMatchObject({ tempC: 260 })
    glass(false)
    expect(steams()).toBeDefined()
    glass(true)
    expect(steams()).toMatchObject({ tempC: 260, foggedAt: play.nowMs, atHeat: true })
    read(400)
    expect(steams()).toBeUndefined()
  })
})
