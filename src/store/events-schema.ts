/** What an event of each kind holds. Fetched when something is to be examined: see `marks.ts`. */
import * as z from 'zod/mini'
import type { EventKind, TableEvent } from '../../shared/events.ts'
import { type AnyEvent, MOST_APART_MS } from '../../shared/record.ts'
import { LOAD_BODIES } from './load-schema.ts'
import {
  air,
  between,
  board,
  bucket,
  coats,
  cover,
  epochMs,
  firing,
  id,
  ids,
  limited,
  pair,
  pot,
  readings,
  settings,
  stack,
  tile,
  whole,
} from './nouns-schema.ts'
import { OPENING_BODIES } from './opening-schema.ts'

/** A step of one event on one pot: longer than any lowering, hold or drip, s. */
const LONGEST_S = 600
/** A phone whose clock was set right after its battery was empty: from 1970, or from any date to come. */
const LONGEST_JUMP_MS = 4_102_444_800_000
const MOST_COATS = 40

const potters = z.optional(z.literal([0, 1]))
const onPot = { potId: id }
const onBucket = { bucketId: id }
const onDip = { dipId: id }
const implied = z.boolean()
const left = z.optional(z.literal(true))
const seconds = between(0, LONGEST_S)
const gramsPerMl = limited('gramsPerMl')
const litres = between(0, 200)

const BODIES = {
  ...LOAD_BODIES,
  ...OPENING_BODIES,
  'settings-set': { settings },
  'board-set': { board },
  'air-set': { air },
  'bucket-set': { bucket },
  'bucket-gone': onBucket,
  'density-read': { ...onBucket, gramsPerMl },
  filled: { ...onBucket, fillId: id, litres },
  'level-read': { ...onBucket, litres },
  sieved: onBucket,
  'pair-set': { pair },
  'stack-set': { stack },
  'stack-gone': { stackId: id },
  'pot-set': { pot },
  'pot-gone': onPot,
  'tile-read': { tile },
  'tile-gone': { tileId: id },
  'firing-planned': { firing },
  'firing-logged': { log: readings },
  'slab-set': { ...onPot, slab: z.boolean() },
  'demo-laid': {},
  'table-cleared': { read: z.optional(z.literal(true)) },
  waxed: { ...onPot, implied },
  wiped: { ...onPot, implied },
  stirred: onBucket,
  decanted: { ...onBucket, litres },
  returned: onBucket,
  dipped: {
    ...onDip,
    ...onPot,
    ...onBucket,
    coat: whole(0, MOST_COATS),
    cover,
    gramsPerMl,
    leadS: seconds,
    lowerS: seconds,
    holdS: seconds,
    outAt: epochMs,
    unstirred: z.boolean(),
    told: z.boolean(),
  },
  'count-cancelled': onDip,
  'count-stopped': { ...onDip, holdS: seconds, outAt: epochMs },
  'dose-unsure': onDip,
  'dose-settled': onDip,
  'dip-corrected': {
    ...onDip,
    holdS: z.optional(seconds),
    dry: z.optional(z.literal(true)),
    outAt: z.optional(epochMs),
    potId: z.optional(id),
    bucketId: z.optional(id),
    by: potters,
  },
  sponged: { ...onPot, implied, dipId: z.optional(id) },
  'set-down': { ...onPot, implied, dipId: z.optional(id) },
  touched: { potIds: ids, dipIds: z.optional(ids), dry: z.boolean() },
  weighed: { ...onPot, grams: limited('grams'), as: z.enum(['bisque', 'now']) },
  'lesson-dropped': { ...onPot, lessonId: id, dropped: z.boolean() },
  'foot-signed': onPot,
  'touched-up': onPot,
  'wax-pan': { is: z.enum(['on', 'watched', 'off']) },
  'lid-on': { ...onBucket, left },
  'tools-washed': { left },
  'floor-mopped': { left },
  'washed-off': onPot,
  'coats-counted': { ...onPot, coats: z.nullable(whole(0, MOST_COATS)) },
  'plan-changed': { ...onPot, coats },
  picked: { ...onPot, bucketId: z.optional(id), touch: z.optional(z.literal(true)) },
  'put-off': { potIds: ids, later: z.boolean() },
  held: {},
  resumed: {},
  'taken-back': { hit: id, wentOn: z.optional(id), there: z.optional(id) },
  'put-back': { hit: id },
  'clock-moved': { byMs: between(-LONGEST_JUMP_MS, LONGEST_JUMP_MS) },
  met: { phone: id, upTo: whole(0, 2 ** 48), aheadMs: z.optional(between(-MOST_APART_MS, MOST_APART_MS)) },
  'was-named': { phone: id },
  'both-dipped': { dipIds: ids },
} satisfies { readonly [Kind in EventKind]: Body<Kind> }

/** A schema for every field of its kind, and for no other. */
type Body<Kind extends EventKind> = {
  readonly [Field in keyof Required<
    Omit<Extract<TableEvent, { kind: Kind }>, 'kind' | 'hands' | 'handed' | 'anew'>
  >]: z.ZodMiniType
}

const SCHEMAS = new Map<string, z.ZodMiniType>(
  Object.entries(BODIES).map(([kind, body]) => [
    kind,
    z.object({ hands: potters, handed: left, anew: left, ...body }),
  ]),
)

/**
 * Why an event is not one that this program can fold: the field that is wrong, as `bucket.litres`, or its kind.
 * Undefined when all of it is as it may be; fields that a newer program added are passed over.
 */
export function contentFault(event: AnyEvent): string | undefined {
  const schema = SCHEMAS.get(event.kind)
  if (!schema) return event.kind
  const read = schema.safeParse(event)
  if (read.success) return undefined
  return [event.kind, ...(read.error.issues[0]?.path ?? [])].join('.')
}
