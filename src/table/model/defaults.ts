import type { AirFacts, BoardFacts, Settings } from '../../../shared/nouns.ts'
import type { Table } from './state.ts'

/** Bench numbers that are common practice of the trade, no source, unless noted; all can be changed. */
export const DEFAULT_SETTINGS: Settings = {
  units: 'metric',
  language: 'phone',
  theme: 'auto',
  hand: 'right',
  sound: 'voice',
  spoken: 'phone',
  noisy: false,
  student: false,
  leadInS: 4,
  lowerMmPerS: 120,
  dripS: 10,
  /** University of Texas ceramics wiki, glazing practice: stir again every 5 min. */
  staleMin: 5,
  wax: 'hot',
  waxFirst: true,
  readyMeans: 'touch',
  stackLimitMm: 1.25,
  collarVesselMm: 200,
  firstWaitMin: 15,
  laterWaitMin: 25,
  kilnWaitMin: 12 * 60,
  potters: 1,
  kilnOnAt: null,
  loadMin: 30,
  candle: false,
}

export const DEFAULT_BOARD: BoardFacts = { wallMm: 5, footLineMm: 6, bisqueCone: '04', absorption: 0.12 }

export const DEFAULT_AIR: AirFacts = { tempC: 20, rh: 0.5, draught: 'room' }

/** An hour after it was noted, the air is asked about again, ms. */
export const AIR_OLD_MS = 60 * 60_000

export const EMPTY_TABLE: Table = {
  settings: DEFAULT_SETTINGS,
  board: DEFAULT_BOARD,
  air: [],
  buckets: {},
  stacks: {},
  pairs: {},
  pots: {},
  tiles: {},
  skewMs: 0,
  hits: [],
}
