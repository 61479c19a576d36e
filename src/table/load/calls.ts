import type { Table } from '../model/state.ts'
import { loadCooling } from './cool.ts'
import { coneAhead, coneCallAt } from './fire.ts'
import { coneDown, LID_C, loadsOf, UNLOAD_C } from './loads.ts'

const MIN_MS = 60_000

/** What is to come of a load that somebody would want to be called for. Table time, ms. */
export interface LoadCall {
  readonly loadId: string
  readonly what: 'cone' | 'hold' | 'lid' | 'unload' | 'read'
  readonly at: number
}

/** Calls of every load whose kiln is on or cools, soonest first: of a cone the earliest or when to look again, of a hold its end, of lid and pots the likely moment. */
export function loadCalls(table: Table): readonly LoadCall[] {
  return loadsOf(table)
    .flatMap((load): LoadCall[] => {
      const { loadId, firing, litAt, offAt, openedAt } = load
      if (litAt === undefined) return []
      if (offAt === undefined) {
        const down = coneDown(load)
        if (down !== undefined)
          return firing.holdMin > 0 && !down.over
            ? [{ loadId, what: 'hold', at: down.at + firing.holdMin * MIN_MS }]
            : []
        const ahead = coneAhead(table, load)
        return ahead ? [{ loadId, what: 'cone', at: coneCallAt(load, ahead) }] : []
      }
      const cools = loadCooling(table, load)
      const calls: LoadCall[] = []
      const add = (what: LoadCall['what'], at: number | undefined) => {
        if (at !== undefined && Number.isFinite(at)) calls.push({ loadId, what, at })
      }
      if (cools && openedAt === undefined && cools.last.tempC > LID_C) add('lid', cools.lid?.likely)
      if (cools && cools.last.tempC > UNLOAD_C) {
        add('unload', cools.unload?.likely)
        add('read', cools.again?.at)
      }
      return calls
    })
    .sort((a, b) => a.at - b.at)
}
