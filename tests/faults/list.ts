/** All deliberate faults. */
import { ADVICE_FAULTS } from './advice.ts'
import { AIR_FAULTS } from './air.ts'
import { AT_KILN_FAULTS } from './at-kiln.ts'
import { BENCH_FAULTS } from './bench.ts'
import type { Fault } from './fault.ts'
import { FIRED_FAULTS } from './fired.ts'
import { LOAD_FAULTS } from './load.ts'
import { MELT_FAULTS } from './melt.ts'
import { OPENING_FAULTS } from './opening.ts'
import { ORDER_FAULTS } from './order.ts'
import { SHAPE_FAULTS } from './shape.ts'
import { STORE_FAULTS } from './store.ts'
import { WATER_FAULTS } from './water.ts'

export const FAULTS: readonly Fault[] = [
  ...WATER_FAULTS,
  ...AIR_FAULTS,
  ...SHAPE_FAULTS,
  ...ADVICE_FAULTS,
  ...MELT_FAULTS,
  ...AT_KILN_FAULTS,
  ...LOAD_FAULTS,
  ...FIRED_FAULTS,
  ...OPENING_FAULTS,
  ...ORDER_FAULTS,
  ...BENCH_FAULTS,
  ...STORE_FAULTS,
]
