/** Faults of the water balance. */
import type { Fault } from './fault.ts'

const CASTING = 'tests/reference/casting.test.ts'
const WATER = 'tests/laws/water.test.ts'
const THICKNESS = 'tests/laws/thickness.test.ts'
const SCENARIOS = 'tests/unit/engine/scenarios.test.ts'
const FORECAST = 'tests/unit/engine/forecast.test.ts'
const OUTSIDE = 'tests/reference/outside.test.ts'
const WALL = 'tests/unit/engine/wall.test.ts'
const engine = (name: string): string => `src/engine/${name}.ts`

export const WATER_FAULTS: readonly Fault[] = [
  {
    id: 'R2 inverted',
    file: engine('slop/pickup'),
    find: 'const perR2 = cakeResistance / shed',
    replace: 'const perR2 = cakeResistance * shed',
    tests: [CASTING],
  },
  {
    id: 'capacity clamp gone',
    file: engine('slop/pickup'),
    find: 'Math.min(room, intoBody)',
    replace: 'intoBody',
    tests: [CASTING],
  },
  {
    id: 'coat grows linearly',
    file: engine('slop/pickup'),
    find: 'coatRoom * Math.sqrt(seconds / fillS)',
    replace: 'coatRoom * (seconds / fillS)',
    tests: [CASTING],
  },
  {
    id: 'humidity ignored',
    file: engine('wall/weather'),
    find: 'vapourDensityKgPerM3(air.tempC, air.rh)',
    replace: 'vapourDensityKgPerM3(air.tempC, 0.5)',
    tests: [SCENARIOS],
  },
  {
    id: 'draught ignored',
    file: engine('wall/weather'),
    find: 'boundarySPerM: 1 / by.massMPerS',
    replace: 'boundarySPerM: 1 / 0.004',
    tests: [FORECAST],
  },
  {
    id: 'temperature of suction ignored',
    file: engine('wall/weather'),
    find: 'suction: suctionFactor(air.tempC)',
    replace: 'suction: 1',
    tests: [WALL],
  },
  {
    id: 'exit time ignored',
    file: engine('shape/immersion'),
    find: '(1 / dip.lowerMmPerS + 1 / dip.liftMmPerS)',
    replace: '(1 / dip.lowerMmPerS)',
    tests: [FORECAST],
  },
  {
    id: 'trapped air ignored',
    file: engine('shape/immersion'),
    find: "return cover.kind === 'full' || cover.kind === 'inside'",
    replace: "return cover.kind !== 'upTo'",
    tests: [FORECAST],
  },
  {
    id: "old coat's thirst ignored",
    file: engine('wall/wall'),
    find: 'const coatRoom = side.pore - side.coat',
    replace: 'const coatRoom = 0 * side.pore',
    tests: [WALL],
  },
  {
    id: 'face shared twice',
    file: engine('wall/pot'),
    find: 'const room = (fillablePerMm(body) * thickMm) / 2',
    replace: 'const room = fillablePerMm(body) * thickMm',
    tests: [WATER],
  },
  {
    id: 'faces dipped together drink one after the other',
    file: engine('wall/pot'),
    find: 'for (const { face } of reached) piece.wall[face].lends = 0',
    replace: '',
    tests: [WATER, FORECAST],
  },
  {
    id: 'dry half not lent',
    file: engine('wall/pot'),
    find: 'side.lends = Math.max(side.lends, driedPart(side))',
    replace: 'side.lends = Math.min(side.lends, driedPart(side))',
    tests: [WALL],
  },
  {
    id: 'water of the film lost',
    file: engine('wall/wall'),
    find: 'side.film += gainedFilmMm * w.shed',
    replace: '',
    tests: [WATER],
  },
  {
    id: 'wet film counted again',
    file: engine('wall/wall'),
    find: 'Math.max(0, filmNowMm - side.film / side.shed)',
    replace: 'filmNowMm',
    tests: [WALL],
  },
  {
    id: 'suction grows with wetness',
    file: engine('wall/wall'),
    find: '(1 - filledBehind(side, other))',
    replace: '(1 + filledBehind(side, other))',
    tests: [THICKNESS],
  },
  {
    id: 'pick-up factor taken once',
    file: engine('wall/wall'),
    find: 'const perR2 = w.cakeResistance / (w.pickUp * w.suction) ** 2 / w.shed',
    replace: 'const perR2 = w.cakeResistance / (w.pickUp * w.suction) / w.shed',
    tests: [WALL],
  },
  {
    id: 'washing leaves a dry wall',
    file: engine('wall/handling'),
    find: 'side.body = side.cap\n',
    replace: 'side.body = 0\n',
    tests: [FORECAST],
  },
  {
    id: 'evaporation not booked',
    file: engine('wall/balance'),
    find: 'wall.evaporated += lost\n',
    replace: '',
    tests: [WATER],
  },
  {
    id: 'halves never even out',
    file: engine('wall/balance'),
    find: 'const halfLink = seconds * HALF_TO_HALF',
    replace: 'const halfLink = 0 * seconds * HALF_TO_HALF',
    tests: [WALL],
  },
  {
    id: 'coat never hands to the body',
    file: engine('wall/balance'),
    find: 'const coatLinkO = o.perCap > 0 && perPoreO > 0 ? seconds * pull(o, perPoreO) : 0',
    replace: 'const coatLinkO = 0',
    tests: [SCENARIOS, FORECAST],
  },
  {
    id: 'pores bring nothing to a drying face',
    file: engine('wall/balance'),
    find: 'throughPores(side, depthMm, weather.suction) / gap + 1 / dry',
    replace: '0 * throughPores(side, depthMm, weather.suction) + 1 / dry',
    tests: [OUTSIDE],
  },
  {
    id: 'pores bring as much when nearly dry',
    file: engine('wall/balance'),
    find: 'Math.exp(LIQUID_SLOPE * side.body * side.perCap)',
    replace: 'Math.exp(LIQUID_SLOPE)',
    tests: [OUTSIDE],
  },
  {
    id: 'pores bring as much from deep down',
    file: engine('wall/balance'),
    find: 'depthMm ** 2',
    replace: 'depthMm',
    tests: [OUTSIDE],
  },
  {
    id: 'pores bring as much in the cold',
    file: engine('wall/balance'),
    find: 'suction ** 2 * side.body',
    replace: 'suction ** 0 * side.body',
    tests: [OUTSIDE],
  },
  {
    id: 'kiln-dry asks the coats alone',
    file: engine('wall/drying'),
    find: 'Math.max(coats * PER_KILN_COAT, waterOf(wall) * wall.perKilnMm)',
    replace: 'coats * PER_KILN_COAT + 0 * waterOf(wall)',
    tests: [FORECAST],
  },
  {
    id: 'touch-dry as soon as the film is gone',
    file: engine('wall/drying'),
    find: 'side.film + side.coat - side.pore + TOUCH_EMPTY * side.newPore',
    replace: '-1 + 0 * side.coat * TOUCH_EMPTY',
    tests: [FORECAST],
  },
  {
    id: 'events taken as they came',
    file: engine('wall/pot'),
    find: '[...events].sort(byTime)',
    replace: '[...events]',
    tests: [FORECAST],
  },
  {
    id: 'change of air ignored',
    file: engine('wall/pot'),
    find: 'weather = course.weathers.get(event.air)!\n',
    replace: '\n',
    tests: [FORECAST],
  },
  {
    id: 'yield stress holds nothing',
    file: engine('slop/film'),
    find: '(1000 * liquid.yieldPa) / weight(liquid)',
    replace: '(0 * liquid.yieldPa) / weight(liquid)',
    tests: [CASTING],
  },
  {
    id: 'suction does not follow absorption',
    file: engine('wall/body'),
    find: 'pores ** SUCTION_POWER',
    replace: 'pores ** (0 * SUCTION_POWER)',
    tests: [WALL],
  },
]
