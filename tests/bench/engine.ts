import { bundled } from './bundled.ts'
import type { Timing } from './melt.ts'

/** Times of the water balance, bundled as the app ships it. */
export const benchEngine = (): Promise<readonly Timing[]> =>
  bundled('water-times.ts', (ask) => ask('waterTimes') as readonly Timing[])
