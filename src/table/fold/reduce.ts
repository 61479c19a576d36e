import type { Stamped, TableEvent } from '../../../shared/events.ts'
import { change, changeDip, changeLastDip, unpicked, without, withPot } from '../model/change.ts'
import { EMPTY_TABLE } from '../model/defaults.ts'
import { pairKey } from '../model/pair-key.ts'
import { potterOf, viewOf } from '../model/potters.ts'
import type { HitLine, Table } from '../model/state.ts'
import { bucketChanged, fillChanged } from './reduce-buckets.ts'
import { corrected, dipped } from './reduce-dips.ts'
import { boardSet, potSet, stackSet } from './reduce-plans.ts'

/** So many hits can be named when one is taken back. */
export const HITS_KEPT = 40

/**
 * The table after one more event. Pure: same event, same table. Events of unknown pots or buckets change nothing.
 * Take-back and put-back are not here: they are resolved by `fold`, which leaves out what was taken back.
 */
export function reduce(table: Table, stamped: Stamped): Table {
  const line = hitLine(table, stamped)
  if (!line) return happened(table, stamped)
  const { takenBack: _past, ...rest } = table
  const hits = [...table.hits.filter(({ hit }) => hit !== line.hit), line].slice(-HITS_KEPT)
  return happened({ ...rest, hits }, stamped)
}

/** The table after one more event, its line of hits untouched. */
export function happened(table: Table, stamped: Stamped): Table {
  const after = changed(viewOf(table, stamped.event.hands ?? 0), stamped)
  return viewOf(after, potterOf(table))
}

/** The table as the hands see it whose event it is. */
function changed(table: Table, { event, at: stampedAt, hit }: Stamped): Table {
  const at = stampedAt - table.skewMs
  switch (event.kind) {
    case 'settings-set':
      return { ...table, settings: { ...table.settings, ...event.settings } }
    case 'board-set':
      return boardSet(table, event.board, at)
    case 'air-set':
      return { ...table, air: [...table.air, { at, air: event.air }] }
    case 'bucket-set':
      return bucketChanged(table, event.bucket)
    case 'bucket-gone':
      return { ...table, buckets: without(table.buckets, event.bucketId) }
    case 'density-read':
    case 'filled':
    case 'level-read':
    case 'sieved':
    case 'stirred':
      return fillChanged(table, event, at)
    case 'pair-set':
      return { ...table, pairs: { ...table.pairs, [pairKey(event.pair)]: event.pair } }
    case 'stack-set':
      return stackSet(table, event.stack)
    case 'stack-gone':
      return { ...table, stacks: without(table.stacks, event.stackId) }
    case 'pot-set':
      return potSet(table, event.pot, at)
    case 'pot-gone':
      return change(table, event.potId, { gone: true })
    case 'tile-read':
      return { ...table, tiles: { ...table.tiles, [event.tile.tileId]: event.tile } }
    case 'tile-gone':
      return { ...table, tiles: without(table.tiles, event.tileId) }
    case 'firing-planned':
      return { ...table, firing: event.firing }
    case 'firing-logged':
      return { ...table, log: event.log }
    case 'slab-set':
      return change(table, event.potId, { slab: event.slab })
    case 'demo-laid':
      return { ...table, demo: true }
    case 'table-cleared':
      return { ...EMPTY_TABLE, settings: table.settings, skewMs: table.skewMs, hits: table.hits }
    case 'waxed': {
      // Wax goes on hot from a pan that is on, whoever lit it.
      const isHot = table.settings.wax === 'hot' && !event.implied
      const lit = isHot && (!table.pan || table.pan.stays) ? waxPan(table, 'on', at) : table
      return change(unpicked(lit), event.potId, { waxedAt: at })
    }
    case 'wiped':
      return change(unpicked(table), event.potId, { wipedAt: at })
    case 'decanted':
      return { ...table, collar: { bucketId: event.bucketId, litres: event.litres, at } }
    case 'returned': {
      const { collar: _returned, ...rest } = table
      return rest
    }
    case 'dipped':
      return dipped(table, event, hit, at)
    case 'count-cancelled':
      return changeDip(table, event.dipId, () => undefined)
    case 'count-stopped':
      return changeDip(table, event.dipId, (dip) => ({
        ...dip,
        holdS: event.holdS,
        outAt: event.outAt - table.skewMs,
        how: 'measured',
      }))
    case 'dose-unsure':
      return changeDip(table, event.dipId, (dip) => ({ ...dip, unsure: true }))
    case 'dose-settled':
      return changeDip(table, event.dipId, (dip) => ({ ...dip, unsure: false }))
    case 'dip-corrected':
      return corrected(table, event)
    case 'sponged':
      return changeLastDip(table, event.potId, (dip) => ({ ...dip, spongedAt: at }))
    case 'set-down':
      return changeLastDip(table, event.potId, (dip) => ({ ...dip, setDownAt: at }))
    case 'touched':
      return touched(event.dry && !table.picked?.touch ? table : unpicked(table), event.potIds, event.dry, at)
    case 'weighed': {
      const pot = table.pots[event.potId]
      if (!pot) return table
      if (event.as === 'bisque') return withPot(table, { ...pot, bisqueG: event.grams })
      return withPot(table, { ...pot, weighings: [...pot.weighings, { at, grams: event.grams }] })
    }
    case 'lesson-dropped': {
      const others = (table.pots[event.potId]?.dropped ?? []).filter((id) => id !== event.lessonId)
      return change(table, event.potId, { dropped: event.dropped ? [...others, event.lessonId] : others })
    }
    case 'foot-signed':
      return change(unpicked(table), event.potId, { footSignedAt: at })
    case 'touched-up':
      return change(table, event.potId, { touchedUpAt: at })
    case 'wax-pan':
      return waxPan(table, event.is, at)
    case 'washed-off': {
      const pot = table.pots[event.potId]
      if (!pot) return table
      // Bare again: its stack from the start.
      const { coatsCounted, footSignedAt, ownPlan, begunPlan, touchedUpAt, ...rest } = pot
      return withPot(table, { ...rest, uncounted: false, washedAt: at })
    }
    case 'coats-counted': {
      const pot = table.pots[event.potId]
      if (!pot) return table
      const { coatsCounted: _counted, ...rest } = pot
      return withPot(
        unpicked(table),
        event.coats === null
          ? { ...rest, uncounted: true }
          : { ...rest, uncounted: false, coatsCounted: event.coats },
      )
    }
    case 'plan-changed':
      return change(table, event.potId, { ownPlan: event.coats })
    case 'picked':
      return {
        ...table,
        picked: { potId: event.potId, bucketId: event.bucketId, ...(event.touch ? { touch: true } : {}) },
      }
    case 'put-off':
      return event.potIds.reduce((t, potId) => change(t, potId, { later: event.later }), table)
    case 'held':
      return { ...table, heldSince: at }
    case 'resumed': {
      const { heldSince: _since, ...rest } = table
      return rest
    }
    case 'clock-moved':
      return { ...table, skewMs: table.skewMs + event.byMs }
    case 'taken-back':
    case 'put-back':
      return table
  }
}

function waxPan(table: Table, is: 'on' | 'watched' | 'off', at: number): Table {
  const { pan, ...rest } = table
  if (is === 'off') return rest
  return {
    ...rest,
    pan: { onAt: pan?.onAt ?? at, watchedAt: at, ...(is === 'watched' ? { stays: true as const } : {}) },
  }
}

function touched(table: Table, potIds: readonly string[], dry: boolean, at: number): Table {
  return potIds.reduce((t, potId) => {
    const pot = t.pots[potId]
    const dip = pot?.dips.at(-1)
    if (!pot || !dip) return t
    return withPot(t, { ...pot, touches: [...pot.touches, { at, dry, dipId: dip.dipId }] })
  }, table)
}

/** What no person would name as the last thing done; a hit taken back and put back is its own again. */
const UNNAMED = new Set<TableEvent['kind']>([
  'clock-moved',
  'dose-unsure',
  'settings-set',
  'demo-laid',
  'taken-back',
  'put-back',
])

/** How take back names the hit of an event: the last one that was not implied does. */
export function hitLine(table: Table, { event, hit, at }: Stamped): HitLine | undefined {
  if (UNNAMED.has(event.kind) || ('implied' in event && event.implied)) return undefined
  const potId = 'potId' in event ? event.potId : 'potIds' in event ? event.potIds[0] : undefined
  const bucketId = 'bucketId' in event ? event.bucketId : undefined
  return { hit, at: at - table.skewMs, kind: event.kind, potId, bucketId }
}
