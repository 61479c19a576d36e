import type { Stamped, TableEvent } from '../../shared/events.ts'
import { change, changeDip, changeLastDip, unpicked, withBucket, without, withPot } from './change.ts'
import { EMPTY_TABLE } from './defaults.ts'
import { corrected, dipped } from './reduce-dips.ts'
import type { HitLine, PotState, Table } from './state.ts'

const HITS_KEPT = 40

/**
 * The table after one more event. Pure: same event, same table. Events of unknown pots or buckets change nothing.
 * Take-back and put-back are not here: they are resolved by `fold`, which leaves out what was taken back.
 */
export function reduce(table: Table, { event, at: stampedAt, hit }: Stamped): Table {
  const at = stampedAt - table.skewMs
  const named = nameHit(table, event, hit, at)
  switch (event.kind) {
    case 'settings-set':
      return { ...named, settings: { ...named.settings, ...event.settings } }
    case 'board-set':
      return { ...named, board: event.board }
    case 'air-set':
      return { ...named, air: [...named.air, { at, air: event.air }] }
    case 'bucket-set': {
      const before = named.buckets[event.bucket.bucketId]
      const gramsPerMl = before?.gramsPerMl ?? event.bucket.targetGramsPerMl
      return withBucket(named, event.bucket.bucketId, { ...before, facts: event.bucket, gramsPerMl })
    }
    case 'bucket-gone':
      return { ...named, buckets: without(named.buckets, event.bucketId) }
    case 'density-read': {
      const bucket = named.buckets[event.bucketId]
      return bucket
        ? withBucket(named, event.bucketId, { ...bucket, gramsPerMl: event.gramsPerMl, densityAt: at })
        : named
    }
    case 'stack-set':
      return { ...named, stacks: { ...named.stacks, [event.stack.stackId]: event.stack } }
    case 'stack-gone':
      return { ...named, stacks: without(named.stacks, event.stackId) }
    case 'pot-set': {
      const before = named.pots[event.pot.potId] ?? NEW_POT
      return withPot(named, { ...before, facts: event.pot })
    }
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
    case 'waxed':
      return change(unpicked(named), event.potId, { waxedAt: at })
    case 'wiped':
      return change(unpicked(named), event.potId, { wipedAt: at })
    case 'stirred': {
      const bucket = named.buckets[event.bucketId]
      if (!bucket) return named
      return {
        ...withBucket(named, event.bucketId, { ...bucket, stirredAt: at }),
        openBucket: event.bucketId,
      }
    }
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
      return touched(event.dry ? named : unpicked(named), event.potIds, event.dry, at)
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
    case 'washed-off': {
      const pot = named.pots[event.potId]
      if (!pot) return named
      const { coatsCounted: _counted, footSignedAt: _signed, ...rest } = pot
      return withPot(named, { ...rest, uncounted: false, washedAt: at })
    }
    case 'coats-counted': {
      const pot = named.pots[event.potId]
      if (!pot) return named
      const { coatsCounted: _counted, ...rest } = pot
      return withPot(
        named,
        event.coats === null
          ? { ...rest, uncounted: true }
          : { ...rest, uncounted: false, coatsCounted: event.coats },
      )
    }
    case 'plan-changed':
      return change(named, event.potId, { ownPlan: event.coats })
    case 'picked':
      return { ...named, picked: { potId: event.potId, bucketId: event.bucketId } }
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

const NEW_POT: Omit<PotState, 'facts'> = {
  dips: [],
  touches: [],
  weighings: [],
  uncounted: false,
  gone: false,
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
