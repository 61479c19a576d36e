import type { PlanInput } from '../../src/planner/index.ts'

/**
 * What hands do that go by one rule of the workshop, played step by step: no order is laid out, nothing is looked up
 * ahead. Shares no code with the planner. One pair of hands.
 */
export interface Rule {
  /** Which bucket comes next once the open one has nothing that is ready: that of the pot with the most still ahead of it, the one with most pots ready, or the one that can go soonest. */
  readonly next: 'longest' | 'most' | 'soonest'
  /** Of pots that are ready for one bucket: the most still ahead first, or as they stand on the board. */
  readonly pots: 'longest' | 'listed'
  /** Waits so long beside the open bucket for what comes back to it, s. */
  readonly patienceS: number
}

export const RULES: readonly Rule[] = (['longest', 'most', 'soonest'] as const).flatMap((next) =>
  (['longest', 'listed'] as const).flatMap((pots) =>
    [0, 600].map((patienceS) => ({ next, pots, patienceS })),
  ),
)

interface Standing {
  readonly done: number
  readonly readyS: number
}

/** What comes of a sitting by `rule`: seconds past the deadline, and when the last dip ends on the input's clock. */
export function played(input: PlanInput, rule: Rule): readonly [lateS: number, finishS: number] {
  const bucketOf = new Map(input.buckets.map((bucket) => [bucket.id, bucket]))
  const steps = input.pots.map((pot) => [
    ...pot.prep.map(({ activeS, waitAfterS }) => ({
      bucketId: null,
      takesS: activeS,
      backS: activeS + waitAfterS,
      pours: false,
    })),
    ...pot.coats.map(({ bucketId, dipS, outAtS, waitAfterS, collar }) => ({
      bucketId,
      takesS: dipS,
      backS: Math.max(dipS, outAtS + waitAfterS),
      pours: collar,
    })),
  ])
  const ahead = steps.map((own) => {
    const left = own.map(({ takesS }) => takesS)
    for (let k = own.length - 2; k >= 0; k--) left[k] = own[k]!.backS + left[k + 1]!
    return left
  })
  const at: Standing[] = input.pots.map(({ readyAtS }) => ({ done: 0, readyS: readyAtS }))
  let timeS = input.hands[0].freeAtS
  let { bucketId: open = null, stirEndS: stirS = 0, decanted: poured = false } = input.hands[0].open ?? {}
  let finishS = input.nowS
  const { loadStartS = Number.POSITIVE_INFINITY, doneDryAtS = 0 } = input.deadline ?? {}
  let lateS = Math.max(0, doneDryAtS - loadStartS)
  const left = () => input.pots.flatMap((_, p) => (at[p]!.done < steps[p]!.length ? [p] : []))
  const stepOf = (p: number) => steps[p]![at[p]!.done]!
  const aheadOf = (p: number) => ahead[p]![at[p]!.done]!
  const byRule = (a: number, b: number) => (rule.pots === 'listed' ? a - b : aheadOf(b) - aheadOf(a))
  const take = (p: number) => {
    const { bucketId, takesS, backS, pours } = stepOf(p)
    const bucket = bucketId === null ? undefined : bucketOf.get(bucketId)!
    let startS = Math.max(timeS, at[p]!.readyS)
    if (bucket) {
      const opens = open !== bucketId
      const pour = pours && (opens || !poured)
      // A stir ends as the pot comes: it is begun while that still dries.
      if (opens || pour || startS - stirS > bucket.freshS) {
        startS = Math.max(
          startS,
          timeS + (opens ? bucket.openS : bucket.restirS) + (pour ? bucket.decantS : 0),
        )
        stirS = startS
        poured = pour || (poured && !opens)
        open = bucketId
      }
      finishS = Math.max(finishS, startS + takesS)
    }
    timeS = startS + takesS
    at[p] = { done: at[p]!.done + 1, readyS: startS + backS }
    const pot = input.pots[p]!
    if (at[p]!.done === steps[p]!.length)
      lateS = Math.max(lateS, startS + pot.coats.at(-1)!.outAtS + pot.kilnDryS - loadStartS)
  }
  for (let pots = left(); pots.length > 0; pots = left()) {
    const soon = (p: number) => at[p]!.readyS <= timeS
    const here = pots.filter((p) => stepOf(p).bucketId === open && at[p]!.readyS <= timeS + rule.patienceS)
    const bare = pots.filter((p) => stepOf(p).bucketId === null && soon(p))
    const first =
      here.filter(soon).toSorted(byRule)[0] ??
      bare.toSorted(byRule)[0] ??
      here.toSorted((a, b) => at[a]!.readyS - at[b]!.readyS || byRule(a, b))[0]
    if (first !== undefined) {
      take(first)
      continue
    }
    const setUpS = (p: number) => {
      const { bucketId } = stepOf(p)
      return bucketId === null || bucketId === open ? 0 : bucketOf.get(bucketId)!.openS
    }
    const startS = (p: number) => Math.max(at[p]!.readyS, timeS + setUpS(p))
    const soonestS = Math.min(...pots.map(startS))
    const could = pots.filter((p) => startS(p) <= soonestS)
    const count = (p: number) => could.filter((q) => stepOf(q).bucketId === stepOf(p).bucketId).length
    const chosen = could.toSorted(
      (a, b) =>
        (rule.next === 'most'
          ? count(b) - count(a)
          : rule.next === 'longest'
            ? aheadOf(b) - aheadOf(a)
            : 0) || byRule(a, b),
    )
    take(chosen[0]!)
  }
  return [lateS, finishS]
}
