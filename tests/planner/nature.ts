import type { TableEvent } from '../../shared/events.ts'
import { type BandMs, forecastOf } from '../../src/table/forecast/forecast.ts'
import type { DipState, PotState, Table } from '../../src/table/model/state.ts'
import { twelve } from '../fixtures/twelve.ts'
import { luck, normal } from './hands.ts'

/** Where the truth lies: in the bands, all of it to one side of what was thought, or dry whenever it is asked about. */
export type Truth = 'inside' | 'faster' | 'slower' | 'called'

/** Standard deviations by which a whole room is off where the truth isn't that of the bands. */
const OFF: Readonly<Record<Truth, number>> = {
  inside: 0,
  faster: -1.5,
  slower: 1.5,
  called: 0,
}
/** Part of the spread that all coats of a sitting share. */
const SHARED = 0.5
/** Nine tenths point of the normal law: bands go from one tenth to nine. */
const Z90 = 1.2816

/** The table as if nobody had touched anything: what its bands were before they learned. */
export function untaught(table: Table): Table {
  const pots = Object.fromEntries(
    Object.entries(table.pots).map(([id, pot]): [string, PotState] => [id, { ...pot, touches: [] }]),
  )
  return { ...table, pots }
}

/** A moment of a band, at so many standard deviations of the logarithm on each side of the likely. */
function moment(fromMs: number, band: BandMs, z: number): number {
  const likely = Math.max(1, band.likely - fromMs)
  const edge = Math.max(1, (z < 0 ? band.lower : band.upper) - fromMs)
  return fromMs + likely * (edge / likely) ** (Math.abs(z) / Z90)
}

/** When a coat is dry and its pot kiln-dry in truth, drawn from the bands it had at OUT; table time, ms. */
export function dryness(seed: number, truth: Truth, table: Table, potId: string, dip: DipState) {
  const pot = table.pots[potId]!
  const upTo = { ...pot, dips: pot.dips.filter((each) => each.outAt <= dip.outAt), touches: [] }
  const forecast = forecastOf(untaught(table), upTo)!
  const drawn = (what: string) =>
    OFF[truth] +
    Math.sqrt(SHARED) * normal(seed, 'shared') +
    Math.sqrt(1 - SHARED) * normal(seed, `${potId} ${dip.coat} ${what}`)
  // Nobody is asked before the likely moment: what is dry by then is dry at every call.
  const z = (what: string) => (truth === 'called' ? -Math.abs(drawn(what)) : drawn(what))
  return {
    dryAt: moment(dip.outAt, forecast.ready, z('dry')),
    kilnAt: moment(dip.outAt, forecast.kiln, z('kiln')),
  }
}

export const oddMs = (seed: number): number => 1 + Math.floor(luck(seed, 'odd') * 998)

/** Walls of this sitting's pots, mm: thick enough that coats take each other within the hour. */
const WALL_MM = [8, 12] as const

/** The twelve pots on walls of their own, all waxed and wiped an hour ago. */
export function laidTable(seed: number, potters: 1 | 2): readonly (readonly TableEvent[])[] {
  const wallMm = (potId: string) => WALL_MM[0] + luck(seed, `wall ${potId}`) * (WALL_MM[1] - WALL_MM[0])
  const walled = (event: TableEvent): TableEvent =>
    event.kind === 'pot-set'
      ? {
          ...event,
          pot: {
            ...event.pot,
            shape: { ...event.pot.shape, wallMm: Math.round(wallMm(event.pot.potId) * 10) / 10 },
          },
        }
      : event
  return [
    ...twelve().map((events) => events.map(walled)),
    [{ kind: 'settings-set', settings: { readyMeans: 'touch', potters } }],
  ]
}
