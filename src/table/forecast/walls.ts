/** Once fetched, it gives `forecast.ts` what computes walls. A table without a coat does without. */

import { haveWalls } from './forecast.ts'
import { wallFilledAt } from './saturation.ts'
import { wallForecast } from './wall-forecast.ts'

haveWalls({ wallForecast, wallFilledAt })
