/** Candling: water driven out of the pots below boiling, before the kiln climbs. Times in minutes on the events' clock. */
import { saturationPressurePa } from '../air/vapour.ts'
import { inRange } from '../check.ts'
import type { Air, PotWall, WallEvent } from '../contract.ts'
import { forecastPot } from '../wait/forecast.ts'
import type { Learned } from '../wait/learned.ts'
import { courseOf, runPot, waterG } from '../wall/pot.ts'
import { WARMING_MIN } from './nouns.ts'

/** Temperatures of candling, degC: below boiling, and not so low that it is a warm room. Common practice, no source. */
const CANDLED_C = [50, 95] as const
export const CANDLING_C = 85
/** Draught past the pots, m/s, and the room's vapour that so many times over hangs about them. Assumptions. */
const DRAUGHT_MPS = 0.1
const VAPOUR = 2

/** A pot that goes in, as the table follows it. */
export interface Candled {
  readonly id: string
  readonly pot: PotWall
  readonly events: readonly WallEvent[]
  readonly air0: Air
}

export interface Candling {
  /** The pot that takes longest. */
  readonly potId: string
  /** From lighting until it is dry through, warming counted: likely and late, min. `Infinity`: not within seven days. */
  readonly likelyMin: number
  readonly lateMin: number
  /** Water in all pots at lighting, g. */
  readonly waterG: number
}

/** The air about pots that are candled at `tempC` in a room. */
function candlingAir(room: Air, tempC: number): Air {
  const vapourPa = VAPOUR * room.rh * saturationPressurePa(room.tempC)
  const rh = Math.min(1, vapourPa / saturationPressurePa(tempC))
  return { tempC, rh, speedMps: DRAUGHT_MPS, pressurePa: room.pressurePa }
}

/**
 * How long to candle pots that are lit at `litAtMin`, and how much water has to leave; null without pots. The vent is on.
 * The glass held to the spy hole has the last word: this reaches 60 degC beyond the waits it was tuned on.
 * RangeError unless `tempC` is 50 to 95 and pots and air make sense.
 */
export function candling(
  pots: readonly Candled[],
  litAtMin: number,
  room: Air,
  learned: Learned,
  tempC = CANDLING_C,
): Candling | null {
  const air = candlingAir(room, inRange('tempC', tempC, ...CANDLED_C))
  let slowest: Candling | null = null
  let grams = 0
  for (const { id, pot, events, air0 } of pots) {
    const before = events.filter(({ atMin }) => atMin <= litAtMin)
    const all: WallEvent[] = [...before, { kind: 'air', atMin: litAtMin, air }]
    const { likely, upper } = forecastPot(pot, all, air0, learned).kilnDry
    grams += waterG(runPot(courseOf(pot, all, air0), Math.exp(learned.fillMean)))
    const sinceMin = (atMin: number) => Math.max(0, atMin - litAtMin) + WARMING_MIN
    if (!slowest || sinceMin(upper) > slowest.lateMin)
      slowest = { potId: id, likelyMin: sinceMin(likely), lateMin: sinceMin(upper), waterG: 0 }
  }
  return slowest && { ...slowest, waterG: grams }
}
