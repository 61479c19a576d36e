import { haveWalls } from './forecast.ts'
import { wallFilledAt } from './saturation.ts'
import { wallForecast } from './wall-forecast.ts'

haveWalls({ wallForecast, wallFilledAt })
