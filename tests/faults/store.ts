/** Faults of keeping: what is stored, taken in, brought back. */
import type { Fault } from './fault.ts'

const TRUST = 'tests/unit/store/trust.test.ts'
const OPENS = 'tests/laws/opens.test.ts'
const FOLD = ['tests/unit/table/fold.test.ts']
const MEETING = ['tests/laws/meeting.test.ts']
const OF_TABLE = ['tests/laws/of-table.test.ts']
const store = (name: string): string => `src/store/${name}.ts`

export const STORE_FAULTS: readonly Fault[] = [
  {
    id: 'any mark believed',
    file: store('marks'),
    find: 'return Number(by) <= schema && of === String(sum)',
    replace: 'return Number(by) <= schema || of === String(sum)',
    tests: [TRUST, OPENS],
  },
  {
    id: 'contents of a merge unexamined',
    file: store('merge'),
    find: 'const field = fault(record.event)',
    replace: 'const field = fault === undefined ? "" : undefined',
    tests: [TRUST, OPENS],
  },
  {
    id: 'records ahead of the clock taken',
    file: store('merge'),
    find: 'nowMs + MOST_APART_MS',
    replace: 'nowMs + 1e6 * MOST_APART_MS',
    tests: [TRUST],
  },
  {
    id: 'order follows any clock',
    file: 'shared/record.ts',
    find: 'Math.max(atMs < LATEST_CLOCK ? Math.floor(atMs) : 0, last + 1, 1)',
    replace: 'Math.max(Math.floor(atMs), last + 1, 1)',
    tests: [TRUST],
  },
  {
    id: 'silent storage waited for',
    file: store('journal'),
    find: 'const ANSWER_MS = 3000',
    replace: 'const ANSWER_MS = 3_000_000',
    tests: [TRUST],
  },
  {
    id: 'torn line of the copy joined to the next',
    file: store('copy-lines'),
    find: "tornTail ? '\\n' : ''",
    replace: "tornTail ? '' : ''",
    tests: ['tests/unit/store/copy.test.ts'],
  },
  {
    id: 'half a backup called whole',
    file: store('backup'),
    find: 'records.length === count && crc32(sums.join()) === sum && into === aside',
    replace: 'records.length <= count',
    tests: ['tests/unit/store/backup.test.ts'],
  },
  {
    id: 'a jump written by every window',
    file: 'src/wire/jumped.ts',
    find: 'return Math.abs(byMs - known) <= JUMP_MS ? 0 : byMs - known',
    replace: 'return known === 0 ? byMs : byMs',
    tests: ['tests/unit/wire/clock-set.test.ts'],
  },
  {
    id: 'the orders of a clock that was set right stay ahead',
    file: 'src/wire/clock-set.ts',
    find: `Math.max(
    0,
    events`,
    replace: `Math.max(
    Number.NEGATIVE_INFINITY,
    events`,
    tests: ['tests/laws/clocks.test.ts'],
  },
  {
    id: 'whom a phone met kept without what it read',
    file: store('merge'),
    find: 'if (entries.length > 0) await storage.put(entries)',
    replace: 'await takeIn(own); await storage.put(entries)',
    tests: ['tests/unit/wire/meeting.test.ts'],
  },
  {
    id: 'a redirected page kept as it came',
    file: 'sw/files.ts',
    find: 'if (!found.redirected && (',
    replace: 'if ((',
    tests: ['tests/unit/worker/files.test.ts'],
  },
  {
    id: 'what rotted in the copy taken for there',
    file: store('copy-lines'),
    find: 'if (whole) lacking',
    replace: 'lacking',
    tests: ['tests/unit/store/copy.test.ts'],
  },
  {
    id: 'lines that look like records tried without end',
    file: store('backup'),
    find: 'refused > TRIES_MOST',
    replace: 'refused < 0',
    tests: ['tests/unit/store/backup.test.ts'],
  },
  {
    id: 'a version that does not start stays',
    file: 'sw/starts.ts',
    find: 'failed >= FAILED_MOST && worked',
    replace: 'failed > 9 * FAILED_MOST && worked',
    tests: ['tests/unit/worker/starts.test.ts'],
  },
  {
    id: 'whoever clears a table clears all of it',
    file: 'src/table/fold/by-others.ts',
    find: 'pot.from === phone &&',
    replace: "phone !== '-' &&",
    tests: FOLD,
  },
  {
    id: 'a phone that clears its table hides what it never read',
    file: 'src/table/fold/by-others.ts',
    find: 'if (things.has(id)) keep(id)',
    replace: "if (things.has('')) keep(id)",
    tests: ['tests/laws/clears.test.ts'],
  },
  {
    id: 'two answers take both dips of a coat off',
    file: 'src/table/fold/answers.ts',
    find: 'if (last.some(({ on }) => on) && last.some(({ on }) => !on))',
    replace: 'if (last.some(({ on }) => on) && last.length > 9)',
    tests: ['tests/laws/answers.test.ts'],
  },
  {
    id: 'another phone moves this one by its own clock',
    file: 'src/table/fold/seen.ts',
    find: 'const shiftMs = name === phone ? skewMs : skewMs + aheadAt(clocks.get(name), steadyMs)',
    replace: 'const shiftMs = name === phone ? skewMs : skewMs + 0 * aheadAt(clocks.get(name), steadyMs)',
    tests: MEETING,
  },
  {
    id: 'another phone holds this one',
    file: 'src/table/fold/seen.ts',
    find: "    case 'held':\n    case 'resumed':\n    case 'picked':",
    replace: "    case 'picked':",
    tests: MEETING,
  },
  {
    id: 'take back takes what another phone did',
    file: 'src/table/fold/hit-line.ts',
    find: 'if (from || UNNAMED.has(event.kind)',
    replace: 'if (UNNAMED.has(event.kind)',
    tests: MEETING,
  },
  {
    id: 'the count of another phone counts here',
    file: 'src/table/steps/steps.ts',
    find: 'if (dip && here && now < dip.outAt)',
    replace: 'if (dip && now < dip.outAt)',
    tests: MEETING,
  },
  {
    id: 'what was answered is asked again',
    file: 'src/table/fold/knew.ts',
    find: 'upTo >= before.order && order < later.order',
    replace: 'upTo >= before.order && order > later.order',
    tests: MEETING,
  },
  {
    id: 'a removal by who knew nothing of the use takes the bucket away',
    file: 'src/table/fold/removals.ts',
    find: '(other) => other.from !== word.from && other.order > known(other.from)',
    replace: "(other) => other.from === '-' && other.order > known(other.from)",
    tests: OF_TABLE,
  },
  {
    id: 'a setting that another phone changed comes in untold',
    file: 'src/table/meeting/of-table.ts',
    find: 'if (isSame(before?.facts, one.facts) || !isSame(standing(table, one), one.facts)) continue',
    replace: 'if (isSame(before?.facts, one.facts) || isSame(standing(table, one), one.facts)) continue',
    tests: OF_TABLE,
  },
  {
    id: 'a demo that was laid beside own pots counts',
    file: 'src/table/fold/demos.ts',
    find: 'return laid.map(({ hit }) => hit).filter((hit) => hit !== begun)',
    replace: 'return laid.map(({ hit }) => hit).filter((hit) => hit !== begun && laid.length === 0)',
    tests: FOLD,
  },
  {
    id: 'a text goes into a spreadsheet as a formula',
    file: 'src/wire/sheets.ts',
    find: 'escapeFormulae: true',
    replace: 'escapeFormulae: false',
    tests: ['tests/unit/wire/sheets.test.ts'],
  },
  {
    id: 'washed-off coats are told as on',
    file: 'src/table/sheets/sheets.ts',
    find: 'const isOff = (pot: PotState, dip: DipState): boolean => !coatsOn(pot).includes(dip)',
    replace: 'const isOff = (_pot: PotState, _dip: DipState): boolean => false',
    tests: ['tests/unit/wire/sheets.test.ts'],
  },
  {
    id: 'a life sign taken as on the clock as it goes now',
    file: 'src/wire/clock-set.ts',
    find: 'seen.atMs - (seen.skewMs ?? skewMs) + skewMs',
    replace: 'seen.atMs',
    tests: ['tests/unit/wire/clock-set.test.ts'],
  },
  {
    id: 'a refused lock asked for for ever',
    file: 'src/wire/one-sounds.ts',
    find: "?.name === 'AbortError') lost()",
    replace: "?.name !== '') lost()",
    tests: ['tests/unit/wire/one-sounds.test.ts'],
  },
]
