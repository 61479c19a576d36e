/** What events at the kiln hold. */
import * as z from 'zod/mini'
import {
  type ChamberFacts,
  COLUMNS,
  CONE_STANDS,
  KILN_WALLS,
  type KilnFacts,
  LOADED_KINDS,
  type PostFacts,
  SHELF_KINDS,
  type ShelfFacts,
} from '../../shared/load.ts'
import { between, type Fields, firing, id, limited, whole } from './nouns-schema.ts'

/** Levels of a kiln, kinds of furniture and pieces on end: more than any holds. */
const MOST_LEVELS = 60
const MOST_KINDS = 20
const MOST_ON_END = 4
/** Things on one shelf. */
const MOST_THINGS = 1000
/** Beyond the middle of the widest chamber. */
const FARTHEST_MM = 1000

const reach = between(-FARTHEST_MM, FARTHEST_MM)
const wallPoint = { upMm: limited('upMm'), angleDeg: limited('angleDeg') }

const chamber = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('round'),
    diameterMm: limited('chamberMm'),
    heightMm: limited('chamberMm'),
  } satisfies Fields<Extract<ChamberFacts, { kind: 'round' }>>),
  z.object({
    kind: z.literal('box'),
    widthMm: limited('chamberMm'),
    depthMm: limited('chamberMm'),
    heightMm: limited('chamberMm'),
    elements: z.array(z.enum([...KILN_WALLS])).check(z.maxLength(KILN_WALLS.length)),
  } satisfies Fields<Extract<ChamberFacts, { kind: 'box' }>>),
])

const shelf = z.object({
  id,
  kind: z.enum([...SHELF_KINDS]),
  widthMm: limited('shelfMm'),
  depthMm: limited('shelfMm'),
  thickMm: limited('shelfThickMm'),
  count: limited('shelfCount'),
} satisfies Fields<ShelfFacts>)

const post = z.object({
  lengthMm: limited('postMm'),
  count: limited('postCount'),
} satisfies Fields<PostFacts>)

const kiln = z.object({
  kilnId: id,
  chamber,
  shelves: z.array(shelf).check(z.minLength(1), z.maxLength(MOST_KINDS)),
  posts: z.array(post).check(z.maxLength(MOST_KINDS)),
  couple: z.optional(z.object({ ...wallPoint, reachMm: limited('reachMm') })),
  spyHoles: z.array(z.object(wallPoint)).check(z.maxLength(MOST_KINDS)),
} satisfies Fields<KilnFacts>)

const ofLoad = { loadId: id }
const onLevel = { ...ofLoad, column: z.enum([...COLUMNS]), storey: whole(1, MOST_LEVELS) }
const named = { ...ofLoad, what: z.enum([...LOADED_KINDS]), potId: z.optional(id) }
const late = { agoMin: z.optional(limited('agoMin')) }
const yes = z.optional(z.literal(true))

/** Fields by kind of event. */
export const LOAD_BODIES = {
  'kiln-set': { kiln },
  'load-begun': { ...ofLoad, kilnId: id, firing, candle: z.optional(z.boolean()) },
  'load-changed': { ...ofLoad, kiln: z.optional(kiln), anew: yes, firing: z.optional(firing) },
  'candling-set': { ...ofLoad, candle: z.boolean() },
  'shelf-set': {
    ...onLevel,
    number: whole(1, MOST_LEVELS),
    shelfId: id,
    postMm: z.array(limited('postMm')).check(z.maxLength(MOST_ON_END)),
    posts: z.array(z.object({ xMm: reach, yMm: reach })).check(z.maxLength(MOST_KINDS)),
  },
  placed: { ...onLevel, ...named, xMm: reach, yMm: reach, slab: z.boolean(), pinned: yes, settled: yes },
  'shelf-loaded': {
    ...onLevel,
    order: z.array(id).check(z.maxLength(MOST_THINGS)),
  },
  'lifted-out': named,
  'lid-shut': ofLoad,
  'kiln-lit': { ...ofLoad, ...late },
  'glass-held': { ...ofLoad, ...late, fogged: z.boolean() },
  'heat-read': { ...ofLoad, ...late, tempC: limited('readC') },
  'cone-seen': {
    ...ofLoad,
    ...late,
    cone: z.string().check(z.minLength(1), z.maxLength(8)),
    is: z.enum([...CONE_STANDS]),
    storey: z.optional(whole(1, MOST_LEVELS)),
  },
  'bung-pulled': { ...ofLoad, ...late },
  'kiln-off': { ...ofLoad, ...late },
  'lid-opened': { ...ofLoad, ...late, tempC: z.optional(limited('readC')) },
  matched: {
    ...ofLoad,
    potId: id,
    sureness: between(0, 1),
    heightMm: z.optional(limited('heightMm')),
    widthMm: z.optional(limited('bellyMm')),
  },
  'reading-dropped': { ...ofLoad, readId: id },
  'offset-taken': { kilnId: id, offsetC: limited('offsetC'), of: whole(1, 999) },
}
