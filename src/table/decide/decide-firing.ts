import type { TableEvent } from '../../../shared/events.ts'
import type { FiringFacts, StripeFacts } from '../../../shared/nouns.ts'
import type { Action, Refusal } from '../model/action.ts'
import { isCone, LEAST_READINGS } from '../model/cone.ts'
import { LIMITS } from '../model/limits.ts'
import { loadInHand } from '../model/load-things.ts'
import type { Table } from '../model/state.ts'
import { checked, firstWrong } from './check-entry.ts'
import type { Decision, HitStamp } from './decision.ts'

type FiringAction = Extract<Action, { do: 'read-tile' | 'remove-tile' | 'plan-firing' | 'log-firing' }>

const MOST_STRIPES = 3

/** Flow tiles and firings: every value is checked, and nothing is stored unless all of it is right. */
export function decideFiring(table: Table, action: FiringAction, stamp: HitStamp): Decision {
  switch (action.do) {
    case 'read-tile': {
      const { bucketId, underId, firing, stripes } = action.tile
      if (!table.buckets[bucketId] || (underId !== undefined && !table.buckets[underId]))
        return { refusal: { code: 'unknown-bucket' } }
      const wrong = firingRefusal(firing) ?? stripesRefusal(stripes)
      return checked(wrong, { kind: 'tile-read', tile: { ...action.tile, tileId: `t.${stamp.hit}` } })
    }
    case 'remove-tile':
      return checked(table.tiles[action.tileId] ? undefined : { code: 'unknown-tile' }, {
        kind: 'tile-gone',
        tileId: action.tileId,
      })
    case 'plan-firing': {
      const { firing } = action
      const load = loadInHand(table.loads)
      const follows: TableEvent[] = load ? [{ kind: 'load-changed', loadId: load.loadId, firing }] : []
      return checked(firingRefusal(firing), ...follows, { kind: 'firing-planned', firing })
    }
    case 'log-firing':
      return checked(
        action.log.length < LEAST_READINGS
          ? { code: 'missing', field: 'log' }
          : firstWrong(action.log.map(({ tempC }) => ['logC', tempC] as const)),
        { kind: 'firing-logged', log: action.log },
      )
  }
}

/** Why a firing cannot be as it was said: field, value and range. */
export function firingRefusal({ cone, make, riseCPerH, holdMin, topC }: FiringFacts): Refusal | undefined {
  if (!isCone(cone, make)) return { code: 'not-a-cone', field: 'cone' }
  return firstWrong([
    ['riseCPerH', riseCPerH],
    ['fireHoldMin', holdMin],
    ['topC', topC],
  ])
}

function stripesRefusal(stripes: readonly StripeFacts[]): Refusal | undefined {
  if (stripes.length === 0 || stripes.length > MOST_STRIPES) return { code: 'missing', field: 'stripes' }
  for (const { dryMm, bandMm, runMm, longestMm } of stripes) {
    const wrong = firstWrong([
      ['dryMm', dryMm],
      ['bandMm', bandMm],
      ['runMm', runMm],
      ['longestMm', longestMm],
    ])
    if (wrong) return wrong
    if (longestMm !== undefined && longestMm < runMm)
      return {
        code: 'out-of-range',
        field: 'longestMm',
        facts: { value: longestMm, least: runMm, most: LIMITS.longestMm.most },
      }
  }
  return undefined
}
