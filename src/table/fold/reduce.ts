/** What each kind of event changes on the table. */

import type { Stamped, TableEvent } from '../../../shared/events.ts'
import { isOfOpening } from '../../../shared/opening-events.ts'
import { change, unpicked, without, withPot } from '../model/change.ts'
import { pairKey } from '../model/pair-key.ts'
import { potterOf, viewOf } from '../model/potters.ts'
import type { Table } from '../model/state.ts'
import { cleared } from './cleared.ts'
import { hitLine } from './hit-line.ts'
import { type Ahead, asItWas, looksBack, NOTHING_AHEAD } from './read-ahead.ts'
import { bucketChanged, bucketGone, bucketsBack, fillChanged } from './reduce-buckets.ts'
import { coatsCounted, dipped, footDone, touched } from './reduce-dips.ts'
import { ended } from './reduce-end.ts'
import { fired, lapsed } from './reduce-fired.ts'
import { atKiln } from './reduce-load.ts'
import { boardSet, plannedBy, potSet, stackSet } from './reduce-plans.ts'
import { skewOf } from './table-time.ts'
import { brings, freed, kept, looksBackAt, potByPot, waitsFor } from './waiting.ts'

type OfOthers = (table: Table, stamped: Stamped, then: (table: Table) => Table) => Table
let otherPhones: OfOthers
/** Says what becomes of records of other phones, whose code only a table that has some waits for. */
export const doOfOthers = (then: OfOthers): void => {
  otherPhones = then
}

/** So many hits can be named when one is taken back, and tell the pace of the hands, that of the last sitting with them. */
export const HITS_KEPT = 240

/**
 * The table after one more event. Pure: same event, same table. What looks back at earlier ones (take back, put back,
 * what is said of a dip after its START) is not here: `fold` folds those anew.
 */
export function reduce(table: Table, stamped: Stamped): Table {
  const line = hitLine(table, stamped)
  if (!line) return happened(table, stamped)
  const { takenBack: _past, ...rest } = table
  const hits = [...table.hits.filter(({ hit }) => hit !== line.hit), line].slice(-HITS_KEPT)
  return happened({ ...rest, hits }, stamped)
}

/** The table after one more event, as it turned out to have been, its line of hits untouched. */
export function happened(table: Table, recorded: Stamped, ahead: Ahead = NOTHING_AHEAD): Table {
  const stamped = asItWas(recorded, ahead)
  if (!stamped) return table
  if (looksBack(stamped.event)) {
    const back = looksBackAt(stamped.event)
    return ahead.there().has(back) ? table : kept(table, back, recorded)
  }
  const { event } = stamped
  const known = bucketsBack(table, bucketsNamed(event))
  const key = waitsFor(known, event)
  if (key !== undefined) {
    const single = potByPot(recorded)
    return single.length > 1
      ? single.reduce((t, one) => happened(t, one, ahead), table)
      : kept(table, key, recorded)
  }
  const seen =
    stamped.from || stamped.left
      ? otherPhones(known, stamped, (t) => changed(t, stamped, ahead))
      : viewOf(changed(viewOf(known, event.hands ?? 0), stamped, ahead), potterOf(table))
  const brought = seen.waiting && brings(event)
  if (brought === undefined) return seen
  const [next, others] = freed(seen, brought)
  return others.reduce((t, other) => happened(t, other, ahead), next)
}

function bucketsNamed(event: TableEvent): readonly (string | undefined)[] {
  switch (event.kind) {
    case 'bucket-gone':
    case 'bucket-set':
      return []
    case 'stack-set':
      return event.stack.coats.map(({ bucketId }) => bucketId)
    case 'plan-changed':
      return event.coats.map(({ bucketId }) => bucketId)
    default:
      return 'bucketId' in event ? [event.bucketId] : []
  }
}

/** The table as the hands see it whose event it is. */
function changed(table: Table, stamped: Stamped, ahead: Ahead): Table {
  const { event, hit, from } = stamped
  const skewMs = skewOf(table, stamped)
  const at = stamped.at - skewMs
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
      return bucketGone(table, event.bucketId)
    case 'density-read':
    case 'filled':
    case 'level-read':
    case 'sieved':
    case 'stirred':
      return fillChanged(table, event, at)
    case 'pair-set':
      return { ...table, pairs: { ...table.pairs, [pairKey(event.pair)]: event.pair } }
    case 'stack-set':
      return stackSet(table, event.stack, from === undefined && !(event.handed || event.anew))
    case 'stack-gone':
      return { ...table, stacks: without(table.stacks, event.stackId) }
    case 'pot-set':
      return plannedBy(stamped, potSet(table, event.pot, at, from))
    case 'pot-gone':
      return plannedBy(stamped, change(table, event.potId, { gone: true }))
    case 'tile-read':
      return { ...lapsed(table, event.tile), tiles: { ...table.tiles, [event.tile.tileId]: event.tile } }
    case 'tile-gone':
      return { ...lapsed(table, table.tiles[event.tileId]), tiles: without(table.tiles, event.tileId) }
    case 'firing-planned':
      return { ...table, firing: event.firing }
    case 'firing-logged':
      return { ...table, log: event.log }
    case 'slab-set':
      return change(table, event.potId, { slab: event.slab })
    case 'table-cleared':
      return cleared(table)
    case 'waxed': {
      // Wax goes on hot from a pan that is on, whoever lit it; who waxes is beside it.
      const isHot = table.settings.wax === 'hot' && !event.implied
      const lit = isHot ? waxPan(table, 'on', at) : table
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
    case 'dipped': {
      const move = ahead.moves.get(hit)
      // START on the right pot would have said it; where it was hit there was no coat to say it of.
      const unsaid = move?.dry === true && !move.touched
      const said = unsaid ? touched(table, { kind: 'touched', potIds: [move.to], dry: true }, hit, at) : table
      return dipped(said, stamped, event, at, skewMs, ahead.mends.get(event.dipId) ?? [])
    }
    case 'sponged':
    case 'set-down':
      return footDone(table, event, at)
    case 'touched':
      return touched(event.dry && !table.picked?.touch ? table : unpicked(table), event, hit, at)
    case 'weighed': {
      const pot = table.pots[event.potId]
      if (!pot) return table
      if (event.as === 'bisque') return withPot(table, { ...pot, bisqueG: event.grams })
      return withPot(table, { ...pot, weighings: [...pot.weighings, { at, grams: event.grams }] })
    }
    case 'lesson-dropped': {
      const { potId, lessonId, dropped } = event
      const pot = table.pots[potId]
      const kept = (ids: readonly string[] | undefined, on: boolean) => [
        ...(ids ?? []).filter((id) => id !== lessonId),
        ...(on ? [lessonId] : []),
      ]
      return change(table, potId, {
        dropped: kept(pot?.dropped, dropped),
        takenIn: kept(pot?.takenIn, !dropped),
      })
    }
    case 'foot-signed':
      return change(unpicked(table), event.potId, { footSignedAt: at })
    case 'touched-up':
      return change(table, event.potId, { touchedUpAt: at })
    case 'wax-pan':
      return waxPan(table, event.is, at)
    case 'lid-on':
    case 'tools-washed':
    case 'floor-mopped':
      return ended(table, event, at)
    case 'washed-off': {
      const pot = table.pots[event.potId]
      if (!pot) return table
      // Bare again: its stack from the start.
      const { coatsCounted, footSignedAt, ownPlan, begunPlan, touchedUpAt, ...rest } = pot
      // Whoever had it in hand has water in hand now: what comes next is the order's.
      const free = table.picked?.potId === event.potId ? unpicked(table) : table
      return withPot(free, { ...rest, uncounted: false, washedAt: at })
    }
    case 'coats-counted': {
      const pot = table.pots[event.potId]
      return pot ? coatsCounted(table, pot, event.coats) : table
    }
    case 'plan-changed':
      return plannedBy(stamped, change(table, event.potId, { ownPlan: event.coats }))
    case 'picked':
      return {
        ...table,
        picked: { potId: event.potId, at, bucketId: event.bucketId, ...(event.touch ? { touch: true } : {}) },
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
      return { ...table, skewMs: skewMs + event.byMs }
    // Read ahead, of other phones, or the mark of a demo.
    case 'demo-laid':
    case 'met':
    case 'was-named':
    case 'both-dipped':
    case 'taken-back':
    case 'put-back':
    case 'count-cancelled':
    case 'count-stopped':
    case 'dose-unsure':
    case 'dose-settled':
    case 'dip-corrected':
      return table
    default:
      return isOfOpening(event) ? fired(table, event, at, stamped.id) : atKiln(table, event, at, stamped)
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
