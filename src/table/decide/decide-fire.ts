import type { TableEvent } from '../../../shared/events.ts'
import type { Refusal } from '../model/action.ts'
import { coneEnds, isCone } from '../model/cone.ts'
import { LIMITS, outOfRange } from '../model/limits.ts'
import type { LoadAction } from '../model/load-action.ts'
import type { LoadState } from '../model/load-state.ts'
import { outOf } from '../model/range.ts'
import type { Table } from '../model/state.ts'
import { checked, firstWrong } from './check-entry.ts'
import { atKilnRefusal } from './decide-stand.ts'
import type { Decision, HitStamp } from './decision.ts'
import { oddAtLid, overRange, roseAfter, twice, unfired, unlikely } from './heat-doubts.ts'

type FireAction = Extract<
  LoadAction,
  {
    do:
      | 'light'
      | 'hold-glass'
      | 'read-heat'
      | 'drop-reading'
      | 'see-cone'
      | 'pull-bung'
      | 'switch-off'
      | 'open-lid'
      | 'match'
  }
>

const MIN_MS = 60_000

/** What is seen and done once a load is shut in. */
export function atFire(table: Table, load: LoadState, action: FireAction, stamp: HitStamp): Decision {
  const { loadId } = load
  if (action.do === 'drop-reading')
    return load.readings.some(({ id }) => id === action.readId)
      ? { events: [{ kind: 'reading-dropped', loadId, readId: action.readId }] }
      : { refusal: { code: 'nothing-to-do' } }
  if (action.do === 'match') {
    const { do: _do, ...seen } = action
    return checked(noMatch(table, load, action), { kind: 'matched', ...seen })
  }
  const now = stamp.at - table.skewMs
  const ago = action.agoMin ?? 0
  const at = now - ago * MIN_MS
  const late = action.agoMin === undefined || ago === 0 ? {} : { agoMin: ago }
  const since = (from: number | undefined): Refusal | undefined => backInTime(ago, now, from)
  const wrong = outOfRange('agoMin', ago)
  if (wrong) return { refusal: wrong }
  switch (action.do) {
    case 'light':
      return checked(load.litAt === undefined ? undefined : atKilnRefusal('lit-already'), {
        kind: 'kiln-lit',
        loadId,
        ...late,
      })
    case 'hold-glass':
      return lit(load, since(load.litAt), { kind: 'glass-held', loadId, fogged: action.fogged, ...late })
    case 'read-heat': {
      const refusal =
        since(load.litAt) ??
        overRange(table, load, at, action) ??
        twice(load, at) ??
        (action.sure ? undefined : unlikely(table, load, at, action.tempC))
      return lit(load, refusal, { kind: 'heat-read', loadId, tempC: action.tempC, ...late })
    }
    case 'see-cone': {
      const { cone, is } = action
      const other = isCone(cone, load.firing.make) ? undefined : noCone(cone, load)
      return lit(load, other ?? since(load.litAt), { kind: 'cone-seen', loadId, cone, is, ...late })
    }
    case 'switch-off': {
      const refusal =
        (load.offAt === undefined ? since(load.litAt) : atKilnRefusal('off-already')) ??
        (action.sure ? undefined : (roseAfter(load, at) ?? unfired(load, at)))
      return lit(load, refusal, { kind: 'kiln-off', loadId, ...late })
    }
    case 'pull-bung':
      return checked(load.offAt === undefined ? atKilnRefusal('not-off') : since(load.offAt), {
        kind: 'bung-pulled',
        loadId,
        ...late,
      })
    case 'open-lid': {
      const { tempC } = action
      const refusal =
        (load.offAt === undefined ? atKilnRefusal('not-off') : undefined) ??
        (load.openedAt === undefined ? undefined : atKilnRefusal('open-already')) ??
        since(load.offAt) ??
        (tempC === undefined ? undefined : oddAtLid(table, load, at, { ...action, tempC }))
      return checked(refusal, {
        kind: 'lid-opened',
        loadId,
        ...(tempC === undefined ? {} : { tempC }),
        ...late,
      })
    }
  }
}

/** A pot is told from the others of its load once the lid is up, and once. */
function noMatch(
  table: Table,
  load: LoadState,
  { potId, sureness, heightMm, widthMm }: Extract<FireAction, { do: 'match' }>,
): Refusal | undefined {
  if (load.openedAt === undefined) return atKilnRefusal('not-open')
  const facts = table.pots[potId]?.facts
  if (!facts || !(load.things[potId] ?? load.things[facts.lidOf ?? ''])) return { code: 'unknown-pot' }
  if (load.matched?.[potId]) return atKilnRefusal('matched-already', { number: facts.number })
  const sizes = [
    ['heightMm', heightMm],
    ['bellyMm', widthMm],
  ] as const
  return firstWrong(sizes) ?? outOf({ least: 0, most: 1 }, 'sureness', sureness)
}

function noCone(cone: string, { firing }: LoadState): Refusal {
  const [least, most] = coneEnds(firing.make)
  return { code: 'not-a-cone', field: 'cone', facts: { value: cone, least, most } }
}

const lit = (load: LoadState, refusal: Refusal | undefined, ...events: TableEvent[]): Decision =>
  checked(load.litAt === undefined ? atKilnRefusal('not-lit') : refusal, ...events)

/** Before what has to come first: it goes back in time. */
function backInTime(ago: number, now: number, from: number | undefined): Refusal | undefined {
  if (from === undefined || now - ago * MIN_MS >= from) return undefined
  const most = Math.max(0, Math.floor((now - from) / MIN_MS))
  return { code: 'out-of-range', field: 'agoMin', facts: { value: ago, least: LIMITS.agoMin.least, most } }
}
