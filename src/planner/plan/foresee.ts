import type { Order } from '../problem/order.ts'
import { layProblem, NEVER_S, type Problem } from '../problem/problem.ts'
import { orderByRule, PLAIN_RULE } from '../search/by-rule.ts'
import { makeRandom } from '../search/random.ts'
import { recall } from '../search/recall.ts'
import { makeTimer } from '../timing/timing.ts'
import type { Foresight, Odds, Plan, PlanInput } from '../types.ts'

/** Futures drawn an answer: the edges move by a minute or two from one set to another. Tuned. */
const FUTURES = 200
/** Part of a band's spread that all waits of a sitting share: one room, one air. Assumption. */
const SHARED = 0.5
/** Part of what a room does to all waits that touches have told by the time a coat to come is asked about. Tuned. */
const LEARNED = 0.8
/** Nine tenths point of the normal law: a wait's upper bound lies there. */
const Z90 = 1.2816
/**
 * Part of the futures that end before each edge of the band. Hands lose where an order did not know of a delay, so that more
 * sittings than futures come after the late edge; of hands that have shown nothing the futures are wide, and held less. Tuned.
 */
const EDGES = { lower: 0.05, likely: 0.5, upper: 0.93, unseenUpper: 0.82 } as const
/** A coat found damp is asked about again after this part of its wait, within these limits, as the table has it. */
const AGAIN_PART = 0.25
const AGAIN_S = { least: 120, most: 900 }
/**
 * Hands of whose pace nothing was seen take from a half of what was thought to half as much again; in this part of the
 * futures less, down to the least, and less of stirs too. Tuned.
 */
const PACE = { least: 0.25, bare: 0.5, most: 1.4 } as const
const AT_ONCE = 0.1
/** No stir is shorter, s. Assumption. */
const LEAST_STIR_S = 10
/** The interruption that is told of, s. */
export const INTERRUPTION_S = 600

/** A seed for what one thing meets in one future (FNV-1a). */
function seedOf(seed: number, name: string, future: number): number {
  let hash = 0x811c9dc5 ^ seed
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193)
  return Math.imul(hash ^ future, 0x01000193) ^ (future << 16)
}

/**
 * Draws of the normal law by two uniform ones (G. Box, M. Muller, Ann. Math. Stat. 29 (1958) 610). Futures come in
 * pairs of opposite draws, whose middle is nearer to the true one.
 */
function makeNormal(seed: number, name: string, future: number): () => number {
  const random = makeRandom(seedOf(seed, name, future >> 1))
  const sign = future % 2 === 0 ? 1 : -1
  return () => sign * Math.sqrt(-2 * Math.log(random.unit())) * Math.cos(2 * Math.PI * random.unit())
}

/** A wait as hands meet it: nobody asks before its likely end, and damp coats are asked about again. */
function met(likelyS: number, trueS: number): number {
  if (trueS <= likelyS) return likelyS
  const again = Math.min(AGAIN_S.most, Math.max(AGAIN_S.least, likelyS * AGAIN_PART))
  return likelyS + Math.ceil((trueS - likelyS) / again) * again
}

const sdOf = (likelyS: number, lateS: number): number =>
  likelyS > 0 && lateS > likelyS ? Math.log(lateS / likelyS) / Z90 : 0

/** How much slower hands of such a pace are than the input has them, on average; whole seconds. */
const slowerS = ({ betweenS, meanBetweenS }: Odds, pace: number): number =>
  betweenS.length === 0
    ? 0
    : Math.max(
        0,
        Math.round((pace * betweenS.reduce((sum, each) => sum + each, 0)) / betweenS.length - meanBetweenS),
      )

/** How many times as long as thought the hands take in one future: a sitting has hands of one pace, which its hits tell. */
function paceOf({ unseen }: Odds, seed: number, future: number): number {
  const drawn = makeRandom(seedOf(seed, 'pace', future >> 1)).unit()
  const part = future % 2 === 0 ? drawn : 1 - drawn
  const fresh =
    part < AT_ONCE
      ? PACE.least + ((PACE.bare - PACE.least) * part) / AT_ONCE
      : PACE.bare + ((PACE.most - PACE.bare) * (part - AT_ONCE)) / (1 - AT_ONCE)
  return 1 + unseen * (fresh - 1)
}

/** What one pot meets in one future, from the kiln back: whatever it has behind it by now changes none of these draws. */
function makeMet(odds: Odds, seed: number, future: number) {
  const room = Math.sqrt(SHARED) * makeNormal(seed, '', future)()
  /** How far a wait is from its likely end, in spreads: that for the kiln first, then those between coats. */
  const spreads = (name: string): (() => number) => {
    const normal = makeNormal(seed, name, future)
    return () => room + Math.sqrt(1 - SHARED) * normal()
  }
  const pace = paceOf(odds, seed, future)
  /** How much later than the input has them the hands are, s, at one step after another; those at once are never called away. */
  const later = (name: string): (() => number) => {
    const random = makeRandom(seedOf(seed, `${name} hands`, future))
    const pauses = odds.pauses * Math.max(0, (pace - PACE.bare) / (1 - PACE.bare))
    return () => (random.unit() < pauses ? INTERRUPTION_S : 0) + drawn(random)
  }
  const drawn = (random: ReturnType<typeof makeRandom>): number =>
    odds.betweenS.length > 0 ? odds.betweenS[random.int(odds.betweenS.length)]! * pace - odds.meanBetweenS : 0
  /** The same without an interruption. */
  const late = (name: string): number => drawn(makeRandom(seedOf(seed, `${name} hands`, future)))
  /** Part of a stir, a wax or a wipe that the quickest hands take. */
  const quick = Math.min(1, pace / PACE.bare)
  return { room, spreads, later, late, pace, quick }
}

/** The board with every wait and every step as one future has them. Times only: the order's ops stay the same. */
function lay(
  problem: Problem,
  base: Problem,
  odds: Odds,
  { room, spreads, later, late, pace, quick }: ReturnType<typeof makeMet>,
): void {
  base.pots.forEach((pot, p) => {
    const own = odds.pots[pot.id]
    const [z, laterS] = [spreads(pot.id), later(pot.id)]
    const kilnZ = z()
    const dips: number[] = []
    for (let o = base.firstOp[p]!; o >= 0; o = base.next[o]!) {
      if (base.bucket[o]! >= 0) dips.push(o)
      else {
        problem.dur[o] = Math.max(1, Math.round(base.dur[o]! * quick))
        problem.after[o] = base.after[o]! - base.dur[o]! + problem.dur[o]!
      }
    }
    for (let k = dips.length - 1; k >= 0; k--) {
      const o = dips[k]!
      const moreS = laterS()
      problem.dur[o] = Math.max(1, Math.round(base.dur[o]! + moreS))
      problem.out[o] = Math.max(0, Math.round(base.out[o]! + moreS))
      const waitS = pot.coats[k]!.waitAfterS
      const sd = sdOf(waitS, own?.waitsLateS[k] ?? 0)
      const trueS = waitS * Math.exp(sd * z())
      // By then touches of other pots have told something of this room.
      const askS = waitS * Math.exp(sd * LEARNED * room)
      problem.after[o] = Math.max(problem.dur[o]!, Math.round(problem.out[o]! + met(askS, trueS)))
      if (base.dry[o]! >= 0) {
        const kilnS = pot.kilnDryS * Math.exp(sdOf(pot.kilnDryS, own?.kilnLateS ?? 0) * kilnZ)
        problem.dry[o] = Math.round(problem.out[o]! + kilnS)
      }
    }
    const first = base.firstOp[p]!
    const readyS = base.release[first]!
    const sd = sdOf(readyS, own?.readyLateS ?? 0)
    problem.release[first] = Math.round(
      met(readyS * Math.exp(sd * LEARNED * room), readyS * Math.exp(sd * z())),
    )
  })
  base.buckets.forEach(({ id }, b) => {
    const moreS = later(`bucket ${id}`)()
    const stirS = (thoughtS: number) => Math.max(LEAST_STIR_S, Math.round(thoughtS * quick + moreS))
    // START comes as much later than the step begins. What an order keeps in hand is there to be used.
    const startS = slowerS(odds, pace) + Math.max(0, late(`start ${id}`))
    problem.freshS[b] = Math.max(0, base.freshS[b]! - startS + odds.slackS)
    problem.openS[b] = stirS(base.openS[b]!)
    problem.restirS[b] = stirS(base.restirS[b]!)
  })
}

/** As `layProblem`, with arrays of its own. */
function copyOf(base: Problem): Problem {
  return {
    ...base,
    release: base.release.slice(),
    dur: base.dur.slice(),
    out: base.out.slice(),
    after: base.after.slice(),
    dry: base.dry.slice(),
    openS: base.openS.slice(),
    restirS: base.restirS.slice(),
    freshS: base.freshS.slice(),
    freeS: base.freeS.slice(),
    // What is still to come is not known beforehand: no bad order is dropped early here.
    tail: base.tail.slice().fill(0),
    dryTail: base.dryTail.slice(),
  }
}

const bandOf = (values: readonly number[], nowS: number, unseen: number) => {
  const sorted = [...values].sort((a, b) => a - b)
  const upper = EDGES.upper + unseen * (EDGES.unseenUpper - EDGES.upper)
  const at = (part: number) =>
    nowS + Math.round(sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))]!)
  return { lower: at(EDGES.lower), likely: at(EDGES.likely), upper: at(upper) }
}

/**
 * How an order may come out: many futures of it, each with waits, steps and interruptions drawn by `odds`. The
 * order stays as it is, or goes by the plain rule where that is sooner, so that a table told anew after each hit does a little
 * better. Same input, same answer.
 * @throws RangeError naming field, value and allowed range.
 */
export function foresee(input: PlanInput, plan: Plan, odds: Odds): Foresight | null {
  const base = layProblem(input)
  if (base.n === 0) return null
  const problem = copyOf(base)
  const timer = makeTimer(problem)
  const { order } = recall(base, makeTimer(base), plan).found
  const done = Object.entries(odds.done ?? {})
  const ends: number[] = []
  const dries: number[] = []
  const lastDryS = (drawn: ReturnType<typeof makeMet>) => {
    let dryS =
      done.length > 0 ? Number.NEGATIVE_INFINITY : (input.deadline?.doneDryAtS ?? -Infinity) - input.nowS
    for (const [id, pot] of done) {
      const waitS = pot.dryS * Math.exp(sdOf(pot.dryS, pot.dryLateS) * drawn.spreads(id)())
      dryS = Math.max(dryS, Math.round(pot.outAtS + waitS - input.nowS))
    }
    for (let o = 0; o < base.n; o++)
      if (problem.dry[o]! >= 0) dryS = Math.max(dryS, timer.start[o]! + problem.dry[o]!)
    return dryS
  }
  const ended = (of: Order, drawn: ReturnType<typeof makeMet>) => {
    timer.run(of, Number.POSITIVE_INFINITY)
    let endS = 0
    for (let o = 0; o < base.n; o++) endS = Math.max(endS, timer.start[o]! + problem.dur[o]!)
    return { endS, dryS: lastDryS(drawn) }
  }
  for (let k = 0; k < FUTURES; k++) {
    const drawn = makeMet(odds, input.seed, k)
    lay(problem, base, odds, drawn)
    const asScheduled = ended(order, drawn)
    // Hands do not keep to an order that no longer fits: they go by the rule at least.
    const byRule = ended(orderByRule(problem, PLAIN_RULE), drawn)
    const end = byRule.endS < asScheduled.endS ? byRule : asScheduled
    ends.push(end.endS)
    dries.push(end.dryS)
  }
  const late = dries.filter((dryS) => dryS > problem.deadlineS).length
  return {
    finishS: bandOf(ends, input.nowS, odds.unseen),
    dryAtS: bandOf(dries, input.nowS, odds.unseen),
    lateOdds: base.deadlineS === NEVER_S ? null : late / FUTURES,
    interruptionS: input.hands.map((_, l) => interruption(base, order, l)),
  }
}

/** What ten minutes more than the hands are free cost at the end, s, if the order stays. */
function interruption(base: Problem, order: ReturnType<typeof recall>['found']['order'], l: number): number {
  const problem = copyOf(base)
  const timer = makeTimer(problem)
  timer.run(order, Number.POSITIVE_INFINITY)
  const endS = () => {
    let latest = 0
    for (let o = 0; o < base.n; o++) latest = Math.max(latest, timer.start[o]! + base.dur[o]!)
    return latest
  }
  const before = endS()
  const first = order.ops.find((o) => order.potter[o] === l)
  if (first === undefined) return 0
  const beginS = timer.start[first]! - (timer.setUp[first] ? timer.setUpS[first]! : 0)
  problem.freeS[l] = Math.max(base.freeS[l]!, beginS) + INTERRUPTION_S
  timer.run(order, Number.POSITIVE_INFINITY)
  return Math.max(0, endS() - before)
}
