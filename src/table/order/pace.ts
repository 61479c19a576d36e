import type { Potter } from '../model/potters.ts'
import type { Table } from '../model/state.ts'
import { FOOT_S } from '../steps/pot-in-hand.ts'
import { BARE_S, type Chore, type Step, stepsSeen } from './steps-seen.ts'

/** How long these hands take, as their latest hits show it: today's, and some of the sittings before. Seconds. */
export interface Pace {
  /** From the end of a drip until the next START could be hit, foot and set-down within: what every dip comes to. */
  readonly betweenS: number
  /** Its excess over the bare work: negative of hands that are quicker. */
  readonly laterS: number
  readonly takesS: Readonly<Record<Chore, number>>
  /** The same between of each of the latest steps, interrupted ones left out, with what hands are like before they tell. */
  readonly seenS: readonly number[]
  /** How far the hands have not shown their pace yet: 1 before their first step, towards 0 with each. */
  readonly unseen: number
  /** Part of the steps before which hands are called away. */
  readonly pauses: number
}

/** Nobody is planned quicker than this: settled glaze takes its stirring, a pot has to be put down. Assumptions. */
const LEAST_S: Readonly<Record<Chore | 'between', number>> = {
  open: 20,
  restir: 10,
  wax: 5,
  wipe: 5,
  between: 5,
}
/** Bare work is worth as much as so many steps seen; chores are few, and tell it sooner. */
const PRIOR_STEPS = { dip: 3, chore: 0.5, alike: 1 } as const
/** How far hands that are quick at one thing are quick at another, as a power. Assumption. */
const ALIKE = 0.7
/** After so many steps seen half of what hands may be like is known; a wax or a wipe tells less of dips. Tuned. */
const SHOWN_STEPS = 3
const PREP_TELLS = 0.25
/** What hands are like that have shown nothing yet, for promises: a minute late at most. Assumption. */
const UNSEEN_S = [0, 15, 30, 45, 60].map((laterS) => FOOT_S + laterS)
/** A step that took longer than bare by this was interrupted, s: it tells of no pace. Assumption. */
const INTERRUPTED_S = 300
/** And after so long it is work begun anew, which tells of no interruption either, s. Assumption. */
const BEGUN_ANEW_S = 1800
/** So many steps of a kind that were in earlier sittings still count. Our choice. */
const EARLIER_STEPS = 16
/** Part of the steps before which hands are called away, until theirs tell: worth as much as so many steps seen. Assumptions. */
const PAUSES = { part: 0.03, steps: 80 }

/** Today's steps of a kind, and the latest few of earlier sittings. */
function latest(steps: readonly Step[], ...kinds: readonly Step['is'][]): readonly number[] {
  const of = steps.filter(({ is }) => kinds.includes(is))
  const laterS = (earlier: boolean) =>
    of.filter((step) => step.earlier === earlier).map((step) => step.laterS)
  return [...laterS(true).slice(-EARLIER_STEPS), ...laterS(false)]
}

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0)

/** Geometric mean of one value thought, so many times, and those seen. */
const geometric = (thought: number, times: number, seen: readonly number[]): number =>
  thought * Math.exp(sum(seen.map((each) => Math.log(each / thought))) / (times + seen.length))

const CHORES: readonly Chore[] = ['open', 'restir', 'wax', 'wipe']

/** The pace of the hands, or of one pair of them; at what they have not done yet they are as unhurried or quick as at the rest. */
export function paceOf(table: Table, potter?: Potter): Pace {
  const all = stepsSeen(table).filter(
    (step) => (potter === undefined || step.potter === potter) && step.laterS < BEGUN_ANEW_S,
  )
  const steps = all.filter(({ laterS }) => laterS < INTERRUPTED_S)
  const feetS = latest(steps, 'dip').map((laterS) => Math.max(LEAST_S.between, FOOT_S + laterS))
  const tookS = (is: Chore) => latest(steps, is).map((laterS) => Math.max(LEAST_S[is], BARE_S[is] + laterS))
  /** How quick they are at other chores than one, or at feet while no chore was seen; 1 where not quicker than bare work. */
  const quick = (but?: Chore): number => {
    const chores = CHORES.flatMap((is) => (is === but ? [] : tookS(is).map((each) => each / BARE_S[is])))
    const feet = chores.length === 0 && but ? feetS.map((each) => each / FOOT_S) : []
    return (
      geometric(
        1,
        PRIOR_STEPS.alike,
        [...chores, ...feet].map((part) => Math.min(1, part)),
      ) ** ALIKE
    )
  }
  const thoughtS = FOOT_S * quick()
  const footS = geometric(
    thoughtS,
    1,
    feetS.map((each) => Math.min(FOOT_S, each)),
  )
  const firstS = latest(steps, 'first-dip').map((laterS) => footS + Math.max(0, laterS))
  const seen = [...feetS, ...firstS]
  const betweenS = (PRIOR_STEPS.dip * thoughtS + sum(seen)) / (PRIOR_STEPS.dip + seen.length)
  const lateS = Math.max(0, betweenS - FOOT_S)
  const takes = (is: Chore): number =>
    geometric(
      BARE_S[is] * quick(is) + (is === 'open' || is === 'restir' ? lateS : 0),
      PRIOR_STEPS.chore,
      tookS(is),
    )
  const stirs = tookS('open').length + tookS('restir').length
  const preps = tookS('wax').length + tookS('wipe').length
  const shown = seen.length + stirs + PREP_TELLS * preps
  const unseenS = UNSEEN_S.map((each) => each * quick())
  return {
    betweenS,
    laterS: betweenS - FOOT_S,
    takesS: { open: takes('open'), restir: takes('restir'), wax: takes('wax'), wipe: takes('wipe') },
    seenS: seen.length < UNSEEN_S.length ? [...seen, ...unseenS] : seen,
    unseen: SHOWN_STEPS / (SHOWN_STEPS + shown),
    pauses: (PAUSES.part * PAUSES.steps + all.length - steps.length) / (PAUSES.steps + all.length),
  }
}
