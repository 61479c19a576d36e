import type { Potter } from '../model/potters.ts'
import type { DipState, HitLine, Table } from '../model/state.ts'
import { dipStepMs } from '../steps/pot-in-hand.ts'

/** How much longer than the bare work these hands take for a step, seconds, as their latest hits show it. */
export interface Pace {
  /** From hands free until START. */
  readonly dipS: number
  /** On an opening or a re-stir. */
  readonly stirS: number
  /** What each of the latest steps took, interrupted ones left out, with what hands are like before they tell. */
  readonly seenS: readonly number[]
  /** How far the hands have not shown their pace yet: 1 before their first step, towards 0 with each. */
  readonly unseen: number
  /** Part of the steps before which hands are called away. */
  readonly pauses: number
}

/** Hands are taken at the bare work's word until their hits tell otherwise: worth as much as so many steps seen. */
const PRIOR_STEPS = 3
/** After so many steps seen half of what hands may be like is known. Tuned. */
const SHOWN_STEPS = 10
/** What hands are like that have shown nothing yet, for promises: a minute at most. Assumption. */
const UNSEEN_S = [0, 15, 30, 45, 60]
/** A step that took longer was interrupted, s: it tells of no pace. Assumption. */
const INTERRUPTED_S = 300
/** Part of the steps before which hands are called away, until theirs tell: worth as much as so many steps seen. Assumptions. */
const PAUSES = { part: 0.03, steps: 20 }

/** Bare work of a set-up, seconds. Common practice, no source. */
export const SET_UP_S = { open: 180, restir: 60 } as const

interface Step {
  readonly potter: Potter
  readonly is: 'dip' | 'stir'
  readonly laterS: number
}

const kept = new WeakMap<readonly HitLine[], readonly Step[]>()

/** The steps among the latest hits that could begin as soon as the hands were free, each with how much later it came. */
function stepsSeen(table: Table): readonly Step[] {
  const before = kept.get(table.hits)
  if (before) return before
  const dips = new Map(
    Object.values(table.pots).flatMap((pot) => pot.dips.map((dip) => [dip.hit, { pot, dip }] as const)),
  )
  /** From when each pair of hands was free, and the bucket stirred last, with what it took. */
  const freeAt: (number | undefined)[] = [undefined, undefined]
  let stirred:
    | { readonly bucketId: string; readonly at: number; readonly laterS: number | undefined }
    | undefined
  let opened: string | undefined
  const steps: Step[] = []
  for (const { hit, at, kind, bucketId } of table.hits) {
    const found = dips.get(hit)
    if (found && kind === 'dipped' && found.dip.hands !== 2) {
      const { pot, dip } = found
      const potter = found.dip.hands ?? 0
      const here = stirred?.bucketId === dip.bucketId ? stirred : undefined
      const from = here?.at ?? freeAt[potter]
      if (dip.how === 'planned' && from !== undefined && (here || isReadyBy(pot.touches, dip, from)))
        steps.push({ potter, is: 'dip', laterS: (dip.tappedAt - from) / 1000 })
      if (here?.laterS !== undefined && isReadyBy(pot.touches, dip, here.at - here.laterS * 1000))
        steps.push({ potter, is: 'stir', laterS: here.laterS })
      freeAt[potter] = dip.tappedAt + dipStepMs(table, dip)
      stirred = undefined
    } else if (kind === 'stirred' && bucketId !== undefined) {
      const bareS = opened === bucketId ? SET_UP_S.restir : SET_UP_S.open
      const from = table.settings.potters === 1 ? freeAt[0] : undefined
      const laterS = from === undefined ? undefined : (at - from) / 1000 - bareS
      stirred = { bucketId, at, laterS }
      opened = bucketId
      freeAt[0] = freeAt[0] === undefined ? undefined : Math.max(freeAt[0], at)
    } else if (table.settings.potters === 1) freeAt[0] = Math.max(at, freeAt[0] ?? at)
  }
  kept.set(table.hits, steps)
  return steps
}

/** Whether a dip's pot was known to be ready by then: bare, or touched dry before. */
const isReadyBy = (
  touches: readonly { readonly at: number; readonly dry: boolean }[],
  dip: DipState,
  at: number,
): boolean => dip.coat === 0 || touches.some((touch) => touch.dry && touch.at <= at)

function mean(laterS: readonly number[], priorS: number): number {
  const sum = laterS.reduce((total, each) => total + each, 0)
  return (PRIOR_STEPS * priorS + sum) / (PRIOR_STEPS + laterS.length)
}

const laterOf = (steps: readonly Step[], is: Step['is']): number[] =>
  steps.filter((step) => step.is === is).map((step) => Math.max(0, step.laterS))

/** The pace of the hands today, or of one pair of them; stirs are as unhurried as dips until they tell. */
export function paceOf(table: Table, potter?: Potter): Pace {
  const all = stepsSeen(table).filter((step) => potter === undefined || step.potter === potter)
  const steps = all.filter(({ laterS }) => laterS < INTERRUPTED_S)
  const [dips, stirs] = [laterOf(steps, 'dip'), laterOf(steps, 'stir')]
  const dipS = mean(dips, 0)
  const seen = [...dips, ...stirs]
  return {
    dipS,
    stirS: mean(stirs, dipS),
    seenS: seen.length < UNSEEN_S.length ? [...seen, ...UNSEEN_S] : seen,
    unseen: SHOWN_STEPS / (SHOWN_STEPS + seen.length),
    pauses: (PAUSES.part * PAUSES.steps + all.length - steps.length) / (PAUSES.steps + all.length),
  }
}
