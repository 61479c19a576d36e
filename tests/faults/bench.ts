/** Faults of the bench: which card shows, what is said of it, what a hit on its bar does. */
import type { Fault } from './fault.ts'

const CALM = ['tests/unit/table/calm.test.ts']
const VOICE = ['tests/laws/voice.test.ts']
const BAR = ['tests/unit/wire/press-bar.test.ts']

const END = ['tests/unit/table/end.test.ts']
const RULES = ['tests/unit/table/small-rules.test.ts']

export const BENCH_FAULTS: readonly Fault[] = [
  {
    id: 'a new order replaces the card in hand',
    file: 'src/table/card/shown.ts',
    find: 'if (schedule !== before.schedule && !isIdle) {',
    replace: 'if (schedule !== before.schedule && isIdle) {',
    tests: CALM,
  },
  {
    id: 'a foot that is shown gives way to what comes due',
    file: 'src/table/card/shown.ts',
    find: '? card.done',
    replace: '? card.done && table.pan !== undefined',
    tests: VOICE,
  },
  {
    id: 'a double knock answers the card that it brought',
    file: 'src/wire/press-bar.ts',
    find: '=== hitCard ? AGAIN_MS : guardMs',
    replace: '=== hitCard ? AGAIN_MS : Math.min(AGAIN_MS, guardMs)',
    tests: BAR,
  },
  {
    id: 'a call is made again of a pot whose companion was answered for',
    file: 'src/wire/telling.ts',
    find: 'now - last.at >= SOON_MS && timesBy',
    replace: 'timesBy',
    tests: VOICE,
  },
  {
    id: 'a washed pot is planned as dry bisque',
    file: 'src/table/forecast/waits-ahead.ts',
    find: 'startWater: wet?.water ?? 0',
    replace: 'startWater: 0',
    tests: ['tests/unit/table/jobs.test.ts'],
  },
  {
    id: 'a clock changes a card that is being said',
    file: 'src/table/card/shown.ts',
    find: 'return said || atWork ? { ...before, table } : fresh',
    replace: 'return atWork ? { ...before, table } : fresh',
    tests: CALM,
  },
  {
    id: 'what comes due takes the card from under the hands',
    file: 'src/table/card/shown.ts',
    find: 'return said || atWork ? { ...before, table } : fresh',
    replace: 'return said ? { ...before, table } : fresh',
    tests: ['tests/unit/table/at-hand.test.ts'],
  },
  {
    id: 'a stir stands minutes before its dip',
    file: 'src/table/order/schedule.ts',
    find: 'Math.max(0, (next ?? 0) - task.endAt)',
    replace: 'Math.min(0, (next ?? 0) - task.endAt)',
    tests: CALM,
  },
  {
    id: 'a stir that is good is called too old',
    file: 'src/table/card/follow.ts',
    find: "reason === 'stale' && !isStale(table, task.bucketId, now) ? 'staleByDip' : reason",
    replace: "reason === 'stale' && isStale(table, task.bucketId, now) ? 'staleByDip' : reason",
    tests: CALM,
  },
  {
    id: 'a dip is said without its glaze',
    file: 'src/table/card/spoken.ts',
    find: ': [...how, ...into, ...s]',
    replace: ': [...how, ...s]',
    tests: VOICE,
  },
  {
    id: 'pots that the card does not ask for are called by their places',
    file: 'src/wire/telling.ts',
    find: 'names ? places : []',
    replace: 'places',
    tests: VOICE,
  },
  {
    id: 'a hit on the bar under an open sheet is done unseen',
    file: 'src/wire/press-bar.ts',
    find: 'if (sheet.peek()) hits.refused()',
    replace: 'if (!sheet) hits.refused()',
    tests: BAR,
  },
  {
    id: 'a pedal hits the card that has just come',
    file: 'src/wire/press-bar.ts',
    find: "if (by !== 'press' && by !== 'hold' && atMs - shownMs < CARD_MS) return",
    replace: "if (by !== 'press' && by !== 'hold' && atMs - shownMs < 0) return",
    tests: BAR,
  },
  {
    id: 'READY is thirst whatever the person says',
    file: 'src/table/forecast/wall-forecast.ts',
    find: "(table.settings.readyMeans === 'thirsty' ? thirsty : touch)",
    replace: 'thirsty',
    tests: RULES,
  },
  {
    id: 'a longer hold ends when the planned one would have',
    file: 'src/table/fold/dip-times.ts',
    find: 'const longer = (holdS - dose.holdS) * 1000',
    replace: 'const longer = 0 * (holdS - dose.holdS)',
    tests: RULES,
  },
  {
    id: 'two touches teach, and those before are forgotten',
    file: 'src/table/forecast/learning.ts',
    find: 'const LESSONS_USED = 24',
    replace: 'const LESSONS_USED = 2',
    tests: RULES,
  },
  {
    id: 'a foot is checked seconds before a dip',
    file: 'src/table/card/follow.ts',
    find: 'const FOOT_CHECK_GAP_MS = 20_000',
    replace: 'const FOOT_CHECK_GAP_MS = 15_000',
    tests: CALM,
  },
  {
    id: 'a coat is warned of for a run that is not its own',
    file: 'src/table/advice/warnings.ts',
    find: 'const ADDS_MM = 0.1',
    replace: 'const ADDS_MM = 0.05',
    tests: ['tests/unit/table/quiet.test.ts'],
  },
  {
    id: 'the bucket is stirred where the vessel is dipped into',
    file: 'src/table/card/dip-card.ts',
    find: '...(isCollar && collar ? { inVessel: true as const } : {}),',
    replace: '',
    tests: ['tests/unit/table/collar.test.ts'],
  },
  {
    id: 'what was put away once is never asked for again',
    file: 'src/table/steps/close-down.ts',
    find: 'done !== undefined && done.at >= usedAt',
    replace: 'done !== undefined',
    tests: END,
  },
  {
    id: 'all evenings are one sitting',
    file: 'src/table/steps/close-down.ts',
    find: 'if (since - outAt > APART_MS) break',
    replace: '',
    tests: END,
  },
  {
    id: 'a foot that was felt before the last coat counts as checked',
    file: 'src/table/steps/steps.ts',
    find: 'footSignedAt !== undefined && footSignedAt >= outAt',
    replace: 'footSignedAt !== undefined',
    tests: END,
  },
  {
    id: 'minutes since the stir forgotten',
    file: 'src/table/fold/reduce-dips.ts',
    find: '{ stirredAgoMs: usedAt - stirredAt }',
    replace: '{}',
    tests: ['tests/unit/screens/stirred.test.ts'],
  },
  {
    id: 'a soak that no pot can drink is nearly full',
    file: 'src/table/forecast/readings.ts',
    find: "return outOfRange('absorption', soak.wetG / soak.dryG - 1) ? undefined : reading",
    replace: 'return reading',
    tests: ['tests/unit/table/measured.test.ts'],
  },
]
