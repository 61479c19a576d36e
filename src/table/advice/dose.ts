import type { BucketFacts, PotFacts } from '../../../shared/nouns.ts'
import {
  densityFor,
  type SecondsFor,
  SHORTEST_S,
  secondsFor,
  tellingZone,
  zonesAfter,
} from '../../engine/wait/seconds.ts'
import { samplePot } from '../entry/offer.ts'
import { plannedDip } from '../forecast/hypothetical-dip.ts'
import { engineDip, historyOf } from '../forecast/pot-history.ts'
import { LIMITS } from '../model/limits.ts'
import { potsOnTable } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { drafted } from './what-if.ts'

export { SHORTEST_S }

/** Seconds of a glaze that no stack uses yet. Common practice, no source. */
const USUAL_S = 3

/** A first coat of a bucket on one bare pot, to be asked about. */
export interface Dose {
  readonly pot: PotFacts
  /** As the first stack with this glaze has it, else three seconds. */
  readonly holdS: number
  /** Coat of those seconds at a density, mm. */
  readonly coatMm: (gramsPerMl: number) => number
  /** Seconds that give a coat at a density. */
  readonly secondsFor: (wantedMm: number, gramsPerMl: number) => SecondsFor
  /** Density at which its seconds give a coat; undefined when none does. */
  readonly densityFor: (wantedMm: number) => number | undefined
}

/** Seconds, coat and density of a glaze against each other, on a bare pot of the table or a sample. */
export function doseOf(table: Table, facts: BucketFacts, nowMs: number): Dose {
  const stack = Object.values(table.stacks).find(({ coats }) =>
    coats.some(({ bucketId }) => bucketId === facts.bucketId),
  )
  const coat = stack?.coats.find(({ bucketId }) => bucketId === facts.bucketId)
  // Of no seconds nothing can be asked.
  const holdS = coat && coat.holdS >= LIMITS.holdS.least ? coat.holdS : USUAL_S
  const used = potsOnTable(table).find((pot) => pot.facts.stackId === stack?.stackId)
  const pot: PotFacts = used?.facts ?? samplePot(table)
  const cover = { kind: 'full' } as const
  const [draft, bare] = drafted(table, pot, [])
  const dip = (gramsPerMl: number) => {
    const made = engineDip(
      draft,
      bare,
      plannedDip(0, { bucketId: facts.bucketId, cover, holdS }, gramsPerMl, nowMs),
    )
    if (!made) throw new Error(`no bucket ${facts.bucketId}`)
    return made
  }
  const standing = historyOf(draft, bare)
  return {
    pot,
    holdS,
    coatMm: (gramsPerMl) => {
      const made = dip(gramsPerMl)
      return tellingZone(zonesAfter({ ...standing, events: [made] }), made.id)?.likelyMm ?? 0
    },
    secondsFor: (wantedMm, gramsPerMl) => secondsFor(standing, dip(gramsPerMl), wantedMm),
    densityFor: (wantedMm) => densityFor(standing, dip(facts.targetGramsPerMl), wantedMm),
  }
}
