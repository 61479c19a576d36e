import type { CoverFacts } from '../../../shared/nouns.ts'
import { reachMm } from '../entry/cover.ts'
import { whoseOf } from '../entry/handout.ts'
import { firedOf, type Judgement } from '../fired/fired-pot.ts'
import { fallOf, loadsOf } from '../load/loads.ts'
import { coatsOn } from '../model/plan.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { placeIn } from '../opening/queue.ts'

/** What stands in a cell: a text, a number in its column's unit, yes or no, a moment (epoch ms), a cover, nothing. */
export type Cell =
  | string
  | number
  | boolean
  | { readonly atMs: number }
  | { readonly cover: CoverFacts['kind'] }
  | undefined

/** One kind of record, a line each. */
export interface Sheet<Column extends string = string> {
  /** In the order in which they stand. */
  readonly columns: readonly Column[]
  /** Those of them that hold moments. */
  readonly moments: readonly Column[]
  readonly lines: readonly Readonly<Partial<Record<Column, Cell>>>[]
}

const POTS = [
  'pot',
  'piece',
  'whose',
  'place',
  'form',
  'heightMm',
  'rimMm',
  'wallMm',
  'absorptionPercent',
  'bisqueCone',
  'stack',
  'coats',
  'onSlab',
  'footChecked',
  'removed',
] as const

const COATS = [
  'pot',
  'piece',
  'coat',
  'glaze',
  'cover',
  'edgeMm',
  'gramsPerMl',
  'heldS',
  'plannedS',
  'lifted',
  'washedOff',
  'told',
  'unsure',
  'unstirred',
  'potter',
] as const

const LOADS = [
  'load',
  'cone',
  'make',
  'riseCPerH',
  'holdMin',
  'pots',
  'shut',
  'on',
  'coneDown',
  'off',
  'lidOpen',
] as const

const READINGS = ['load', 'read', 'tempC'] as const

const RESULTS = [
  'pot',
  'piece',
  'place',
  'load',
  'look',
  'judged',
  'run',
  'runMm',
  'longestMm',
  'stuck',
  'faults',
  'guessMm',
  'leftOut',
] as const

const PHOTOS = ['pot', 'piece', 'load', 'taken', 'side', 'file'] as const

/** All sheets, by the name of their file. */
export interface Sheets {
  readonly pots: Sheet<(typeof POTS)[number]>
  readonly coats: Sheet<(typeof COATS)[number]>
  readonly loads: Sheet<(typeof LOADS)[number]>
  readonly readings: Sheet<(typeof READINGS)[number]>
  readonly results: Sheet<(typeof RESULTS)[number]>
  readonly photos: Sheet<(typeof PHOTOS)[number]>
}

/** A kept picture and the name under which it goes along with the sheets. */
export interface NamedPhoto {
  readonly photoId: string
  readonly file: string
}

/** What `sheetsOf` makes of a table. */
export interface Records {
  readonly sheets: Sheets
  /** In the order of their lines. */
  readonly photos: readonly NamedPhoto[]
}

/**
 * The records of a table as sheets: pots, coats, loads, readings, results and pictures, oldest first, and which picture
 * each file of the last is. Numbers are SI or as named.
 */
export function sheetsOf(table: Table): Records {
  const moment = (at: number | undefined) => (at === undefined ? undefined : { atMs: at + table.skewMs })
  const pots = Object.values(table.pots).sort(
    (a, b) => a.facts.number - b.facts.number || Number(isLid(a)) - Number(isLid(b)),
  )
  const all = pots.map(({ facts }) => facts)
  const named = (pot: PotState) => ({ pot: pot.facts.number, piece: isLid(pot) ? 'lid' : 'pot' })
  const glaze = (bucketId: string) =>
    (table.buckets[bucketId] ?? table.removed?.[bucketId])?.facts.name ?? bucketId
  const loads = loadsOf(table).toReversed()
  const loadNumber = new Map(loads.map(({ loadId }, i) => [loadId, i + 1]))
  const times = new Map<string, number>()
  const photos = pots.flatMap((pot) => {
    const { photos: kept, loadId } = firedOf(pot)
    return kept.map((photo) => {
      // A number is free again once its pot is gone.
      const stem = `${pot.facts.number}${isLid(pot) ? '-lid' : ''}-${utcDay(photo.at + table.skewMs)}`
      const nth = (times.get(stem) ?? 0) + 1
      times.set(stem, nth)
      return { ...photo, pot, loadId, file: `${stem}-${nth}.jpg` }
    })
  })
  const sheets: Sheets = {
    pots: {
      columns: POTS,
      moments: [],
      lines: pots.map((pot) => {
        const { shape, stackId, place, absorption, bisqueCone } = pot.facts
        const whose = whoseOf(all, pot.facts)
        return {
          ...named(pot),
          whose,
          place: `${place.board} ${place.spot}`,
          form: shape.form,
          heightMm: shape.heightMm,
          rimMm: shape.rimMm,
          wallMm: shape.wallMm,
          absorptionPercent: percent(absorption ?? table.board.absorption),
          bisqueCone: bisqueCone ?? table.board.bisqueCone,
          stack: table.stacks[stackId]?.name,
          coats: coatsOn(pot).length,
          onSlab: pot.slab === true,
          footChecked: pot.footSignedAt !== undefined,
          removed: pot.gone,
        }
      }),
    },
    coats: {
      columns: COATS,
      moments: ['lifted'],
      lines: pots.flatMap((pot) =>
        pot.dips.map((dip) => ({
          ...named(pot),
          coat: dip.coat + 1,
          glaze: glaze(dip.bucketId),
          cover: { cover: dip.cover.kind },
          edgeMm: reachMm(dip.cover),
          gramsPerMl: dip.gramsPerMl,
          heldS: tenth(dip.holdS),
          plannedS: tenth(dip.plannedHoldS),
          lifted: moment(dip.outAt),
          washedOff: isOff(pot, dip),
          told: dip.how,
          unsure: dip.unsure,
          unstirred: dip.unstirred,
          potter: (dip.hands ?? 0) + 1,
        })),
      ),
    },
    loads: {
      columns: LOADS,
      moments: ['shut', 'on', 'coneDown', 'off', 'lidOpen'],
      lines: loads.map((load) => ({
        load: loadNumber.get(load.loadId),
        cone: load.firing.cone,
        make: load.firing.make,
        riseCPerH: load.firing.riseCPerH,
        holdMin: load.firing.holdMin,
        pots: Object.values(load.things).filter(({ what }) => what === 'pot').length,
        shut: moment(load.shutAt),
        on: moment(load.litAt),
        coneDown: moment(fallOf(load, load.firing.cone)?.at),
        off: moment(load.offAt),
        lidOpen: moment(load.openedAt),
      })),
    },
    readings: {
      columns: READINGS,
      moments: ['read'],
      lines: loads.flatMap((load) =>
        load.readings.map(({ at, tempC }) => ({
          load: loadNumber.get(load.loadId),
          read: moment(at),
          tempC,
        })),
      ),
    },
    results: {
      columns: RESULTS,
      moments: ['judged'],
      lines: pots.flatMap((pot) => {
        const { found, looks, guess, loadId } = firedOf(pot)
        const all = found ? [found, ...looks] : looks
        return all.map((look, i) => ({
          ...named(pot),
          place: placeIn(table, pot),
          load: loadNumber.get(look.loadId ?? loadId ?? ''),
          look: i + 1,
          judged: moment(look.at),
          ...ranOf(look),
          stuck: look.stuck,
          faults: look.faults.join(' '),
          guessMm: i > 0 || guess === undefined ? undefined : guess.mm,
          leftOut: look.dropped,
        }))
      }),
    },
    photos: {
      columns: PHOTOS,
      moments: ['taken'],
      lines: photos.map(({ pot, loadId, at, side, file }) => ({
        ...named(pot),
        load: loadNumber.get(loadId ?? ''),
        taken: moment(at),
        side,
        file,
      })),
    },
  }
  return { sheets, photos: photos.map(({ photoId, file }) => ({ photoId, file })) }
}

const utcDay = (at: number): string => new Date(at).toISOString().slice(0, 10)

const isLid = (pot: PotState): boolean => pot.facts.lidOf !== undefined

const tenth = (value: number): number => Math.round(value * 10) / 10
const percent = (part: number): number => tenth(part * 100)

/** A coat that went down the sink again. */
const isOff = (pot: PotState, dip: DipState): boolean => !coatsOn(pot).includes(dip)

function ranOf({ run }: Judgement): { run?: string; runMm?: number; longestMm?: number | 'shelf' } {
  if (!run) return {}
  return run.is === 'measured' ? { run: run.is, runMm: run.mm, longestMm: run.longestMm } : { run: run.is }
}
