import type { TableEvent } from '../../../shared/events.ts'
import { inTheWay } from '../load/before-fire.ts'
import { deedsBack, hitsOf } from '../load/deeds.ts'
import { levelView } from '../load/level-view.ts'
import { candled } from '../load/loads.ts'
import { planEvents } from '../load/plan-events.ts'
import { isSameKiln } from '../load/same-kiln.ts'
import type { Action, Refusal } from '../model/action.ts'
import { outOfRange } from '../model/limits.ts'
import type { LoadAction } from '../model/load-action.ts'
import { type LoadState, levelKey } from '../model/load-state.ts'
import { loadInHand, thingOf } from '../model/load-things.ts'
import { withPieces } from '../model/pieces.ts'
import type { Table } from '../model/state.ts'
import { checked } from './check-entry.ts'
import { atFire } from './decide-fire.ts'
import { firingRefusal } from './decide-firing.ts'
import { atKilnRefusal, goneOrElsewhere, stand, standing } from './decide-stand.ts'
import type { Decision, HitStamp } from './decision.ts'
import { kilnRefusal } from './kiln-refusal.ts'

const not = (field: string, facts?: Refusal['facts']): Decision => ({ refusal: atKilnRefusal(field, facts) })

const isOfKiln = (action: Action): action is LoadAction => KILN_ACTIONS.has(action.do)
const KILN_ACTIONS: ReadonlySet<string> = new Set<LoadAction['do']>([
  'set-kiln',
  'begin-load',
  'change-firing',
  'unsay',
  'set-candling',
  'lay-out',
  'stand',
  'swap',
  'lift-out',
  'settle-place',
  'load-shelf',
  'shut-lid',
  'light',
  'hold-glass',
  'read-heat',
  'drop-reading',
  'see-cone',
  'pull-bung',
  'switch-off',
  'open-lid',
  'match',
  'drop-look',
  'take-offset',
  'drop-offset',
])

/**
 * Loading and firing: every value is checked, and nothing is stored unless all of it is right. Undefined for what is
 * done elsewhere.
 */
export function decideLoad(table: Table, action: Action, stamp: HitStamp): Decision | undefined {
  if (!isOfKiln(action)) return undefined
  switch (action.do) {
    case 'set-kiln': {
      const known = Object.values(table.kilns ?? {}).find((each) => isSameKiln(each, action.kiln))
      const kiln = { ...action.kiln, kilnId: action.kiln.kilnId ?? known?.kilnId ?? `k.${stamp.hit}` }
      const load = loadInHand(table.loads)
      const lost = load && stands(load, kiln) ? 0 : Object.keys(load?.things ?? {}).length
      const asked = lost > 0 && !action.sure ? atKilnRefusal('other-kiln', { number: lost }) : undefined
      const anew = lost > 0 ? { anew: true as const } : {}
      const follows: TableEvent[] = load ? [{ kind: 'load-changed', loadId: load.loadId, kiln, ...anew }] : []
      return checked(kilnRefusal(kiln) ?? asked, ...follows, { kind: 'kiln-set', kiln })
    }
    case 'begin-load':
      if (!table.kilns?.[action.kilnId]) return not('no-kiln')
      return checked(firingRefusal(action.firing), {
        kind: 'load-begun',
        loadId: `l.${stamp.hit}`,
        kilnId: action.kilnId,
        firing: action.firing,
        candle: table.settings.candle,
      })
    case 'take-offset': {
      const { kilnId, offsetC, of } = action
      if (!table.kilns?.[kilnId]) return not('no-kiln')
      return checked(outOfRange('offsetC', offsetC), { kind: 'offset-taken', kilnId, offsetC, of })
    }
    case 'drop-offset': {
      const taken = table.offsets?.[action.kilnId]
      return taken ? unsaid([taken.hit]) : { refusal: { code: 'nothing-to-do' } }
    }
    default: {
      const load = table.loads?.[action.loadId]
      return load ? ofLoad(table, load, action, stamp) : not('no-load')
    }
  }
}

type OfLoad = Exclude<LoadAction, { do: 'set-kiln' | 'begin-load' | 'take-offset' | 'drop-offset' }>

const unsaid = (hits: readonly string[]): Decision => ({
  events: hits.map((hit) => ({ kind: 'taken-back', hit })),
})

function ofLoad(table: Table, load: LoadState, action: OfLoad, stamp: HitStamp): Decision {
  const { loadId } = load
  const unlit = load.litAt === undefined
  switch (action.do) {
    case 'lay-out': {
      if (!unlit) return not('lit-already')
      const events = planEvents(load, action.plan)
      const wrong = events.map((event) =>
        event.kind === 'placed' ? goneOrElsewhere(table, load, event.potId) : undefined,
      )
      const first = wrong.find((each) => each !== undefined)
      return events.length === 0 ? { refusal: { code: 'nothing-to-do' } } : checked(first, ...events)
    }
    case 'stand':
      return unlit ? stand(table, load, [[action.key, action.at]]) : not('lit-already')
    case 'swap': {
      const [a, b] = action.keys
      const [thing, other] = [load.things[a], load.things[b]]
      if (!thing || !other || a === b) return { refusal: { code: 'nothing-to-do' } }
      return unlit
        ? stand(table, load, [
            [a, other],
            [b, thing],
          ])
        : not('lit-already')
    }
    case 'lift-out': {
      if (!unlit) return not('lit-already')
      const { what, potId } = thingOf(action.key)
      const out: TableEvent[] = load.things[action.key]
        ? [{ kind: 'lifted-out', loadId, what, ...(potId ? { potId } : {}) }]
        : []
      if (potId === undefined)
        return out.length > 0 ? { events: out } : { refusal: { code: 'nothing-to-do' } }
      if (!table.pots[potId] || table.pots[potId].gone) return { refusal: { code: 'unknown-pot' } }
      return { events: [...out, { kind: 'put-off', potIds: withPieces(table, [potId]), later: true }] }
    }
    case 'settle-place': {
      const thing = load.things[action.key]
      if (!thing?.orHere) return { refusal: { code: 'nothing-to-do' } }
      return {
        events: [standing(load, action.key, thing, action.other ? thing.orHere : thing, { settled: true })],
      }
    }
    case 'load-shelf': {
      const level = load.levels[levelKey(action)]
      const view = level && levelView(table, load, level)
      if (!level || !view) return not('no-shelf')
      if (!unlit) return not('lit-already')
      if (level.loadedAt !== undefined) return { refusal: { code: 'nothing-to-do' } }
      const { column, storey } = level
      const below = load.levels[levelKey({ column, storey: storey - 1 })]
      if (storey > 1 && below?.loadedAt === undefined) return not('shelf-below', { number: level.number })
      const order = view.things.filter(({ place }) => place !== undefined).map(({ key }) => key)
      return { events: [{ kind: 'shelf-loaded', loadId, column, storey, order }] }
    }
    case 'change-firing': {
      const { firing } = action
      return checked(firingRefusal(firing), { kind: 'load-changed', loadId, firing })
    }
    case 'unsay': {
      if (!deedsBack(table, load).includes(action.kind)) return not('not-back')
      return unsaid(hitsOf(load, action.kind))
    }
    case 'drop-look': {
      const looks = [...load.cones, ...load.glass]
      return looks.some(({ hit }) => hit === action.hit)
        ? unsaid([action.hit])
        : { refusal: { code: 'nothing-to-do' } }
    }
    case 'set-candling': {
      const { candle } = action
      if (!unlit) return not('lit-already')
      if (candle === candled(table, load)) return { refusal: { code: 'nothing-to-do' } }
      return { events: [{ kind: 'candling-set', loadId, candle }] }
    }
    case 'shut-lid':
      if (load.shutAt !== undefined) return { refusal: { code: 'nothing-to-do' } }
      return { events: [{ kind: 'lid-shut', loadId }] }
    case 'light': {
      const asked = unlit && !action.sure ? askedBefore(table, load, stamp.at - table.skewMs) : undefined
      return asked ? { refusal: asked } : atFire(table, load, action, stamp)
    }
    default:
      return atFire(table, load, action, stamp)
  }
}

/** Whether all levels of a load are on shelves that another kiln has too. */
const stands = ({ levels }: LoadState, { shelves }: LoadState['kiln']): boolean =>
  Object.values(levels).every(({ shelfId, column }) =>
    shelves.some(({ id, kind }) => id === shelfId && kind.startsWith('half') === (column !== 'whole')),
  )

/** A kiln that another load makes hot, and wet pots, are asked about: the kiln's first. */
function askedBefore(table: Table, load: LoadState, now: number): Refusal | undefined {
  const { hot, wet } = inTheWay(table, load, now)
  return hot ? atKilnRefusal('hot-kiln') : wet.length > 0 ? atKilnRefusal('wet') : undefined
}
