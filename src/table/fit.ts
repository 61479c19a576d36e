import type { CoatFacts, CoverFacts, PotFacts } from '../../shared/nouns.ts'
import { stackThatFits } from '../engine/fit.ts'
import { plannedDip } from './coming.ts'
import { LIMITS } from './limits.ts'
import { planOf } from './plan.ts'
import { engineDip, standingOf } from './standing.ts'
import type { Table } from './state.ts'
import { drafted } from './whatif.ts'

/** What to do where the coats of a stack would fill the wall of a pot. */
export interface Fit {
  /** The coat at which the wall fills, from 1. */
  readonly fullAtCoat: number
  /** The same coats with seconds that fit tonight; undefined when none do. */
  readonly shorter: readonly CoatFacts[] | undefined
  /** The inside poured first and the outside dipped a day later, in this order; undefined when that fits no better. */
  readonly split:
    | { readonly inside: readonly CoatFacts[]; readonly outside: readonly CoatFacts[] }
    | undefined
}

/** All of the outside, on a pot of any height. */
const OUTSIDE: CoverFacts = { kind: 'upTo', edgeUpMm: LIMITS.edgeUpMm.most }

/** Whether the wall of a bare pot takes these coats, begun at table time `nowMs`; undefined when it does. */
export function fitOf(
  table: Table,
  facts: PotFacts,
  coats: readonly CoatFacts[],
  nowMs: number,
): Fit | undefined {
  const [draft, bare] = drafted(table, facts, coats)
  const plan = planOf(draft, bare)
  const dips = plan.flatMap((coat, i) => {
    const gramsPerMl = draft.buckets[coat.bucketId]?.gramsPerMl
    return gramsPerMl === undefined
      ? []
      : (engineDip(draft, bare, plannedDip(i, coat, gramsPerMl, nowMs)) ?? [])
  })
  if (dips.length < plan.length) return undefined
  const { fits, fullAtCoat, seconds, split } = stackThatFits(standingOf(draft, bare), dips)
  if (fits || fullAtCoat === undefined) return undefined
  // The pour that a pot asks for is not a coat of its stack.
  const poured = plan.length - coats.length
  const withS = (of: readonly CoatFacts[], holdS: readonly number[]): CoatFacts[] =>
    of.map((coat, i) => ({ ...coat, holdS: holdS[i] ?? coat.holdS }))
  const inside = coats.filter(({ cover }) => cover.kind === 'full')
  const outside = coats.map((coat) => (coat.cover.kind === 'full' ? { ...coat, cover: OUTSIDE } : coat))
  return {
    fullAtCoat: fullAtCoat + 1,
    shorter: seconds && withS(coats, seconds.slice(poured)),
    split: split && {
      inside: withS(
        inside.map((coat) => ({ ...coat, cover: { kind: 'inside' } })),
        split.insideS,
      ),
      outside: withS(outside, split.outsideS),
    },
  }
}
