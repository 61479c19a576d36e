import type { Stamped, TableEvent } from '../../shared/events.ts'
import { change, changeDip, changeLastDip, unpicked, without, withPot } from './change.ts'
import { EMPTY_TABLE } from './defaults.ts'
import { laneOf, seenBy } from './lanes.ts'
import { pairKey } from './pair-key.ts'
import { bucketChanged, fillChanged } from './reduce-buckets.ts'
import { corrected, dipped } from './reduce-dips.ts'
import { boardSet, potSet, stackSet } from './reduce-plans.ts'
import type { HitLine, Table } from './state.ts'

const HITS_KEPT = 40

/**
 * The table after one more event. Pure: same event, same table. Events of unknown pots or buckets change nothing.
 * Take-back and put-back are not here: they are resolved by `fold`, which leaves out what was taken back.
 */
export function reduce(table: Table, stamped: Stamped): Table {
  const after = happened(seenBy(table, stamped.event.hands ?? 0), stamped)
  return seenBy(after, laneOf(table))
}

/** The table as the hands see it whose event it is. */
function happened(table: Table, { event, at: stampedAt, hit }: Stamped): Table {
  const at = stampedAt - table.skewMs
  const named = nameHit(table, event, hit, at)
  switch (event.kind) {
    case 'settings-set':
      return { ...named, settings: { ...named.settings, ...event.settings } }
    case 'board-set':
      return boardSet(named, event.board, at)
    case 'air-set':
      return { ...named, air: [...named.air, { at, air: event.air }] }
    case 'bucket-set':
      return bucketChanged(named, event.bucket)
    case 'bucket-gone':
      return { ...named, buckets: without(named.buckets, event.bucketId) }
    case 'density-read':
    case 'filled':
    case 'level-read':
    case 'sieved':
    case 'stirred':
      return fillChanged(named, event, at)
    case 'pair-set':
      return { ...named, pairs: { ...named.pairs, [pairKey(event.pair)]: event.pair } }
    case 'stack-set':
      return stackSet(named, event.stack)
    case 'stack-gone':
      return { ...named, stacks: without(named.stacks, event.stackId) }
    case 'pot-set':
      return potSet(named, event.pot, at)
    case 'pot-gone':
      return change(named, event.potId, { gone: true })
    case 'tile-read':
      return { ...named, tiles: { ...named.tiles, [event.tile.tileId]: event.tile } }
    case 'tile-gone':
      return { ...named, tiles: without(named.tiles, event.tileId) }
    case 'firing-planned':
      return { ...named, firing: event.firing }
    case 'firing-logged':
      return { ...named, log: event.log }
    case 'slab-set':
      return change(named, event.potId, { slab: event.slab })
    case 'demo-laid':
      return { ...named, demo: true }
    case 'table-cleared':
      return { ...EMPTY_TABLE, settings: named.settings, skewMs: named.skewMs, hits: named.hits }
    case 'waxed': {
      // Wax goes on hot from a pan that is on, whoever lit it.
      const lit =
        named.settings.wax === 'hot' && !named.pan && !event.implied ? waxPan(named, 'on', at) : named
      return change(unpicked(lit), event.potId, { waxedAt: at })
    }
    case 'wiped':
      return change(unpicked(named), event.potId, { wipedAt: at })
    case 'decanted':
      return { ...named, collar: { bucketId: event.bucketId, litres: event.litres, at } }
    case 'returned': {
      const { collar: _returned, ...rest } = named
      return rest
    }
    case 'dipped':
      return dipped(named, event, hit, at)
    case 'count-cancelled':
      return changeDip(named, event.dipId, () => undefined)
    case 'count-stopped':
      return changeDip(named, event.dipId, (dip) => ({
        ...dip,
        holdS: event.holdS,
        outAt: event.outAt - named.skewMs,
        how: 'measured',
      }))
    case 'dose-unsure':
      return changeDip(named, event.dipId, (dip) => ({ ...dip, unsure: true }))
    case 'dose-settled':
      return changeDip(named, event.dipId, (dip) => ({ ...dip, unsure: false }))
    case 'dip-corrected':
      return corrected(named, event)
    case 'sponged':
      return changeLastDip(named, event.potId, (dip) => ({ ...dip, spongedAt: at }))
    case 'set-down':
      return changeLastDip(named, event.potId, (dip) => ({ ...dip, setDownAt: at }))
    case 'touched':
      return touched(event.dry && !named.picked?.touch ? named : unpicked(named), event.potIds, event.dry, at)
    case 'weighed': {
      const pot = named.pots[event.potId]
      if (!pot) return named
      if (event.as === 'bisque') return withPot(named, { ...pot, bisqueG: event.grams })
      return withPot(named, { ...pot, weighings: [...pot.weighings, { at, grams: event.grams }] })
    }
    case 'lesson-dropped': {
      const others = (named.pots[event.potId]?.dropped ?? []).filter((id) => id !== event.lessonId)
      return change(named, event.potId, { dropped: event.dropped ? [...others, event.lessonId] : others })
    }
    case 'foot-signed':
      return change(unpicked(named), event.potId, { footSignedAt: at })
    case 'touched-up':
      return change(named, event.potId, { touchedUpAt: at })
    case 'wax-pan':
      return waxPan(named, event.is, at)
    case 'washed-off': {
      const pot = named.pots[event.potId]
      if (!pot) return named
      // Bare again: its stack from the start.
      const { coatsCounted, footSignedAt, ownPlan, begunPlan, touchedUpAt, ...rest } = pot
      return withPot(named, { ...rest, uncounted: false, washedAt: at })
    }
    case 'coats-counted': {
      const pot = named.pots[event.potId]
      if (!pot) return named
      const { coatsCounted: _counted, ...rest } = pot
      return withPot(
        unpicked(named),
        event.coats === null
          ? { ...rest, uncounted: true }
          : { ...rest, uncounted: false, coatsCounted: event.coats },
      )
    }
    case 'plan-changed':
      return change(named, event.potId, { ownPlan: event.coats })
    case 'picked':
      return {
        ...named,
        picked: { potId: event.potId, bucketId: event.bucketId, ...(event.touch ? { touch: true } : {}) },
      }
    case 'put-off':
      return event.potIds.reduce((t, potId) => change(t, potId, { later: event.later }), named)
    case 'held':
      return { ...named, heldSince: at }
    case 'resumed': {
      const { heldSince: _since, ...rest } = named
      return rest
    }
    case 'clock-moved':
      return { ...named, skewMs: named.skewMs + event.byMs }
    case 'taken-back':
    case 'put-back':
      return table
  }
}

function waxPan(table: Table, is: 'on' | 'watched' | 'off', at: number): Table {
  const { pan, ...rest } = table
  return is === 'off' ? rest : { ...rest, pan: { onAt: pan?.onAt ?? at, watchedAt: at } }
}

function touched(table: Table, potIds: readonly string[], dry: boolean, at: number): Table {
  return potIds.reduce((t, potId) => {
    const pot = t.pots[potId]
    const dip = pot?.dips.at(-1)
    if (!pot || !dip) return t
    return withPot(t, { ...pot, touches: [...pot.touches, { at, dry, dipId: dip.dipId }] })
  }, table)
}

const UNNAMED = new Set<TableEvent['kind']>(['clock-moved', 'dose-unsure', 'settings-set', 'demo-laid'])

/** Keeps the line of hits that take back can name: the last event of a hit that was not implied names it. */
function nameHit(table: Table, event: TableEvent, hit: string, at: number): Table {
  if (UNNAMED.has(event.kind) || ('implied' in event && event.implied)) return table
  const potId = 'potId' in event ? event.potId : 'potIds' in event ? event.potIds[0] : undefined
  const bucketId = 'bucketId' in event ? event.bucketId : undefined
  const line: HitLine = { hit, at, kind: event.kind, potId, bucketId }
  const { takenBack: _past, ...rest } = table
  return { ...rest, hits: [...table.hits.filter((h) => h.hit !== hit), line].slice(-HITS_KEPT) }
}
