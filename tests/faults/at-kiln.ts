/** Faults between the load and the lid: what a kiln's readings, cones and shelves are taken for, and the end before it. */
import type { Fault } from './fault.ts'

const FIRE = ['tests/unit/table/fire.test.ts']
const LOAD = ['tests/unit/table/load.test.ts']
const SLIPS = ['tests/unit/table/load-slips.test.ts']
const END = ['tests/unit/table/end.test.ts']

export const AT_KILN_FAULTS: readonly Fault[] = [
  {
    id: 'readings of the rise are taken for the cooling',
    file: 'src/table/load/cool.ts',
    find: 'return readings.filter(({ at }) => at >= sinceAt)',
    replace: 'return readings',
    tests: FIRE,
  },
  {
    id: 'a bung that was pulled changes nothing',
    file: 'src/table/load/cool.ts',
    find: 'Math.max(offAt ?? 0, bungAt ?? 0, openedAt ?? 0)',
    replace: 'Math.max(offAt ?? 0, openedAt ?? 0)',
    tests: FIRE,
  },
  {
    id: 'what an earlier cooling taught is not asked',
    file: 'src/table/load/cool.ts',
    find: 'const same = other.kiln.kilnId === load.kiln.kilnId && other.begunAt < load.begunAt',
    replace: 'const same = other.begunAt > load.begunAt',
    tests: FIRE,
  },
  {
    id: 'a cone far from its chart teaches the kiln',
    file: 'src/table/load/cones-taught.ts',
    find: '.filter((cone) => !isOdd(table, kilnId, cone))',
    replace: '',
    tests: FIRE,
  },
  {
    id: 'what the cones came to counts before it is taken',
    file: 'src/table/load/fire.ts',
    find: 'const taken = table.offsets?.[kilnId]',
    replace: 'const taken = table.offsets?.[kilnId] ?? { offsetC: 7.5, of: 1 }',
    tests: FIRE,
  },
  {
    id: 'a cone is tied to a reading of an hour before',
    file: 'src/table/load/cones-taught.ts',
    find: 'const BESIDE_MS = 15 * MIN_MS',
    replace: 'const BESIDE_MS = 90 * MIN_MS',
    tests: FIRE,
  },
  {
    id: 'readings lie in the order in which they were said',
    file: 'src/table/fold/reduce-load.ts',
    find: '[...list, one].sort((a, b) => a.at - b.at)',
    replace: '[...list, one]',
    tests: FIRE,
  },
  {
    id: 'two readings of one minute are both kept',
    file: 'src/table/decide/decide-fire.ts',
    find: 'twice(load, at) ??',
    replace: '',
    tests: LOAD,
  },
  {
    id: 'a reading may be older than the fire',
    file: 'src/table/decide/decide-fire.ts',
    find: 'if (from === undefined || now - ago * MIN_MS >= from) return undefined',
    replace: 'if (from === undefined || now >= from) return undefined',
    tests: LOAD,
  },
  {
    id: 'a clear glass tells in a kiln that is cold yet',
    file: 'src/table/load/loads.ts',
    find: 'since.find(({ at }) => at >= from)?.at',
    replace: 'since[0]?.at',
    tests: LOAD,
  },
  {
    id: 'a shelf is loaded over one that is not',
    file: 'src/table/decide/decide-load.ts',
    find: 'if (storey > 1 && below?.loadedAt === undefined)',
    replace: 'if (storey > 9 && below?.loadedAt === undefined)',
    tests: LOAD,
  },
  {
    id: 'a pot of a loaded shelf is put elsewhere',
    file: 'src/table/decide/decide-stand.ts',
    find: "if (from?.loadedAt !== undefined) return not('loaded', { number: from.number })",
    replace: '',
    tests: LOAD,
  },
  {
    id: 'another phone moves what stands in the kiln',
    file: 'src/table/fold/reduce-load.ts',
    find: 'place !== undefined && !event.settled)',
    replace: 'place !== undefined && event.settled)',
    tests: LOAD,
  },
  {
    id: 'a pot stands in two loads',
    file: 'src/table/decide/decide-stand.ts',
    find: 'if (!other) return undefined',
    replace: 'if (other) return undefined',
    tests: LOAD,
  },
  {
    id: 'a lit kiln falls as one that is off',
    file: 'src/table/decide/heat-doubts.ts',
    find: 'const LIT_PER_H = 0.5',
    replace: 'const LIT_PER_H = 1',
    tests: FIRE,
  },
  {
    id: 'halves of a kiln are built whatever their heights',
    file: 'src/engine/kiln/search.ts',
    find: '    uneven(trays),\n',
    replace: '',
    tests: LOAD,
  },
  {
    id: 'a kiln that was read is said not to have been on',
    file: 'src/table/load/deeds.ts',
    find: 'length > 0) ? [] : [last]',
    replace: 'length > 9) ? [] : [last]',
    tests: SLIPS,
  },
  {
    id: 'a bung stays out of a kiln that was not off',
    file: 'src/table/load/deeds.ts',
    find: 'deeds.slice(from).map',
    replace: 'deeds.slice(from, from + 1).map',
    tests: SLIPS,
  },
  {
    id: 'a lit load goes into the kiln that is changed',
    file: 'src/table/fold/reduce-load.ts',
    find: 'if (load.litAt !== undefined) return { ...load, firing }',
    replace: '',
    tests: SLIPS,
  },
  {
    id: 'the load in hand keeps the cone it was begun with',
    file: 'src/table/decide/decide-firing.ts',
    find: 'checked(firingRefusal(firing), ...follows,',
    replace: 'checked(firingRefusal(firing),',
    tests: SLIPS,
  },
  {
    id: 'the lids go on while pots still want coats',
    file: 'src/table/steps/close-down.ts',
    find: 'return pot.later || !wantsCoats(table, pot) || (waits && dueAt(step) - now > APART_MS)',
    replace: 'return true',
    tests: END,
  },
  {
    id: 'a lid stays on over glaze that was dipped into since',
    file: 'src/table/steps/close-down.ts',
    find: 'done !== undefined && done.at >= usedAt\n',
    replace: 'done !== undefined\n',
    tests: END,
  },
]
