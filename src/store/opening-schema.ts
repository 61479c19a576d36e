/** What events of opened kilns hold. */
import * as z from 'zod/mini'
import { type AppGuess, FAULTS, PHOTO_SIDES, type RunFacts, STUCK } from '../../shared/opening.ts'
import { PHOTO_MOST_BYTES } from '../table/model/limits.ts'
import { between, type Fields, id, limited, whole } from './nouns-schema.ts'

/** Level and number, as 2.4. */
const PLACE = /^\d{1,2}\.\d{1,4}$/
/** Results behind a lesson. */
const MOST_RESULTS = 9999

const meltMm = limited('meltMm')
const factor = limited('factor')
const of = whole(0, MOST_RESULTS)
const results = z.optional(z.array(id).check(z.maxLength(MOST_RESULTS)))
const ofPot = { potId: id, loadId: z.optional(id) }

const run = z.discriminatedUnion('is', [
  z.object({ is: z.literal('none') }),
  z.object({
    is: z.literal('measured'),
    mm: meltMm,
    longestMm: z.optional(z.union([meltMm, z.literal('shelf')])),
  } satisfies Fields<Extract<RunFacts, { is: 'measured' }>>),
  z.object({ is: z.literal('shelf') }),
  z.object({ is: z.literal('some') }),
])

const appGuess = z.object({
  lowMm: meltMm,
  likelyMm: meltMm,
  highMm: meltMm,
  roomMm: meltMm,
} satisfies Fields<AppGuess>)

/** Fields by kind of event. */
export const OPENING_BODIES = {
  guessed: { ...ofPot, mm: z.optional(z.union([meltMm, z.literal('shelf')])), app: z.optional(appGuess) },
  'taken-out': { ...ofPot, place: z.optional(z.string().check(z.regex(PLACE))) },
  judged: {
    ...ofPot,
    run: z.optional(run),
    stuck: z.optional(z.enum([...STUCK])),
    faults: z.array(z.enum([...FAULTS])).check(z.maxLength(FAULTS.length)),
    second: z.optional(z.literal(true)),
  },
  'photo-kept': {
    ...ofPot,
    photoId: id,
    side: z.enum([...PHOTO_SIDES]),
    bytes: between(1, PHOTO_MOST_BYTES),
  },
  'lesson-taken': {
    bucketId: id,
    underId: z.optional(id),
    factor,
    low: factor,
    high: factor,
    of,
    drip: z.optional(limited('drip')),
    results,
  },
  'limit-taken': { bucketId: id, underId: z.optional(id), limitMm: limited('limitMm'), of, results },
  'room-changed': { changed: z.boolean() },
}
