import type { Fault } from './fault.ts'

export const ORDER_FAULTS: readonly Fault[] = [
  {
    id: 'order-without-habits',
    file: 'src/planner/plan/plan.ts',
    find: '[...starts(problem), ...ordersByStay(problem)]',
    replace: 'starts(problem)',
    tests: ['tests/planner/habits.test.ts'],
  },
  {
    id: 'habit-stirs-late',
    file: 'src/planner/search/by-stay.ts',
    find: 's - stir > freshS[b]!',
    replace: 's - stir > freshS[b]! + 600',
    tests: ['tests/planner/habits.test.ts'],
  },
  {
    id: 'two-go-on-too-late',
    file: 'src/planner/timing/time-two.ts',
    find: 'memory.reach(from[l]!, i)',
    replace: 'memory.reach(i, i)',
    tests: ['tests/planner/timing.test.ts'],
  },
  {
    id: 'two-worse-than-one',
    file: 'src/planner/plan/plan.ts',
    find: '(found.lateS - bound.lateS || found.finishS - bound.finishS) < 0',
    replace: 'found.lateS >= bound.lateS',
    tests: ['tests/planner/two.test.ts'],
  },
  {
    id: 'order-without-visits',
    file: 'src/planner/plan/plan.ts',
    find: '[...quick, ...ordersByVisits(problem, timer)]',
    replace: 'quick',
    tests: ['tests/planner/known.test.ts'],
  },
]
