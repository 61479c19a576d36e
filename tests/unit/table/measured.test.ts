import { describe, expect, it } from 'vitest'
import { faceAreaCm2 } from '../../../src/engine/shape/areas.ts'
import { doseOf } from '../../../src/table/advice/dose.ts'
import { fitOf } from '../../../src/table/advice/fitting-stack.ts'
import { warningsFor } from '../../../src/table/advice/warnings.ts'
import { airOf } from '../../../src/table/forecast/air-inputs.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { lessonFor, lessonOf, seenOn } from '../../../src/table/forecast/learning.ts'
import {
  coatByWeight,
  dewOn,
  readCloth,
  readPair,
  readSlide,
  readSoak,
  soakSecondsFor,
  thirstOf,
  timesAssumed,
} from '../../../src/table/forecast/readings.ts'
import { waterNowG } from '../../../src/table/forecast/saturation.ts'
import { profileOf } from '../../../src/table/forecast/shape-inputs.ts'
import { untaughtForecast } from '../../../src/table/forecast/wall-forecast.ts'
import { pickUpOfPin, slopOf } from '../../../src/table/forecast/wall-inputs.ts'
import { DEFAULT_AIR } from '../../../src/table/model/defaults.ts'
import { Play, START_MS } from './play.ts'

const demo = () => new Play().act({ do: 'lay-demo' })
const air = (play: Play) => play.table.air.at(-1)!.air

describe('the day’s air', () => {
  const hung = { widthMm: 300, heightMm: 400, grams: 117, at: START_MS }

  it('a cloth that loses twice as much as computed makes an air-dried coat wait about half as long', () => {
    const play = demo()
    const computed = readCloth(air(play), hung, 107, 60)
    if (typeof computed === 'string') throw new Error(computed)
    const lostG = 10 / computed.factor
    const twice = readCloth(air(play), hung, 117 - 2 * lostG, 60)
    if (typeof twice === 'string') throw new Error(twice)
    expect(twice.factor).toBeCloseTo(2, 6)
    play.act({ do: 'logged', potId: 'demo.36', agoMin: 0 })
    const wait = () => forecastOf(play.table, play.table.pots['demo.36']!)!.kiln.likely - START_MS
    const before = wait()
    play.act({ do: 'set-air', air: { ...air(play), cloth: twice } })
    expect(wait() / before).toBeGreaterThan(0.45)
    expect(wait() / before).toBeLessThan(0.75)
  })

  it('a cloth that gained, or was weighed too soon, or lost more than any air takes, is not believed', () => {
    expect(readCloth(DEFAULT_AIR, hung, 118, 60)).toBe('wrong')
    expect(readCloth(DEFAULT_AIR, hung, 110, 5)).toBe('wrong')
    expect(readCloth(DEFAULT_AIR, hung, 5, 10)).toBe('wrong')
    expect(readCloth({ ...DEFAULT_AIR, rh: 1 }, hung, 110, 60)).toBe('noAir')
  })

  it('a pair gives its humidity by how the wet one hung, and asks where none could be right', () => {
    expect(readPair(DEFAULT_AIR, 20, 15, 'natural')).toEqual({ is: 'humidity', rh: 0.56, icy: false })
    expect(readPair(DEFAULT_AIR, 20, 15, 'still')).toEqual({ is: 'humidity', rh: 0.47, icy: false })
    expect(readPair(DEFAULT_AIR, 25, 12, 'still')).toEqual({ is: 'tooDry' })
    expect(readPair(DEFAULT_AIR, 20, 21, 'fanned')).toEqual({ is: 'wetAbove' })
    // Thinner air draws less from the wick for the same gap: the room is damper than at the sea.
    const high = readPair({ ...DEFAULT_AIR, altitudeM: 3000 }, 20, 15, 'natural')
    expect(high.is === 'humidity' && high.rh).toBeGreaterThan(0.56)
  })

  it('at a height the pressure is that of the height', () => {
    expect(airOf(DEFAULT_AIR).pressurePa).toBe(101_325)
    expect(airOf({ ...DEFAULT_AIR, altitudeM: 500 }).pressurePa).toBeCloseTo(95_461, -1)
    expect(demo().try({ do: 'set-air', air: { ...DEFAULT_AIR, altitudeM: 9000 } })).toMatchObject({
      code: 'out-of-range',
      field: 'altitudeM',
    })
  })

  it('dew on pots from the cold is said before their first dip, until they have warmed', () => {
    const play = demo()
    const damp = { tempC: 24, rh: 0.78, draught: 'room' } as const
    expect(dewOn(damp, 8).condenses).toBe(true)
    expect(dewOn(damp, 22).condenses).toBe(false)
    const dew = () =>
      warningsFor(play.table, play.table.pots['demo.33']!, 'demo.gatepost', play.nowMs).find(
        ({ kind }) => kind === 'dew',
      )
    play.act({ do: 'set-air', air: damp })
    expect(dew()).toBeUndefined()
    play.act({ do: 'set-air', air: { ...damp, cold: { potC: 8, at: play.nowMs } } })
    expect(dew()).toMatchObject({ potC: 8 })
    play.wait(3600)
    expect(dew()).toBeUndefined()
  })
})

describe('glaze and clay', () => {
  it('a scratch brings its own spread into the upper estimate', () => {
    const { table } = demo()
    const gatepost = table.buckets['demo.gatepost']!
    const pickUp = pickUpOfPin(table, gatepost.facts)!
    expect(slopOf(table, gatepost, 1.45)).toMatchObject({
      pickUpFactor: pickUp.factor,
      pickUpSd: pickUp.sd,
    })
    const { pinMm: _none, ...unscratched } = gatepost.facts
    expect(slopOf(table, { ...gatepost, facts: unscratched }, 1.45).pickUpSd).toBeUndefined()
    expect(pickUp.sd).toBeLessThan(0.2)
  })

  describe('a pot weighed dry and after seconds in water', () => {
    /** Grams of a pot of the demo whose clay drinks like this, by the square root of time, and 0.03 mm that cling. */
    const soaked = (play: Play, seconds: number, mmPerSqrtS: number, dryG = 400) => {
      const pot = play.table.pots['demo.33']!
      const profile = profileOf(pot.facts)
      const cm2 =
        faceAreaCm2(profile, 'inside', 0, pot.facts.shape.heightMm + 1) +
        faceAreaCm2(profile, 'outside', 0, pot.facts.shape.heightMm + 1)
      const wetG = dryG + (cm2 / 10) * (mmPerSqrtS * Math.sqrt(seconds) + 0.03)
      return readSoak(play.table, pot, { dryG, wetG, seconds })
    }

    it('tells how fast its clay drinks, whatever clings', () => {
      for (const s of [0.08, 0.1, 0.12])
        expect(soaked(demo(), 10, s)).toEqual({ is: 'suction', sorptivityMmPerSqrtS: expect.closeTo(s, 9) })
    })

    it('tells what it holds once it is surely full, and neither in between', () => {
      const play = demo()
      const pot = play.table.pots['demo.33']!
      expect(soaked(play, 10, 0.16)).toEqual({ is: 'between' })
      const full = readSoak(play.table, pot, { dryG: 400, wetG: 450, seconds: 600 })
      expect(full?.is).toBe('full')
      // What clings is no part of it: less than 50 g of 400, over 0.85 of a soak.
      const absorption = full?.is === 'full' ? full.absorption : 0
      expect(absorption).toBeLessThan(50 / 400 / 0.85)
      expect(absorption).toBeGreaterThan(47 / 400 / 0.85)
    })

    it('asks for seconds in which a usual wall still drinks, thin or thick', () => {
      for (const wallMm of [3.5, 5, 8]) {
        const play = demo()
        const { facts } = play.table.pots['demo.33']!
        play.act({ do: 'set-pot', pot: { ...facts, shape: { ...facts.shape, wallMm } } })
        const seconds = soakSecondsFor(play.table, play.table.pots['demo.33']!)
        expect(soaked(play, seconds, 0.11)?.is, `${wallMm} mm, ${seconds} s`).toBe('suction')
      }
    })

    it('says when the scale is too coarse for it, and refuses weights that cannot be', () => {
      expect(soaked(demo(), 1, 0.02)).toEqual({ is: 'little' })
      const play = demo()
      const pot = play.table.pots['demo.33']!
      expect(readSoak(play.table, pot, { dryG: 400, wetG: 390, seconds: 10 })).toBeUndefined()
      for (const seconds of [10, 600])
        expect(readSoak(play.table, pot, { dryG: 400, wetG: 900, seconds })).toBeUndefined()
    })

    it("taken as the board's own, it moves its waits and narrows them", () => {
      const play = demo()
      const found = soaked(play, 10, 0.06)
      const before = forecastOf(
        play.act({ do: 'logged', potId: 'demo.34', agoMin: 0 }).table,
        play.table.pots['demo.34']!,
      )!
      if (found?.is !== 'suction') throw new Error('no suction')
      play.act({
        do: 'set-board',
        board: { ...play.table.board, sorptivityMmPerSqrtS: found.sorptivityMmPerSqrtS },
      })
      const after = forecastOf(play.table, play.table.pots['demo.34']!)!
      const wide = ({ touch }: typeof before) => (touch.upper - play.nowMs) / (touch.lower - play.nowMs)
      expect(after.touch.likely).not.toBe(before.touch.likely)
      expect(wide(after)).toBeLessThan(wide(before))
    })
  })

  it('a slower clay found by two water dips leaves the scratched coat of its own tile as scratched', () => {
    const found = thirstOf({ seconds: 10, gainG: 3 }, { seconds: 60, gainG: 4.5 }, 50)!
    expect(found).toBeCloseTo(15 / (50 * (Math.sqrt(60) - Math.sqrt(10))), 12)
    expect(thirstOf({ seconds: 10, gainG: 3 }, { seconds: 60, gainG: 2 }, 50)).toBeUndefined()
    expect(timesAssumed(found, 0.12)).toBeLessThan(1)
    const play = demo()
    const factor = () => pickUpOfPin(play.table, play.table.buckets['demo.gatepost']!.facts)!.factor
    const before = factor()
    play.act({ do: 'set-board', board: { ...play.table.board, sorptivityMmPerSqrtS: found } })
    expect(factor()).toBeGreaterThan(before)
  })

  it('a wet tile on the scale tells its coat: 72 g over 533.2 cm2 at 1.45 is 0.546 mm', () => {
    expect(coatByWeight(1.45, 2.6, 72, 533.2)).toBeCloseTo(0.546, 3)
    expect(coatByWeight(0.9, 2.6, 72, 533.2)).toBeUndefined()
  })

  it('seconds, coat and density of a bucket agree with each other', () => {
    const play = demo()
    const { facts } = play.table.buckets['demo.heather']!
    const dose = doseOf(play.table, facts, play.nowMs)
    const wanted = dose.coatMm(facts.targetGramsPerMl)
    expect(dose.densityFor(wanted)).toBeCloseTo(facts.targetGramsPerMl, 2)
    expect(dose.coatMm(1.53)).toBeGreaterThan(wanted)
    expect(dose.secondsFor(wanted, 1.53).holdS!).toBeLessThan(dose.holdS)
    expect(dose.densityFor(5)).toBeUndefined()
  })
})

describe('the stack that fits', () => {
  const full = (holdS: number) => ({ bucketId: 'demo.gatepost', cover: { kind: 'full' }, holdS }) as const

  it('says at which coat the wall fills, with shorter seconds and with inside tonight', () => {
    const { table, nowMs } = demo()
    const { facts } = table.pots['demo.38']!
    const fit = fitOf(table, facts, [full(5), full(4)], nowMs)!
    expect(fit.fullAtCoat).toBe(2)
    expect(fit.shorter!.every(({ holdS }, k) => holdS < [5, 4][k]!)).toBe(true)
    expect(fitOf(table, facts, fit.shorter!, nowMs)).toBeUndefined()
    expect(fit.split!.inside.map(({ cover }) => cover.kind)).toEqual(['inside', 'inside'])
    expect(fit.split!.outside.map(({ cover }) => cover.kind)).toEqual(['upTo', 'upTo'])
    // One stack of both, as the editor takes it, is one that can be stored.
    const play = demo()
    play.act({
      do: 'set-stack',
      stack: { name: 'Split', coats: [...fit.split!.inside, ...fit.split!.outside] },
    })
  })

  it('has nothing to say of a thick wall, or of no coats', () => {
    const { table, nowMs } = demo()
    const { facts } = table.pots['demo.37']!
    const thick = { ...facts, shape: { ...facts.shape, wallMm: 14 } }
    expect(fitOf(table, thick, [full(3), full(2)], nowMs)).toBeUndefined()
    expect(fitOf(table, facts, [], nowMs)).toBeUndefined()
  })
})

describe('what the room has taught', () => {
  const touched = () => {
    const play = demo()
    play.act({ do: 'logged', potId: 'demo.31', agoMin: 0 })
    play.wait(45 * 60).act({ do: 'touched', potIds: ['demo.31'], dry: false })
    return play.wait(20 * 60).act({ do: 'touched', potIds: ['demo.31'], dry: true })
  }
  const one = (play: Play) => seenOn(play.table, play.table.pots['demo.31']!)[0]!

  it('takes of several touches of a coat the last NOT YET and the first DRY', () => {
    const play = demo()
    play.act({ do: 'logged', potId: 'demo.31', agoMin: 0 })
    const touched = [false, false, true, true].map((dry) => {
      play.wait(15 * 60).act({ do: 'touched', potIds: ['demo.31'], dry })
      return play.nowMs / 60_000
    })
    expect(one(play).observation).toMatchObject({ dampMin: touched[1], dryMin: touched[2] })
  })

  it('is listed, can be left out as if it had never been, and counted again', () => {
    const play = touched()
    const { lessonId } = one(play)
    const taught = lessonOf(play.table)
    expect(taught.count).toBe(1)
    play.act({ do: 'drop-lesson', potId: 'demo.31', lessonId, dropped: true })
    expect(lessonOf(play.table)).toMatchObject({ count: 0, timeMean: 0, fillMean: 0 })
    expect(one(play).lessonId).toBe(lessonId)
    play.act({ do: 'drop-lesson', potId: 'demo.31', lessonId, dropped: false })
    expect(lessonOf(play.table)).toEqual(taught)
    play.act({ do: 'take-back' })
    expect(lessonOf(play.table).count).toBe(0)
  })

  it('stands beside what walls and air alone would tell of a pot that nobody touched', () => {
    const play = demo().act({ do: 'logged', potId: 'demo.36', agoMin: 0 })
    const pot = () => play.table.pots['demo.36']!
    const first = forecastOf(play.table, pot())!.ready
    play.act({ do: 'logged', potId: 'demo.31', agoMin: 0 }).wait(45 * 60)
    play.act({ do: 'touched', potIds: ['demo.31'], dry: false })
    expect(forecastOf(play.table, pot())!.ready.likely).toBeGreaterThan(first.likely + 60_000)
    expect(untaughtForecast(play.table, pot()).ready).toEqual(first)
  })

  it('tells most of the glaze it was learned on, and less of another', () => {
    const play = touched()
    const own = lessonFor(play.table, 'demo.gatepost')
    const other = lessonFor(play.table, 'demo.heather')
    expect(own.timeMean).toBeGreaterThan(0)
    expect(other.timeMean).toBe(own.timeMean)
    expect(other.timeSd).toBeGreaterThanOrEqual(own.timeSd)
    expect(other.fillSd).toBeGreaterThan(own.fillSd)
  })

  it('keeps its figures while nothing it rests on changes, whatever else happens', () => {
    const play = touched()
    const [lesson, seen] = [lessonFor(play.table, 'demo.heather'), one(play)]
    play.wait(60).act({ do: 'waxed', potId: 'demo.33' }).act({ do: 'set-air', air: DEFAULT_AIR })
    expect(one(play)).toBe(seen)
    expect(lessonFor(play.table, 'demo.heather')).toBe(lesson)
    play.act({ do: 'set-board', board: { ...play.table.board, absorption: 0.16 } })
    expect(one(play)).not.toBe(seen)
  })

  it('a pot on the scale teaches how much water dips bring', () => {
    const play = demo()
    play.act({ do: 'weigh', potId: 'demo.33', grams: 420, as: 'bisque' })
    play.act({ do: 'logged', potId: 'demo.33', agoMin: 0 }).wait(60)
    const computedG = waterNowG(play.table, play.table.pots['demo.33']!, play.nowMs)
    play.act({ do: 'weigh', potId: 'demo.33', grams: 540, as: 'now' })
    expect(seenOn(play.table, play.table.pots['demo.33']!)[0]!.observation).toMatchObject({
      kind: 'weighing',
    })
    expect(waterNowG(play.table, play.table.pots['demo.33']!, play.nowMs)).toBeGreaterThan(computedG)
    expect(lessonOf(play.table).fillMean).toBeGreaterThan(0.05)
  })
})

describe('a slide that was weighed', () => {
  it('0.9 g on 30 cm2 at 1.45 and 2.6: 0.03 g/cm2, at most 2.9 Pa, 0.12 mm dry on a full wall', () => {
    const slide = readSlide(1.45, 2.6, 0.9, 30)
    if (slide === undefined || slide === 'wrong') throw new Error('a slide of an ordinary glaze')
    expect(slide.gramsPerCm2).toBeCloseTo(0.03, 12)
    expect(slide.yieldPa).toBeCloseTo(2.942, 3)
    // 0.03 g/cm2 are 0.2069 mm of slop, of which 0.28125 / 0.48 is coat.
    expect(slide.fullMm).toBeCloseTo((0.3 / 1.45) * (0.28125 / 0.48), 9)
  })

  it('a film that no glaze leaves is wrong; a slop that is none says nothing', () => {
    expect(readSlide(1.45, 2.6, 20, 30)).toBe('wrong')
    expect(readSlide(1.45, 2.6, 0.02, 30)).toBe('wrong')
    expect(readSlide(1.89, 2.6, 0.9, 30)).toBeUndefined()
  })

  it('is what the full wall keeps, at its own density and, by the law, at another', () => {
    const play = demo()
    const bucket = () => play.table.buckets['demo.gatepost']!
    const { facts } = bucket()
    const at = (gramsPerMl: number) => slopOf(play.table, bucket(), gramsPerMl).clingsGramsPerCm2
    expect(at(facts.targetGramsPerMl)).toBeUndefined()
    play.act({ do: 'set-bucket', bucket: { ...facts, clingsGramsPerCm2: 0.05 } })
    expect(at(facts.targetGramsPerMl)).toBeCloseTo(0.05, 9)
    expect(at(facts.targetGramsPerMl + 0.05)!).toBeGreaterThan(0.06)
    expect(at(facts.targetGramsPerMl - 0.05)!).toBeLessThan(0.04)
    expect(play.try({ do: 'set-bucket', bucket: { ...facts, clingsGramsPerCm2: 0.5 } })).toMatchObject({
      code: 'out-of-range',
      field: 'clingsGramsPerCm2',
    })
  })
})
