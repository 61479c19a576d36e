/** Faults of guessing, judging and what is kept of it. */
import type { Fault } from './fault.ts'

const OPENING = ['tests/unit/table/opening.test.ts']
const STORY = ['tests/unit/table/story.test.ts']
const LINES = ['tests/unit/store/photo-lines.test.ts']

export const OPENING_FAULTS: readonly Fault[] = [
  {
    id: 'a story of many coats takes a class more than its minute',
    file: 'src/table/opening/film.ts',
    find: 'Math.min(1, MOST_MS / all)',
    replace: 'Math.max(1, MOST_MS / all)',
    tests: ['tests/unit/table/film.test.ts'],
  },
  {
    id: 'a pot that did not run kept to any range told',
    file: 'src/engine/fired/guess-score.ts',
    find: 'return [0, FIRST_MM]',
    replace: 'return [0, roomMm]',
    tests: ['tests/unit/table/looking-back.test.ts'],
  },
  {
    id: 'a new mix is water in the old one',
    file: 'src/table/opening/density-course.ts',
    find: 'thinner: !isMixed &&',
    replace: 'thinner: (!isMixed || true) &&',
    tests: ['tests/unit/table/looking-back.test.ts'],
  },
  {
    id: 'a changed room hears coats that waited in the one before',
    file: 'src/table/forecast/board-memory.ts',
    find: 'outAt >= changedAt',
    replace: '(outAt >= changedAt || dipId !== "")',
    tests: ['tests/unit/table/boards.test.ts'],
  },
  {
    id: 'a pot is judged before its lid is up',
    file: 'src/table/decide/decide-opening.ts',
    find: 'load && load.openedAt === undefined ? not',
    replace: 'load && load.litAt === undefined ? not',
    tests: OPENING,
  },
  {
    id: 'a later guess takes the place of the first',
    file: 'src/table/fired/fired-pot.ts',
    find: 'const guess = so.guess ?? (event.mm === undefined ? undefined : { mm: event.mm, at })',
    replace: 'const guess = event.mm === undefined ? so.guess : { mm: event.mm, at }',
    tests: OPENING,
  },
  {
    id: 'a run may be longer than the wall',
    file: 'src/table/decide/decide-opening.ts',
    find: 'return mm >= least && mm <= most',
    replace: 'return mm >= least && mm <= 1200',
    tests: OPENING,
  },
  {
    id: 'a second look replaces the first',
    file: 'src/table/fired/fired-pot.ts',
    find: 'return second ? {',
    replace: 'return second && !so.found ? {',
    tests: OPENING,
  },
  {
    id: 'a judged pot stays on the board',
    file: 'src/table/fold/reduce-fired.ts',
    find: "event.kind === 'taken-out' ? { gone: true,",
    replace: "event.kind === 'guessed' ? { gone: false,",
    tests: OPENING,
  },
  {
    id: 'the lowest shelf is opened first',
    file: 'src/table/opening/queue.ts',
    find: 'return levelB - levelA || nthA - nthB',
    replace: 'return levelA - levelB || nthA - nthB',
    tests: STORY,
  },
  {
    id: 'a pot is asked for again though it was looked at',
    file: 'src/table/opening/queue.ts',
    find: 'due.filter((afterMs) => last < found.at + afterMs).length',
    replace: 'due.length',
    tests: STORY,
  },
  {
    id: 'a damaged picture is taken for whole',
    file: 'src/store/photo-lines.ts',
    find: 'crc32(data) !== sum',
    replace: 'data.length < 0',
    tests: LINES,
  },
]
