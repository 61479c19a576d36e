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
]
