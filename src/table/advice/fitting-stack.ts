import type { CoatFacts, CoverFacts, PotFacts } from '../../../shared/nouns.ts'
import { SHORTEST_S } from '../../engine/wait/seconds.ts'
import { type Split, stackThatFits } from '../../engine/wait/stack-fit.ts'
import { plannedDip } from '../forecast/hypothetical-dip.ts'
import { engineDip, historyOf } from '../forecast/pot-history.ts'
import { halfAt } from '../model/halves.ts'
import { LIMITS } from '../model/limits.ts'
import { planOf } from '../model/plan.ts'
import type { Table } from '../model/state.ts'
import { drafted } from './what-if.ts'

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
  // One half stands for both: the overlap is narrow, and is warned of by itself.
  const ofOneHalf = [...plan.entries()].filter(([i, { cover }]) => halfAt(draft, bare, i, cover) !== 1)
  const asked = ofOneHalf.map(([i]) => i)
  const dips = ofOneHalf.flatMap(([i, coat]) => {
    const gramsPerMl = draft.buckets[coat.bucketId]?.gramsPerMl
    return gramsPerMl === undefined
      ? []
      : (engineDip(draft, bare, plannedDip(i, coat, gramsPerMl, nowMs)) ?? [])
  })
  if (dips.length < asked.length) return undefined
  const { fits, fullAtCoat, seconds, split } = stackThatFits(historyOf(draft, bare), dips)
  const fullAt = fullAtCoat === undefined ? undefined : asked[fullAtCoat]
  if (fits || fullAt === undefined) return undefined
  // The pour that a pot asks for is not a coat of its stack.
  const poured = plan.length - coats.length
  const halved = asked.length < plan.length
  return {
    fullAtCoat: fullAt + 1,
    shorter: seconds && withS(coats, ofBothHalves(plan, asked, seconds).slice(poured)),
    split: halved || !split ? undefined : splitOf(coats, split),
  }
}

const withS = (of: readonly CoatFacts[], holdS: readonly number[]): CoatFacts[] =>
  of.map((coat, i) => ({ ...coat, holdS: holdS[i] ?? coat.holdS }))

function splitOf(coats: readonly CoatFacts[], { insideS, outsideS }: Split): NonNullable<Fit['split']> {
  const inside = coats.filter(({ cover }) => cover.kind === 'full')
  const outside = coats.map((coat) => (coat.cover.kind === 'full' ? { ...coat, cover: OUTSIDE } : coat))
  return {
    inside: withS(
      inside.map((coat) => ({ ...coat, cover: { kind: 'inside' } })),
      insideS,
    ),
    outside: withS(outside, outsideS),
  }
}

/** Seconds of every coat of a plan from those of the coats asked about: a second half is shortened like its first. */
function ofBothHalves(
  plan: readonly CoatFacts[],
  asked: readonly number[],
  seconds: readonly number[],
): readonly number[] {
  let part = 1
  return plan.map((coat, i) => {
    const at = asked.indexOf(i)
    if (at < 0) return Math.max(SHORTEST_S, Math.floor(coat.holdS * part * 2) / 2)
    const holdS = seconds[at] ?? coat.holdS
    if (coat.cover.kind === 'side') part = holdS / coat.holdS
    return holdS
  })
}
