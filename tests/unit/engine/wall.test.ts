import { describe, expect, test } from 'vitest'
import type { Body, Slop, WallEvent } from '../../../src/engine/contract.ts'
import { bisqueOf, DEFAULT_BODY, forecastPot, UNLEARNED } from '../../../src/engine/index.ts'
import { bandOf } from '../../../src/engine/numeric/spread.ts'
import { DRIP_S } from '../../../src/engine/parameters.ts'
import { filmOf } from '../../../src/engine/slop/film.ts'
import { drawn } from '../../../src/engine/slop/pickup.ts'
import { shedPerMm } from '../../../src/engine/slop/slop.ts'
import { rawPickUp } from '../../../src/engine/wall/calibrate.ts'
import { courseOf, finish, type Piece, runPot } from '../../../src/engine/wall/pot.ts'
import { air, beaker, dip, potOf, ROOM, SLIP } from '../../fixtures/wall.ts'

/** Plain wall of a straight pot after these events. */
function wallAfter(events: readonly WallEvent[], wallMm = 8, body: Body = DEFAULT_BODY, room = ROOM): Piece {
  const pot = potOf({ form: 'cylinder', heightMm: 80, rimMm: 90, wallMm, floorMm: 6, footLineMm: 0 }, body)
  return runPot(courseOf(pot, events, room), 1).pieces.at(-1)!
}

const castMm = (piece: Piece): number => piece.laid.outside.at(-1)!.gain.castMm
const calibrated = (pickUpFactor: number): Slop => ({ ...SLIP, pickUpFactor })

describe('dips', () => {
  test('a calibration scales every cast by its factor exactly', () => {
    const one = castMm(wallAfter([dip('a', 0, 3)]))
    const scaled = castMm(wallAfter([dip('a', 0, 3, { kind: 'full' }, calibrated(1.25))]))
    expect(scaled / one).toBeCloseTo(1.25, 12)
  })

  test('an old dry coat drinks, even on a body that does not', () => {
    const glassy = { ...DEFAULT_BODY, sorptivityMmPerSqrtS: 0 }
    const [first, second] = [dip('a', 0, 4), dip('b', 3 * 24 * 60, 4)]
    expect(castMm(wallAfter([first], 8, glassy))).toBe(0)
    const { mm, pores } = { mm: castMm(wallAfter([first, second], 8, glassy)), pores: 1 - SLIP.cakeSolids }
    const filmMm = wallAfter([first], 8, glassy).laid.outside[0]!.gain.filmMm
    // The film's own pores are all there is to fill.
    expect(mm).toBeGreaterThan(0.05)
    expect(mm).toBeLessThanOrEqual((filmMm * pores) / wallAfter([first]).wall.outside.shed + 1e-9)
  })

  test('cold slop and wall draw less, by the viscosity of water', () => {
    const [cold, warm] = [10, 30].map((tempC) =>
      castMm(wallAfter([dip('a', 0, 3)], 8, DEFAULT_BODY, air(tempC, 0.5))),
    )
    expect(warm! / cold!).toBeCloseTo(1.1089 / 0.8847, 6)
  })

  test('dipped again while the film is wet, a full wall gains hardly anything', () => {
    const again = wallAfter([dip('a', 0, 40), dip('b', 0.05, 3)], 2)
    const { castMm: cast, filmMm } = again.laid.outside.at(-1)!.gain
    expect(cast + filmMm).toBeLessThan(0.02)
  })
})

describe('a wall with a dry half', () => {
  test('the inside poured today and dipped outside tomorrow gives both a whole wall', () => {
    const pour = dip('a', 0, 8, { kind: 'inside' })
    const outside = dip('b', 24 * 60, 40, { kind: 'upTo', edgeUpMm: 80 })
    const apart = castMm(wallAfter([pour, outside], 4))
    const together = castMm(wallAfter([dip('c', 0, 40)], 4))
    expect(apart).toBeGreaterThan(1.15 * together)
  })

  test('soon after a pour the other side drinks less', () => {
    const pour = dip('a', 0, 8, { kind: 'inside' })
    const soon = castMm(wallAfter([pour, dip('b', 20, 6, { kind: 'upTo', edgeUpMm: 80 })], 4))
    const alone = castMm(wallAfter([dip('b', 20, 6, { kind: 'upTo', edgeUpMm: 80 })], 4))
    expect(soon).toBeLessThan(0.9 * alone)
  })

  test('water evens out between the halves', () => {
    const pour = dip('a', 0, 6, { kind: 'inside' })
    const gap = (minutes: number): number => {
      const { inside, outside } = wallAfter([pour, { kind: 'wipe', atMin: minutes, waterMm: 0 }], 10).wall
      return inside.body - outside.body
    }
    expect(gap(60)).toBeLessThan(0.7 * gap(1))
  })
})

describe('waits', () => {
  test('a film on a full wall is dried by the air alone, at the rate of free water', () => {
    const events = [dip('a', 0, 60), dip('b', 0.01, 0)]
    const piece = wallAfter(events, 2)
    expect(piece.wall.outside.body).toBeCloseTo(piece.wall.outside.cap, 9)
    const run = runPot(
      courseOf(
        potOf({ form: 'cylinder', heightMm: 80, rimMm: 90, wallMm: 2, floorMm: 6, footLineMm: 0 }),
        events,
        ROOM,
      ),
      1,
    )
    const { wall } = run.pieces.at(-1)!
    const film = wall.outside.film
    finish(run, 'touch')
    const waterMm = film + 0.03 * wall.outside.pore
    const hours = (wall.outside.touchS - run.lastS) / 3600
    // 55 to 75 g/m2h in an ordinary room (range of the evaporation laws for a pot of this width); what the coat then
    // hands to the emptying body makes it quicker, not slower.
    expect(waterMm / hours).toBeGreaterThan(0.05)
    expect(waterMm / hours).toBeLessThan(0.12)
  })

  test('a range is a factor up and the same factor down', () => {
    const { lower, likely, upper } = bandOf([{ minutes: 20, weight: 1 }], 0.4, 100)
    expect(likely - 100).toBeCloseTo(20, 9)
    expect((upper - 100) / 20).toBeCloseTo(20 / (lower - 100), 9)
    expect(Math.log((upper - 100) / 20)).toBeCloseTo(1.28155 * 0.4, 4)
  })

  test('an edge past seven days is never', () => {
    const band = bandOf([{ minutes: 9000, weight: 1 }], 0.4, 0)
    expect(band.likely).toBeCloseTo(9000, 6)
    expect(band.upper).toBe(Infinity)
  })

  test('half a chance of never is never', () => {
    const band = bandOf(
      [
        { minutes: 20, weight: 0.4 },
        { minutes: Infinity, weight: 0.6 },
      ],
      0.4,
      0,
    )
    expect(band.lower).toBeLessThan(20)
    expect(band.likely).toBe(Infinity)
    expect(band.upper).toBe(Infinity)
  })
})

describe('a harder bisque', () => {
  test('draws less: at 10 % absorption a coat is markedly thinner than at 18 %', () => {
    const [hard, soft] = [0.1, 0.18].map((absorption) =>
      castMm(wallAfter([dip('a', 0, 3)], 8, bisqueOf(absorption))),
    ) as [number, number]
    expect(hard).toBeLessThan(0.65 * soft)
  })

  // Open pores 0.2378 at 0.12 and 0.3188 at 0.18 by hand; their ratio squared is 1.797.
  test('suction goes by the square of the open pores', () =>
    expect(bisqueOf(0.18).sorptivityMmPerSqrtS / bisqueOf(0.12).sorptivityMmPerSqrtS).toBeCloseTo(1.797, 3))

  test('its suction is doubted the more, the farther it is from the usual; a dipped tile settles it', () => {
    const sd = (absorption: number, sorptivityMmPerSqrtS?: number): number =>
      bisqueOf(
        absorption,
        sorptivityMmPerSqrtS === undefined ? undefined : { absorption, sorptivityMmPerSqrtS },
      ).sorptivitySd ?? 0
    expect(sd(0.06)).toBeGreaterThan(sd(0.1))
    expect(sd(0.1)).toBeGreaterThan(sd(0.12))
    expect(sd(0.06, 0.05)).toBeLessThan(sd(0.12) / 2)
  })
})

test('a scratch through cast and film as computed says that the slop is as computed', () => {
  const [shed, underS] = [shedPerMm(SLIP), 3 + 100 / 120]
  const face = {
    suction2: DEFAULT_BODY.sorptivityMmPerSqrtS ** 2,
    room: Infinity,
    coatRoom: 0,
    resistance: 0,
  }
  const cast = drawn(face, shed, SLIP.cakeResistanceSPerMm2, underS).intoBody / shed
  const measuredMm = cast + filmOf(SLIP, 100, 120, DRIP_S).thirstyMm
  const dipped = { slop: SLIP, body: DEFAULT_BODY, holdS: 3, lengthMm: 100, liftMmPerS: 120 }
  const reading = { ...dipped, measuredMm, errorMm: 0.05, wallMm: 8, bothFaces: true }
  expect(rawPickUp(reading).factor).toBeCloseTo(1, 9)
})

describe('a soaked wall', () => {
  const thirstyMin = (wallMm: number, startWater: number, events: readonly WallEvent[]): number =>
    forecastPot(potOf(beaker(wallMm), DEFAULT_BODY, startWater), events, ROOM, UNLEARNED).thirsty.likely
  const off = { kind: 'washOff', atMin: 0 } as const

  test.each([4, 6.5, 8])('of %s mm drinks again as late, whatever soaked it', (wallMm) => {
    const came = thirstyMin(wallMm, 1, [{ kind: 'air', atMin: 0, air: ROOM }])
    const bothFaces = thirstyMin(wallMm, 0, [dip('a', 0, 3, { kind: 'full' }, SLIP, 120), off])
    const oneFace = thirstyMin(wallMm, 0, [dip('a', 0, 3, { kind: 'inside' }, SLIP, 120), off])
    expect(bothFaces / came).toBeGreaterThan(0.85)
    expect(bothFaces / came).toBeLessThan(1.15)
    expect(oneFace / came).toBeGreaterThan(0.85)
    expect(oneFace / came).toBeLessThan(1.15)
  })

  test('lends no half that a dip of both faces will ask for: most of a coat is on when it is told thirsty', () => {
    const soaked = potOf(beaker(6.5), DEFAULT_BODY, 1)
    const airs = { kind: 'air', atMin: 0, air: ROOM } as const
    const atMin = forecastPot(soaked, [airs], ROOM, UNLEARNED).thirsty.likely
    const bodyMm = (pot: typeof soaked): number =>
      forecastPot(pot, [airs, dip('a', atMin, 3)], ROOM, UNLEARNED).zones.find(({ name }) => name === 'body')!
        .likelyMm
    expect(bodyMm(soaked)).toBeGreaterThan(0.65 * bodyMm(potOf(beaker(6.5))))
  })
})
