/** Faults of forecasts, learning and advice. */
import type { Fault } from './fault.ts'

const LEARNING = 'tests/reference/learning.test.ts'
const SCENARIOS = 'tests/unit/engine/scenarios.test.ts'
const FORECAST = 'tests/unit/engine/forecast.test.ts'
const WALL = 'tests/unit/engine/wall.test.ts'
const LEARN = 'tests/unit/engine/learn.test.ts'
const ADVICE = 'tests/unit/engine/advice.test.ts'
const engine = (name: string): string => `src/engine/${name}.ts`

export const ADVICE_FAULTS: readonly Fault[] = [
  {
    id: 'a rim collar is warned of the run below it',
    file: 'src/table/advice/warnings.ts',
    find: 'if (!adds) return undefined',
    replace: 'if (!adds && pot.gone) return undefined',
    tests: ['tests/unit/table/quiet.test.ts'],
  },
  {
    id: 'a quarter of a second is offered',
    file: 'src/table/advice/most-seconds.ts',
    find: 'let least = SHORTEST_S / STEP_S - 1',
    replace: 'let least = 0',
    tests: ['tests/unit/table/quiet.test.ts'],
  },
  {
    id: 'learning thickens the coats',
    file: engine('wait/forecast'),
    find: 'const asComputed = runPot(course, 1)',
    replace: 'const asComputed = runPot(course, Math.exp(learned.fillMean))',
    tests: [FORECAST],
  },
  {
    id: 'upper estimate without the full film',
    file: engine('wait/forecast'),
    find: '+ Math.max(gain.filmMm, highFilmMm)',
    replace: '- gain.filmMm',
    tests: ['tests/laws/any-input.test.ts'],
  },
  {
    id: 'log-normal taken as normal',
    file: engine('numeric/spread'),
    find: 'Math.exp((k - 1) * Z90 * sd)',
    replace: '(1 + (k - 1) * Z90 * sd)',
    tests: [WALL],
  },
  {
    id: 'more than seven days told as a number',
    file: engine('numeric/spread'),
    find: 'minutes > HORIZON_MIN ? Infinity : fromMin + minutes',
    replace: 'fromMin + minutes',
    tests: [WALL],
  },
  {
    id: 'observation kept after take-back',
    file: engine('wait/learn'),
    find: 'const looks: { look: Look; at: readonly number[]; fromMin: number }[] = []',
    replace:
      "const looks: { look: Look; at: readonly number[]; fromMin: number }[] = ((globalThis as Record<string, unknown>)['kept'] ??= []) as never",
    tests: [LEARN],
  },
  {
    id: 'not yet read as nothing',
    file: engine('wait/time-factor'),
    find: 'const low = dampMin === undefined ? 0 :',
    replace: 'const low = dampMin !== 0 ? 0 :',
    tests: [LEARNING, LEARN],
  },
  {
    id: 'a wrong tap rules',
    file: engine('wait/learn'),
    find: 'export const LABEL_NOISE = 0.02',
    replace: 'export const LABEL_NOISE = 0',
    tests: [LEARN],
  },
  {
    id: 'scratch read with its film',
    file: engine('wall/calibrate'),
    find: 'const measuredCast = reading.measuredMm - film',
    replace: 'const measuredCast = reading.measuredMm',
    tests: ['tests/unit/engine/wall.test.ts'],
  },
  {
    id: 'impossible thickness promised',
    file: engine('wait/seconds'),
    find: 'if (of(high) < goal) return undefined',
    replace: 'if (of(high) < goal) return high',
    tests: [ADVICE],
  },
  {
    id: 'repair forgets the limits',
    file: engine('wait/repair'),
    find: 'const over = Math.max(0, likelyMm - limitMm)',
    replace: 'const over = 0 * (likelyMm - limitMm)',
    tests: [ADVICE, SCENARIOS],
  },
  {
    id: 'a full wall still fits',
    file: engine('wait/fit'),
    find: 'const FULL = 0.92',
    replace: 'const FULL = 2',
    tests: [ADVICE],
  },
  {
    id: 'close never told',
    file: engine('wait/grade'),
    find: "upperMm > limitMm ? 'close' : 'fine'",
    replace: "upperMm > 9 * limitMm ? 'close' : 'fine'",
    tests: [ADVICE],
  },
  {
    id: 'hot wax waits for dry air',
    file: engine('air/wax'),
    find: "if (wax === 'hot') {",
    replace: "if (wax === 'hot' && evaporationKgPerM2s === 0) {",
    tests: [SCENARIOS],
  },
  {
    id: 'dry and not yet read apart',
    file: 'src/engine/wait/time-factor.ts',
    find: 'Math.max(0, high - low)',
    replace: 'Math.max(0, high - 0 * low)',
    tests: ['tests/reference/learning.test.ts'],
  },
  {
    id: 'the scale teaches nothing',
    file: 'src/engine/wait/learn.ts',
    find: 'weight *= normalPdf(Math.log(weighing.gainG / at[k]!) / sd)',
    replace: 'weight *= normalPdf(0 * Math.log(weighing.gainG / at[k]!) * sd)',
    tests: ['tests/unit/engine/learn.test.ts'],
  },
  {
    id: 'what was known before is forgotten',
    file: 'src/engine/wait/learn.ts',
    find: 'let weight = normalPdf(x) * time.evidence',
    replace: 'let weight = normalPdf(0 * x) * time.evidence',
    tests: ['tests/unit/engine/learn.test.ts'],
  },
  {
    id: 'what was left out still teaches',
    file: 'src/table/forecast/learning.ts',
    find: '!pot.dropped?.includes(lessonId)',
    replace: 'lessonId !== undefined && pot.dips.length >= 0',
    tests: ['tests/unit/table/measured.test.ts'],
  },
  {
    id: 'figures kept after the clay has changed',
    file: 'src/table/forecast/learning.ts',
    find: '    table.board,\n    table.settings,\n    ...air,',
    replace: '    table.settings,\n    ...air,',
    tests: ['tests/unit/table/measured.test.ts'],
  },
  {
    id: "the scratch's own spread ignored",
    file: 'src/engine/wait/forecast.ts',
    find: 'dip.slop.pickUpSd ?? Math',
    replace: 'Math',
    tests: ['tests/unit/engine/forecast.test.ts'],
  },
  {
    id: 'skipping a coat never tried',
    file: 'src/engine/wait/repair.ts',
    find: '[rest[k]!.holdS, ...TRIED_S, undefined]',
    replace: '[rest[k]!.holdS, ...TRIED_S]',
    tests: ['tests/unit/engine/advice.test.ts'],
  },
  {
    id: 'repaired to what happened, not to what was meant',
    file: 'src/engine/wait/repair.ts',
    find: 'zonesAfter({ ...standing, events: planned })',
    replace: 'zonesAfter({ ...standing, events: [...standing.events, ...planned.slice(planned.length)] })',
    tests: ['tests/unit/engine/repair.test.ts'],
  },
  {
    id: 'a wanted coat at any density',
    file: 'src/engine/wait/seconds.ts',
    find: 'slop: { ...dip.slop, gramsPerMl }',
    replace: 'slop: { ...dip.slop, gramsPerMl: dip.slop.gramsPerMl + 0 * gramsPerMl }',
    tests: ['tests/reference/advice.test.ts'],
  },
  {
    id: 'the dry wall is the wet one',
    file: 'src/engine/wait/seconds.ts',
    find: 'pot: { ...standing.pot, startWater: 0 }, events: []',
    replace: 'pot: { ...standing.pot, startWater: 0 }',
    tests: ['tests/unit/engine/advice.test.ts'],
  },
  {
    id: 'tomorrow is tonight',
    file: 'src/engine/wait/fit.ts',
    find: 'startMin + DAY_MIN',
    replace: 'startMin + 0 * DAY_MIN',
    tests: ['tests/unit/engine/advice.test.ts'],
  },
  {
    id: 'a touch is expected to be dry',
    file: 'src/engine/wait/next-touch.ts',
    find: '(1 - pDry) * variance(states, ifDamp, j)',
    replace: '0 * variance(states, ifDamp, j)',
    tests: ['tests/unit/engine/learn.test.ts'],
  },
  {
    id: 'the half across is counted',
    file: 'src/engine/wait/half-and-half.ts',
    find: 'const LEFT_OUT = { first: 1, second: 0,',
    replace: 'const LEFT_OUT = { first: undefined, second: 0,',
    tests: ['tests/unit/engine/advice.test.ts'],
  },
  {
    id: 'every half is the first',
    file: 'src/table/model/halves.ts',
    find: '% 2 === 1 ? 1 : 0',
    replace: '% 1 === 1 ? 1 : 0',
    tests: ['tests/unit/table/halves.test.ts'],
  },
]
