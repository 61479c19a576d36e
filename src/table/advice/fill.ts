import type { BucketFacts, CoatFacts, CoverFacts, PotFacts } from '../../../shared/nouns.ts'
import {
  type Bucket,
  bucketMl,
  levelMm,
  type RoundFit,
  roundOf,
  takenBy,
} from '../../engine/bucket/bucket.ts'
import { faceAreaCm2 } from '../../engine/shape/areas.ts'
import type { Immersion } from '../../engine/shape/displacement.ts'
import { pressurePa } from '../forecast/air-inputs.ts'
import { coverOn, immersedMm, profileOf } from '../forecast/shape-inputs.ts'
import { slopOf } from '../forecast/wall-inputs.ts'
import { OVERLAP_DEG } from '../model/halves.ts'
import { nextCoat, planOf, potsOnTable } from '../model/plan.ts'
import type { BucketState, PotState, Table } from '../model/state.ts'

/** Dry coat of a 3 s dip where nobody has scratched one, mm. Assumption. */
const USUAL_COAT_MM = 0.5
const USUAL_HOLD_S = 3

const vessel = (facts: BucketFacts): Bucket => ({
  heightMm: facts.heightMm,
  floorWideMm: facts.insideMm,
  mouthWideMm: facts.insideMm,
})

/** Litres that fill a bucket to the brim. */
export const brimLitres = (facts: BucketFacts): number => bucketMl(vessel(facts), facts.heightMm) / 1000

/** How a dip of this cover goes into the bucket; undefined where the pot doesn't go in. */
function immersionOf(
  table: Table,
  pot: PotFacts,
  cover: CoverFacts,
  gramsPerMl: number,
): Immersion | undefined {
  const depthMm = immersedMm(pot, cover)
  if (cover.kind === 'side') return { way: 'tilted', tiltDeg: 90, depthMm }
  const on = coverOn(pot, cover)
  switch (on.kind) {
    case 'inside':
    case 'collar':
      return undefined
    case 'downTo':
      return { way: 'rimFirst', depthMm, gramsPerMl, pressurePa: pressurePa(table) }
    case 'upTo':
      return { way: 'footFirst', depthMm }
    case 'full':
      return { way: 'filled', depthMm }
  }
}

/** Slop that a coat takes out of the bucket, mL: by the root of its time from a 3 s coat, over what it covers. */
function takesMl(table: Table, bucket: BucketState, pot: PotFacts, cover: CoverFacts, holdS: number): number {
  const profile = profileOf(pot)
  const { footLineMm, heightMm } = pot.shape
  const face = (of: 'outside' | 'inside', fromMm: number, toMm: number) =>
    toMm > fromMm ? faceAreaCm2(profile, of, fromMm, toMm) : 0
  const inside = () => face('inside', profile.inner[0]?.zMm ?? 0, heightMm)
  const on = coverOn(pot, cover)
  const areaCm2 = {
    full: () => face('outside', footLineMm, heightMm) + inside(),
    downTo: () => face('outside', 'edgeUpMm' in on ? on.edgeUpMm : 0, heightMm),
    upTo: () => face('outside', footLineMm, 'edgeUpMm' in on ? on.edgeUpMm : heightMm),
    collar: () => face('outside', 'depthMm' in on ? heightMm - on.depthMm : 0, heightMm),
    inside,
  }[on.kind]()
  const part = cover.kind === 'side' ? 0.5 + OVERLAP_DEG / 360 : 1
  const coatMm = (bucket.facts.pinMm ?? USUAL_COAT_MM) * Math.sqrt(holdS / USUAL_HOLD_S)
  return takenBy(areaCm2 * part, coatMm, slopOf(table, bucket, bucket.gramsPerMl)).slopMl
}

const kept = new WeakMap<Table, Map<string, number>>()

/** Litres in a bucket now: what was read last, less what the dips since took out. Kept per table. */
export function litresNow(table: Table, bucket: BucketState): number {
  const { bucketId, litres } = bucket.facts
  const byBucket = kept.get(table) ?? new Map<string, number>()
  kept.set(table, byBucket)
  const known = byBucket.get(bucketId)
  if (known !== undefined) return known
  const since = bucket.level?.at ?? Number.NEGATIVE_INFINITY
  let left = Math.min(bucket.level?.litres ?? litres, brimLitres(bucket.facts))
  for (const pot of Object.values(table.pots))
    for (const dip of pot.dips)
      if (dip.bucketId === bucketId && dip.outAt > since)
        left -= takesMl(table, bucket, pot.facts, dip.cover, dip.holdS) / 1000
  left = Math.max(0, left)
  byBucket.set(bucketId, left)
  return left
}

/** What is in a bucket now, by the litre's hundredth, and how deep it stands; undefined for an unknown bucket. */
export function levelNow(table: Table, bucketId: string): { litres: number; mm: number } | undefined {
  const bucket = table.buckets[bucketId]
  if (!bucket) return undefined
  const litres = Math.round(litresNow(table, bucket) * 100) / 100
  return { litres, mm: levelMm(vessel(bucket.facts), litres * 1000) }
}

/** One pot in one bucket, with the level before, with it in, and after. Undefined where it does not go in. */
export function fitNow(table: Table, pot: PotFacts, coat: CoatFacts): RoundFit | undefined {
  const bucket = table.buckets[coat.bucketId]
  return bucket && rounds(table, bucket, litresNow(table, bucket), [{ facts: pot, coat }])[0]
}

export interface BoardFill {
  readonly litres: number
  readonly levelMm: number
  /** Dips that this bucket is still to give, and what is left after them. */
  readonly dips: number
  readonly afterLitres: number
  readonly afterMm: number
  /** The pot for which the level is worst, in the order of places, each dip finding what those before it left. */
  readonly worst?: { readonly pot: PotState; readonly fit: RoundFit; readonly how: Immersion }
}

/** A bucket now and over all that the board still asks of it. */
export function boardFill(table: Table, bucket: BucketState): BoardFill {
  const { bucketId } = bucket.facts
  const dips = potsOnTable(table).flatMap((pot) =>
    planOf(table, pot)
      .slice(nextCoat(pot))
      .filter((coat) => coat.bucketId === bucketId)
      .map((coat) => ({ pot, facts: pot.facts, coat })),
  )
  const litres = litresNow(table, bucket)
  const rows = rounds(table, bucket, litres, dips).flatMap((fit, i) => {
    const dip = dips[i]
    const how = dip && immersionOf(table, dip.facts, dip.coat.cover, bucket.gramsPerMl)
    return fit && how ? [{ pot: dip.pot, fit, how }] : []
  })
  const takes = dips.reduce(
    (sum, { facts, coat }) => sum + takesMl(table, bucket, facts, coat.cover, coat.holdS) / 1000,
    0,
  )
  const afterLitres = Math.max(0, litres - takes)
  const level = (of: number) => levelMm(vessel(bucket.facts), of * 1000)
  const worst = rows.reduce<(typeof rows)[number] | undefined>(
    (least, row) => (least === undefined || row.fit.spareMm < least.fit.spareMm ? row : least),
    undefined,
  )
  return {
    litres,
    levelMm: level(litres),
    dips: dips.length,
    afterLitres,
    afterMm: level(afterLitres),
    ...(worst ? { worst } : {}),
  }
}

/** Pots that don't go in themselves (poured, or decanted for) only lower the level. */
function rounds(
  table: Table,
  bucket: BucketState,
  litres: number,
  dips: readonly { readonly facts: PotFacts; readonly coat: CoatFacts }[],
): readonly (RoundFit | undefined)[] {
  let left = litres
  return dips.map(({ facts, coat }) => {
    const how = immersionOf(table, facts, coat.cover, bucket.gramsPerMl)
    const takes = Math.min(left * 1000, takesMl(table, bucket, facts, coat.cover, coat.holdS))
    const profile = profileOf(facts)
    const [fit] = how ? roundOf(vessel(bucket.facts), left, [{ profile, how, takesMl: takes }]) : []
    left = Math.max(0, left - takes / 1000)
    return fit
  })
}
