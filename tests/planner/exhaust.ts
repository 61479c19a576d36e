import type { PlanInput } from '../../src/planner/index.ts'

/** Lateness, finish (from now), openings, re-stirs. */
export type Answer = readonly [number, number, number, number]

interface State {
  readonly done: readonly number[]
  readonly readyS: readonly number[]
  readonly timeS: number
  readonly open: string | null
  readonly stirS: number
  readonly poured: boolean
  /** A stir done before a preparation step that has not met its dip yet. */
  readonly owed: boolean
  readonly lateS: number
  readonly openings: number
  readonly restirs: number
}

const less = (a: readonly number[], b: readonly number[]): number => {
  for (const [k, value] of a.entries()) if (value !== b[k]) return value - b[k]!
  return 0
}

/**
 * Looks for anything better than `cut` by trying every sequence on a grid of `gridS` with every useful moment
 * of every stir, one step at a time; states that are behind another in every respect are dropped. Written from
 * the rules alone, for one pair of hands; nothing of the planner is used. All times of `input` must be on the grid.
 * @returns the best answer below `cut`, null when there is none, 'unknown' past `most` states.
 */
export function exhaust(
  input: PlanInput,
  cut: Answer,
  gridS: number,
  most = 400_000,
): Answer | null | 'unknown' {
  const jobs = input.pots.map((pot) => [
    ...pot.prep.map((step) => ({
      bucketId: null,
      lengthS: step.activeS,
      outS: step.activeS,
      nextS: step.activeS + step.waitAfterS,
      collar: false,
    })),
    ...pot.coats.map((coat) => ({
      bucketId: coat.bucketId as string | null,
      lengthS: coat.dipS,
      outS: coat.outAtS,
      nextS: Math.max(coat.dipS, coat.outAtS + coat.waitAfterS),
      collar: coat.collar,
    })),
  ])
  const bucketOf = new Map(input.buckets.map((bucket) => [bucket.id, bucket]))
  const twin = input.pots.map((pot, p) => JSON.stringify([jobs[p], pot.kilnDryS]))
  const dueS = (input.deadline?.loadStartS ?? Number.POSITIVE_INFINITY) - input.nowS
  const tailS = (p: number, from: number) =>
    jobs[p]!.slice(from).reduce((sum, job, k, all) => sum + (k < all.length - 1 ? job.nextS : job.lengthS), 0)
  const hands = input.hands[0]
  let states: State[] = [
    {
      done: jobs.map(() => 0),
      readyS: input.pots.map((pot) => Math.max(0, pot.readyAtS - input.nowS)),
      timeS: hands.freeAtS - input.nowS,
      open: hands.open?.bucketId ?? null,
      stirS: hands.open ? hands.open.stirEndS - input.nowS : 0,
      poured: hands.open?.decanted ?? false,
      owed: false,
      lateS: 0,
      openings: 0,
      restirs: 0,
    },
  ]
  let best: Answer = cut
  let made = 0
  const total = jobs.reduce((sum, each) => sum + each.length, 0)

  const after = (s: State, p: number, startS: number, change: Partial<State>): State => {
    const job = jobs[p]![s.done[p]!]!
    const last = s.done[p] === jobs[p]!.length - 1
    return {
      ...s,
      owed: s.owed && job.bucketId === null,
      ...change,
      done: s.done.map((count, q) => (q === p ? count + 1 : count)),
      readyS: s.readyS.map((ready, q) => (q === p ? startS + job.nextS : ready)),
      timeS: startS + job.lengthS,
      lateS: last ? Math.max(s.lateS, startS + job.outS + input.pots[p]!.kilnDryS - dueS) : s.lateS,
    }
  }

  /** Moments a stir could end: at once, or so that a pot that is ready later still falls within its age. */
  const moments = (s: State, bucketId: string, earliestS: number): number[] => {
    const found = new Set([earliestS])
    const freshS = bucketOf.get(bucketId)!.freshS
    jobs.forEach((each, q) => {
      const k = each.findIndex((job, at) => at >= s.done[q]! && job.bucketId !== null)
      if (k < 0 || each[k]!.bucketId !== bucketId) return
      let soonest = s.readyS[q]!
      let latest = soonest
      for (let at = s.done[q]!; at < k; at++) {
        soonest += each[at]!.nextS
        // Preparation may itself be put off while the hands stir.
        latest += each[at]!.nextS + 20 * 60
      }
      for (let t = soonest - freshS; t <= latest; t += gridS) if (t > earliestS) found.add(t)
    })
    return [...found]
  }

  const follow = (s: State, p: number): State[] => {
    const job = jobs[p]![s.done[p]!]!
    const atS = Math.max(s.timeS, s.readyS[p]!)
    const out: State[] = []
    const stirFirst = (bucketId: string, collar: boolean, owed: boolean) => {
      const bucket = bucketOf.get(bucketId)!
      const same = s.open === bucketId
      const pour = collar && !(same && s.poured)
      const needS = (same ? bucket.restirS : bucket.openS) + (pour ? bucket.decantS : 0)
      for (const endS of moments(s, bucketId, Math.max(s.timeS + needS, s.readyS[p]!)))
        out.push(
          after(s, p, endS, {
            open: bucketId,
            stirS: endS,
            poured: pour || (same && s.poured),
            owed,
            openings: s.openings + (same ? 0 : 1),
            restirs: s.restirs + (same ? 1 : 0),
          }),
        )
    }
    if (job.bucketId === null) {
      out.push(after(s, p, atS, {}))
      if (!s.owed)
        for (const bucket of input.buckets) {
          const wanted = jobs
            .flatMap((each, q) => each.slice(s.done[q]!))
            .filter((each) => each.bucketId === bucket.id)
          for (const collar of new Set(wanted.map((each) => each.collar))) stirFirst(bucket.id, collar, true)
        }
      return out
    }
    const fresh = s.open === job.bucketId && atS - s.stirS <= bucketOf.get(job.bucketId)!.freshS
    if (fresh && (!job.collar || s.poured)) out.push(after(s, p, atS, {}))
    if (!s.owed) stirFirst(job.bucketId, job.collar, false)
    return out
  }

  const hopeless = (s: State): boolean => {
    let finishS = s.timeS
    let lateS = s.lateS
    let workS = 0
    const wanted = new Set<string>()
    jobs.forEach((each, p) => {
      const k = s.done[p]!
      if (k === each.length) return
      const startS = Math.max(s.timeS, s.readyS[p]!)
      finishS = Math.max(finishS, startS + tailS(p, k))
      const last = each.at(-1)!
      lateS = Math.max(
        lateS,
        startS + tailS(p, k) - last.lengthS + last.outS + input.pots[p]!.kilnDryS - dueS,
      )
      for (const job of each.slice(k)) {
        workS += job.lengthS
        if (job.bucketId !== null && job.bucketId !== s.open) wanted.add(job.bucketId)
      }
    })
    for (const id of wanted) workS += bucketOf.get(id)!.openS
    return less([lateS, Math.max(finishS, s.timeS + workS), s.openings + wanted.size, s.restirs], best) >= 0
  }

  const behind = (a: State, b: State): boolean =>
    a.timeS >= b.timeS &&
    a.stirS <= b.stirS &&
    a.lateS >= b.lateS &&
    a.openings >= b.openings &&
    a.restirs >= b.restirs &&
    a.readyS.every(
      (ready, p) =>
        a.done[p] === jobs[p]!.length || Math.max(ready, a.timeS) >= Math.max(b.readyS[p]!, b.timeS),
    )

  for (let level = 1; level <= total; level++) {
    const groups = new Map<string, State[]>()
    for (const s of states)
      for (let p = 0; p < jobs.length; p++) {
        if (s.done[p] === jobs[p]!.length) continue
        const sooner = jobs.some((_, q) => {
          if (q === p || twin[q] !== twin[p] || s.done[q] !== s.done[p]) return false
          return s.readyS[q]! < s.readyS[p]! || (s.readyS[q] === s.readyS[p] && q < p)
        })
        if (sooner) continue
        for (const child of follow(s, p)) {
          if (++made > most) return 'unknown'
          if (hopeless(child)) continue
          if (level === total) {
            best = [child.lateS, child.timeS, child.openings, child.restirs]
            continue
          }
          const key = `${child.done}|${child.open}|${child.poured}|${child.owed}`
          const group = groups.get(key) ?? []
          if (group.some((other) => behind(child, other))) continue
          groups.set(key, [...group.filter((other) => !behind(other, child)), child])
        }
      }
    states = [...groups.values()].flat()
  }
  return best === cut ? null : best
}
