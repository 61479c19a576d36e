/** Faults of what the fire teaches. */
import type { Fault } from './fault.ts'

const LESSON = ['tests/unit/engine/fired/flow-lesson.test.ts']
const CURVE = ['tests/unit/engine/fired/run-curve.test.ts']
const DESK = ['tests/unit/engine/fired/fired-desk.test.ts']
const AGAIN = ['tests/unit/engine/fired/again.test.ts']
const LAWS = ['tests/laws/fired.test.ts']
const TABLE = ['tests/unit/table/fired.test.ts']
const engine = (name: string): string => `src/engine/fired/${name}.ts`

export const FIRED_FAULTS: readonly Fault[] = [
  {
    id: 'ten pots of one firing are ten results',
    file: engine('lesson-solver'),
    find: 'seen.mean + seen.sd * NORMAL_NODES[j]![0]',
    replace: 'seen.mean + 0 * NORMAL_NODES[j]![0]',
    tests: LESSON,
  },
  {
    id: 'a pot that did not run says nothing',
    file: engine('run-curve'),
    find: 'low: Number.NEGATIVE_INFINITY, high: first }',
    replace: 'low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY }',
    tests: CURVE,
  },
  {
    id: 'one odd pot moves a factor as the normal law would',
    file: engine('lesson-solver'),
    find: 'return t4Pdf((lnK.ln - at) / scale) / scale',
    replace: 'return normal(lnK.ln - at, scale) / scale + 0 * t4Pdf(at)',
    tests: LESSON,
  },
  {
    id: 'one firing proves a pair',
    file: engine('proven'),
    find: 'export const LEAST_FIRINGS = 2',
    replace: 'export const LEAST_FIRINGS = 1',
    tests: DESK,
  },
  {
    id: 'a pot fired too cool proves a pair',
    file: engine('proven'),
    find: '!(pastFoot || stuck || faulty || short)',
    replace: '!(pastFoot || stuck || faulty || (short && false))',
    tests: DESK,
  },
  {
    id: 'a pot that could never have run clears its glaze',
    file: engine('proven'),
    find: 'Math.abs(firstLn - lnMean) <= NEAR_LN',
    replace: 'Math.abs(firstLn - lnMean) <= 9 * NEAR_LN',
    tests: DESK,
  },
  {
    id: 'a subject hears its own results again from the studio',
    file: engine('lesson-solver'),
    find: '    nodes.toStudio,\n  )',
    replace: '    null,\n  )',
    tests: LESSON,
  },
  {
    id: 'the order of entry decides',
    file: engine('flow-lesson'),
    find: 'const results = given.toSorted(byName(({ id }) => id))',
    replace: 'const results = given',
    tests: LAWS,
  },
  {
    id: 'whoever had any part in a run is taught by it',
    file: engine('run-curve'),
    find: 'export const TEACHES_SHARE = 0.7',
    replace: 'export const TEACHES_SHARE = 0.2',
    tests: CURVE,
  },
  {
    id: 'a measure is read without error',
    file: engine('run-curve'),
    find: 'sd: reach * READING_MM }',
    replace: 'sd: 0 * reach * READING_MM }',
    tests: CURVE,
  },
  {
    id: 'every crawl is the thickness’s',
    file: engine('thickness-limit'),
    find: 'const ODD = 0.015',
    replace: 'const ODD = 0',
    tests: DESK,
  },
  {
    id: 'a tile is worth what is at stake, not what it changes',
    file: engine('tile-value'),
    find: 'saved += Math.min(losses.slab, bare) - then / sum',
    replace: 'saved += Math.min(losses.slab, bare)',
    tests: DESK,
  },
  {
    id: 'two pots say who guesses better',
    file: engine('guess-score'),
    find: 'const LEAST_POTS = 10',
    replace: 'const LEAST_POTS = 2',
    tests: DESK,
  },
  {
    id: 'a board is spoken of after one evening',
    file: engine('room-memory'),
    find: 'count >= LEAST_SITTINGS &&',
    replace: 'count >= 0 * LEAST_SITTINGS &&',
    tests: DESK,
  },
  {
    id: 'damp weather is put down to a board',
    file: engine('room-memory'),
    find: 'contrast[fromBoard + k] = k === b ? 1 : -1 / Math.max(1, boards.length - 1)',
    replace: 'contrast[fromBoard + k] = k === b ? 1 : 0',
    tests: DESK,
  },
  {
    id: 'a fallen cone is taken for the next one',
    file: engine('heat'),
    find: '(highest + next) / 2 - plannedEndC',
    replace: 'next - plannedEndC',
    tests: DESK,
  },
  {
    id: 'the alarm goes by the likely density',
    file: engine('dip-density'),
    find: 'return low > targetGramsPerMl + toleranceGramsPerMl',
    replace: 'return (low + high) / 2 > targetGramsPerMl + toleranceGramsPerMl',
    tests: ['tests/unit/engine/fired/fired-bars.test.ts'],
  },
  {
    id: 'the second coat is solved on a bare wall',
    file: engine('again'),
    find: 'events: [...events] }',
    replace: 'events: [...standing.events] }',
    tests: AGAIN,
  },
  {
    id: 'a pot whose coats were counted by eye teaches',
    file: 'src/table/fired/fired-coats.ts',
    find: 'pot.coatsCounted === undefined &&',
    replace: '(pot.coatsCounted === undefined || pot.coatsCounted > 0) &&',
    tests: TABLE,
  },
  {
    id: 'the commonest result is thrown away at the table',
    file: 'src/table/fired/results.ts',
    find: "if (!seen) return nobody('no-run')",
    replace: "if (!seen || seen.kind === 'none') return nobody('no-run')",
    tests: TABLE,
  },
  {
    id: 'results of another cone count',
    file: 'src/table/fired/results.ts',
    find: 'load?.firing.cone === firing?.cone',
    replace: 'load !== undefined',
    tests: TABLE,
  },
  {
    id: 'cones say nothing of a firing',
    file: 'src/table/fired/heats.ts',
    find: 'return { key, ...heatOf(overK, end.tempC), overK, short }',
    replace: 'return { key, ...heatOf(null, end.tempC), overK, short }',
    tests: TABLE,
  },
  {
    id: 'a lesson is carried to another cone as it is',
    file: 'src/table/firing/glaze-flow.ts',
    find: 'capped(dose.likelyPerMm * lesson.high * high)',
    replace: 'capped(dose.likelyPerMm * lesson.high)',
    tests: TABLE,
  },
  {
    id: 'a danger goes away by itself',
    file: 'src/table/fired/danger.ts',
    find: "told.leads === 'danger' && !told.answered",
    replace: "told.leads === 'danger' && told.answered",
    tests: TABLE,
  },
  {
    id: 'results change what was told of their own load',
    file: 'src/table/firing/glaze-flow.ts',
    find: 'if (other === undefined) return own',
    replace: 'if (other === undefined) return flowOf(table, glazeId, null)',
    tests: TABLE,
  },
  {
    id: 'a pair of thin coats that never could have run is clear',
    file: 'src/table/fired/pairs.ts',
    find: "pair.is === 'proved' && isGrounded(table, pair)",
    replace: "pair.is === 'proved'",
    tests: TABLE,
  },
]
