import type { TableEvent } from '../../../shared/events.ts'
import type {
  BucketFacts,
  CoatFacts,
  FiringFacts,
  PotFacts,
  ShapeFacts,
  TileFacts,
} from '../../../shared/nouns.ts'
import type { More } from './decision.ts'

/** The invented evening at the Thornbank clay room. All names, people and numbers are made up. */

const BUCKET = { insideMm: 290, litres: 12, heightMm: 330, toleranceGramsPerMl: 0.02 }

const BUCKETS: readonly BucketFacts[] = [
  {
    ...BUCKET,
    bucketId: 'demo.gatepost',
    name: 'Gatepost',
    letter: 'G',
    pattern: 'hatch',
    targetGramsPerMl: 1.45,
    solidsGravity: 2.6,
    limitMm: 1.2,
    pinMm: 0.5,
    cautions: [],
  },
  {
    ...BUCKET,
    bucketId: 'demo.brackwater',
    name: 'Brackwater',
    letter: 'B',
    pattern: 'wave',
    targetGramsPerMl: 1.43,
    solidsGravity: 2.65,
    limitMm: 0.8,
    pinMm: 0.43,
    cautions: [],
  },
  {
    ...BUCKET,
    bucketId: 'demo.heather',
    name: 'Heather',
    letter: 'H',
    pattern: 'brick',
    targetGramsPerMl: 1.48,
    solidsGravity: 2.58,
    limitMm: 0.8,
    pinMm: 0.55,
    cautions: ['manganese'],
  },
]

const FIRING: FiringFacts = { cone: '6', make: 'american', riseCPerH: 60, holdMin: 0 }

/** Stripes as dry thickness, mean run and longest drip, mm, under a band of 60. */
const tile = (
  tileId: string,
  bucket: string,
  under: string | undefined,
  ...stripes: (readonly [number, number, number])[]
): TileFacts => ({
  tileId: `demo.${tileId}`,
  bucketId: `demo.${bucket}`,
  ...(under === undefined ? {} : { underId: `demo.${under}` }),
  firing: FIRING,
  stripes: stripes.map(([dryMm, runMm, longestMm]) => ({ dryMm, bandMm: 60, runMm, longestMm })),
})

/**
 * Each glaze on two tiles of two firings, and the pairs the class has tried. Brackwater by itself flows at about
 * 65 /mm; over Gatepost, which is stiff, the pair's own tiles gave 46. With the larger of the two glazes instead,
 * as for a pair nobody tried, every pot would be over. Heather over Brackwater has no tile: it is the one to make.
 */
const TILES: readonly TileFacts[] = [
  tile('t1', 'gatepost', undefined, [0.5, 0.5, 0.8], [1, 1.3, 2.2], [1.5, 3.1, 5.2]),
  tile('t2', 'gatepost', undefined, [0.5, 0.5, 0.8], [1, 1.4, 2.3], [1.5, 3.2, 5.3]),
  tile('t3', 'brackwater', undefined, [0.4, 2.6, 4.5], [0.8, 10, 18], [1.2, 23, 41]),
  tile('t4', 'brackwater', undefined, [0.4, 2.5, 4], [0.8, 11, 20], [1.2, 24, 43]),
  tile('t5', 'heather', undefined, [0.5, 0.5, 0.7], [1, 1, 1.6], [1.5, 2.3, 3.5]),
  tile('t6', 'heather', undefined, [0.5, 0.5, 0.7], [1, 1, 1.5], [1.5, 2.2, 3.6]),
  tile('t7', 'brackwater', 'gatepost', [0.9, 9.2, 18.5]),
  tile('t8', 'brackwater', 'gatepost', [0.9, 9.5, 19.5]),
  tile('t9', 'heather', 'gatepost', [1, 1.5, 2.6]),
  tile('t10', 'heather', 'gatepost', [1, 1.4, 2.5]),
]

const full = (bucketId: string, holdS: number): CoatFacts => ({ bucketId, cover: { kind: 'full' }, holdS })
const collar = (depthMm: number): CoatFacts => ({
  bucketId: 'demo.heather',
  cover: { kind: 'collar', depthMm },
  holdS: 3,
})

const STACKS = {
  tideline: [
    full('demo.gatepost', 4),
    { bucketId: 'demo.brackwater', cover: { kind: 'toSkirt' }, holdS: 3 },
    collar(25),
  ],
  doorstep: [full('demo.gatepost', 4), collar(30)],
} as const satisfies Record<string, readonly CoatFacts[]>

const pot = (
  number: number,
  board: string,
  spot: number,
  stack: keyof typeof STACKS,
  shape: ShapeFacts,
  more: Partial<PotFacts> = {},
): PotFacts => ({
  potId: `demo.${number}`,
  number,
  place: { board, spot },
  shape,
  stackId: `demo.${stack}`,
  ...more,
})

const POTS: readonly PotFacts[] = [
  pot(31, 'A', 1, 'tideline', { form: 'beaker', heightMm: 95, rimMm: 80, wallMm: 4, footLineMm: 8 }),
  pot(32, 'A', 2, 'tideline', { form: 'beaker', heightMm: 92, rimMm: 82, wallMm: 4, footLineMm: 8 }),
  pot(33, 'A', 3, 'tideline', { form: 'bowl', heightMm: 70, rimMm: 150, wallMm: 5.5, footLineMm: 7 }),
  pot(34, 'A', 4, 'doorstep', { form: 'bowl', heightMm: 75, rimMm: 160, wallMm: 6, footLineMm: 9 }),
  pot(
    35,
    'B',
    1,
    'tideline',
    { form: 'bottle', heightMm: 180, rimMm: 45, bellyMm: 100, wallMm: 5, footLineMm: 4 },
    { pourInsideFirst: true },
  ),
  pot(36, 'B', 2, 'doorstep', { form: 'cup', heightMm: 65, rimMm: 70, wallMm: 3, footLineMm: 6 }),
  pot(37, 'B', 3, 'doorstep', { form: 'jar', heightMm: 140, rimMm: 110, wallMm: 6.5, footLineMm: 10 }),
  pot(38, 'B', 4, 'tideline', { form: 'cylinder', heightMm: 60, rimMm: 50, wallMm: 5, footLineMm: 12 }),
]

/** Lays the demo on an empty table: room, buckets, stacks and eight bisque pots at the start of the evening. */
export function demoEvents(): TableEvent[] {
  return [
    { kind: 'table-cleared', read: true },
    { kind: 'demo-laid' },
    { kind: 'board-set', board: { wallMm: 5, footLineMm: 6, bisqueCone: '04', absorption: 0.12 } },
    { kind: 'air-set', air: { tempC: 21, rh: 0.32, draught: 'room' } },
    ...BUCKETS.map((bucket): TableEvent => ({ kind: 'bucket-set', bucket })),
    { kind: 'stack-set', stack: { stackId: 'demo.tideline', name: 'Tideline', coats: STACKS.tideline } },
    { kind: 'stack-set', stack: { stackId: 'demo.doorstep', name: 'Doorstep', coats: STACKS.doorstep } },
    { kind: 'firing-planned', firing: FIRING },
    ...TILES.map((facts): TableEvent => ({ kind: 'tile-read', tile: facts })),
    {
      kind: 'pair-set',
      pair: { overId: 'demo.heather', underId: 'demo.gatepost', proved: 2, wrong: 0 },
    },
    ...POTS.map((facts): TableEvent => ({ kind: 'pot-set', pot: facts })),
  ]
}

/** Decides on laying the demo. */
export const layDemo: More = () => ({ events: demoEvents() })
