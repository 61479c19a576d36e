/** Schemas of the nouns in events: every stored number with its range. What a form refuses is refused here too. */
import * as z from 'zod/mini'
import {
  type AirFacts,
  type BoardFacts,
  type BucketFacts,
  type DippedTile,
  type FiringFacts,
  FORMS,
  MOST_DIPPED_TILES,
  PATTERNS,
  type PairFacts,
  type Place,
  type PotFacts,
  type Settings,
  type ShapeFacts,
  type StackFacts,
  type TileFacts,
} from '../../shared/nouns.ts'
import { outerOf } from '../table/entry/offer.ts'
import { isCone } from '../table/model/cone.ts'
import { LIMITS, type LimitedField, NAME_MOST } from '../table/model/limits.ts'

// Without `new Function`, which the page's content policy forbids.
z.config({ jitless: true })

/** 2000 to 2100: the clock of no phone in use says otherwise, epoch ms. */
const EPOCH_MS = [946_684_800_000, 4_102_444_800_000] as const
/** Coats of one pot's plan: its stack's 20 and as many that were on before it changed stacks. */
const MOST_COATS = 40
/** A firing's book with a reading a minute for a week. */
const MOST_READINGS = 10_080
const MOST_STRIPES = 3
/** Boards from A to ZZ. */
const BOARD = /^[A-Z]{1,2}$/
const ID = /^[\w.~-]{1,100}$/

/** A schema for every field of a noun, those that may be left out among them. */
export type Fields<T> = { readonly [K in keyof Required<T>]: z.ZodMiniType }

/** A finite number within a range, its ends included. */
export const between = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most))
/** The same, whole. */
export const whole = (least: number, most: number) => z.int().check(z.gte(least), z.lte(most))
export const epochMs = between(...EPOCH_MS)

/** A number in the range that its form allows. */
export function limited(field: LimitedField) {
  const { least, most, ...more }: { least: number; most: number; whole?: true } = LIMITS[field]
  return more.whole ? whole(least, most) : between(least, most)
}

/** A name under which a thing is looked up: no name that every object has. */
export const id = z.string().check(
  z.regex(ID),
  z.refine((text) => !(text in {})),
)
export const ids = z.array(id).check(z.maxLength(10_000))
const name = z.string().check(z.refine((text) => text.trim() !== '' && [...text].length <= NAME_MOST))
const bisqueCone = z.string().check(z.maxLength(8))
const bisqueWater = z.enum(['dry', 'damp', 'washed'])

export const shape = z
  .object({
    form: z.enum([...FORMS, 'lid']),
    heightMm: limited('heightMm'),
    rimMm: limited('rimMm'),
    bellyMm: z.optional(limited('bellyMm')),
    bellyUpMm: z.optional(limited('heightMm')),
    footMm: z.optional(limited('footMm')),
    wallMm: limited('wallMm'),
    floorMm: z.optional(between(0, LIMITS.heightMm.most)),
    footLineMm: limited('footLineMm'),
    galleryMm: z.optional(limited('galleryMm')),
    outsideMm: z.optional(
      z
        .array(z.tuple([between(0, LIMITS.rimMm.most), between(0, LIMITS.heightMm.most)]))
        .check(z.minLength(3), z.maxLength(60)),
    ),
  } satisfies Fields<ShapeFacts>)
  // Measures that contradict each other make no pot.
  .check(z.refine((facts) => facts.footLineMm <= facts.heightMm && outerOf(facts) !== undefined))

export const place = z.object({
  board: z.string().check(z.regex(BOARD)),
  spot: whole(1, 99),
} satisfies Fields<Place>)

export const cover = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('full') }),
  z.object({ kind: z.literal('downTo'), edgeUpMm: limited('edgeUpMm') }),
  z.object({ kind: z.literal('toSkirt') }),
  z.object({ kind: z.literal('upTo'), edgeUpMm: limited('edgeUpMm') }),
  z.object({ kind: z.literal('collar'), depthMm: limited('depthMm') }),
  z.object({ kind: z.literal('inside') }),
  z.object({ kind: z.literal('side') }),
])

export const coats = z
  .array(
    z.object({ bucketId: id, cover, holdS: limited('heldS'), afterMin: z.optional(limited('laterWaitMin')) }),
  )
  .check(z.maxLength(MOST_COATS))

export const stack = z.object({ stackId: id, name, coats } satisfies Fields<StackFacts>)

export const bucket = z.object({
  bucketId: id,
  name,
  letter: z.string().check(z.regex(/^\p{Lu}$/u)),
  pattern: z.enum([...PATTERNS]),
  targetGramsPerMl: limited('gramsPerMl'),
  toleranceGramsPerMl: limited('toleranceGramsPerMl'),
  solidsGravity: limited('solidsGravity'),
  insideMm: limited('insideMm'),
  litres: limited('litres'),
  heightMm: limited('bucketHeightMm'),
  limitMm: limited('limitMm'),
  pinMm: z.optional(limited('pinMm')),
  clingsGramsPerCm2: z.optional(limited('clingsGramsPerCm2')),
  dippedTiles: z.optional(
    z
      .array(
        z.object({ gainG: limited('tileG'), gramsPerMl: limited('gramsPerMl') } satisfies Fields<DippedTile>),
      )
      .check(z.maxLength(MOST_DIPPED_TILES)),
  ),
  cautions: z.array(z.enum(['lead', 'cadmium', 'barium', 'manganese', 'other'])).check(z.maxLength(10)),
} satisfies Fields<BucketFacts>)

export const firing = z
  .object({
    cone: z.string(),
    make: z.enum(['american', 'seger']),
    riseCPerH: limited('riseCPerH'),
    holdMin: limited('fireHoldMin'),
    topC: z.optional(limited('topC')),
  } satisfies Fields<FiringFacts>)
  .check(z.refine(({ cone, make }) => isCone(cone, make)))

export const readings = z
  .array(z.object({ atMin: between(-MOST_READINGS, MOST_READINGS), tempC: limited('logC') }))
  .check(z.maxLength(MOST_READINGS))

export const tile = z.object({
  tileId: id,
  bucketId: id,
  underId: z.optional(id),
  firing,
  stripes: z
    .array(
      z
        .object({
          dryMm: limited('dryMm'),
          bandMm: limited('bandMm'),
          runMm: limited('runMm'),
          longestMm: z.optional(limited('longestMm')),
        })
        // The longest drip is none shorter than the mean.
        .check(z.refine(({ runMm, longestMm = runMm }) => longestMm >= runMm)),
    )
    .check(z.minLength(1), z.maxLength(MOST_STRIPES)),
} satisfies Fields<TileFacts>)

export const pair = z.object({
  overId: id,
  underId: id,
  proved: limited('firings'),
  wrong: limited('firings'),
} satisfies Fields<PairFacts>)

export const pot = z.object({
  potId: id,
  // Numbers that follow the last one allowed are still given out.
  number: whole(1, 99_999),
  place,
  shape,
  absorption: z.optional(limited('absorption')),

  bisqueCone: z.optional(bisqueCone),
  bisqueWater: z.optional(bisqueWater),
  stackId: id,
  pourInsideFirst: z.optional(z.boolean()),
  lidOf: z.optional(id),
  whose: z.optional(name),
} satisfies Fields<PotFacts>)

export const air = z.object({
  tempC: limited('tempC'),
  rh: limited('rh'),
  draught: z.enum(['still', 'room', 'window', 'fan', 'fanClose']),
  altitudeM: z.optional(limited('altitudeM')),
  hung: z.optional(
    z.object({
      widthMm: limited('clothMm'),
      heightMm: limited('clothMm'),
      grams: limited('clothG'),
      at: epochMs,
    }),
  ),
  cloth: z.optional(
    z.object({
      lostG: between(0, LIMITS.clothG.most),
      minutes: between(0, LIMITS.clothMin.most),
      factor: limited('airFactor'),
    }),
  ),
  cold: z.optional(z.object({ potC: limited('potsC'), at: epochMs })),
} satisfies Fields<AirFacts>)

export const board = z.object({
  wallMm: limited('wallMm'),
  footLineMm: limited('footLineMm'),
  bisqueCone,
  bisqueWater: z.optional(bisqueWater),
  absorption: limited('absorption'),
  sorptivityMmPerSqrtS: z.optional(limited('sorptivityMmPerSqrtS')),
} satisfies Fields<BoardFacts>)

/** `phone`, or a language that a program has, not only this one: what it has not, it writes in English. */
const languageCode = z.string().check(z.regex(/^(phone|[a-z]{2,3})$/))

export const settings = z.partial(
  z.object({
    units: z.enum(['metric', 'us']),
    language: languageCode,
    theme: z.enum(['auto', 'paper', 'dim']),
    hand: z.enum(['right', 'left']),
    sound: z.enum(['voice', 'tones', 'numerals']),
    spoken: languageCode,
    noisy: z.boolean(),
    leadInS: limited('leadInS'),
    lowerMmPerS: limited('lowerMmPerS'),
    dripS: limited('dripS'),
    staleMin: limited('staleMin'),
    wax: z.enum(['hot', 'water']),
    waxFirst: z.boolean(),
    readyMeans: z.enum(['touch', 'thirsty', 'clock']),
    firstWaitMin: limited('firstWaitMin'),
    laterWaitMin: limited('laterWaitMin'),
    kilnWaitMin: limited('kilnWaitMin'),
    stackLimitMm: limited('stackLimitMm'),
    collarVesselMm: limited('collarVesselMm'),
    student: z.boolean(),
    potters: z.literal([1, 2]),
    kilnOnAt: z.nullable(epochMs),
    loadMin: limited('loadMin'),
    candle: z.boolean(),
  } satisfies Fields<Settings>),
)
