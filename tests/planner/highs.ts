import loadHighs from 'highs'
import type { PlanInput } from '../../src/planner/index.ts'
import type { Answer } from './exhaust.ts'

/**
 * The rules as a mixed integer program for HiGHS (highs.dev), a general solver from the package registry. Small
 * boards of dips only, one pair of hands, no open bucket. Binary x[i,j]: dip j follows dip i at once; z[j]: the
 * bucket is stirred again right before j; s[j] start, g[j] end of the stir that serves j.
 * The aims are solved one after the other, each held at its optimum for the next.
 */
export async function makeSolver(): Promise<(input: PlanInput, bounds: Answer) => Answer> {
  const highs = await loadHighs()
  return (input, bounds) => {
    const dips = input.pots.flatMap((pot, p) =>
      pot.coats.map((coat, k) => ({ pot, p, coat, k, last: k === pot.coats.length - 1 })),
    )
    const bucketOf = new Map(input.buckets.map((bucket) => [bucket.id, bucket]))
    // Everything one after the other takes no longer than this.
    const most = dips.reduce(
      (sum, { coat, pot }) =>
        sum +
        coat.dipS +
        coat.waitAfterS +
        bucketOf.get(coat.bucketId)!.openS +
        bucketOf.get(coat.bucketId)!.decantS +
        Math.max(0, pot.readyAtS),
      0,
    )
    const cap = Math.min(most, bounds[1])
    const rows: string[] = []
    const binaries: string[] = []
    const opens: string[] = []
    const row = (text: string) => rows.push(` c${rows.length}: ${text}`)
    const before = (a: (typeof dips)[number], b: (typeof dips)[number]) => a.p === b.p && a.k < b.k
    const from = dips.map((_, j) => `x_s_${j}`)
    row(`${from.join(' + ')} = 1`)
    dips.forEach((a, i) => {
      const into = [`x_s_${i}`]
      const out = [`x_${i}_e`]
      dips.forEach((b, j) => {
        if (i !== j && !before(a, b)) into.push(`x_${j}_${i}`)
        if (i !== j && !before(b, a)) out.push(`x_${i}_${j}`)
      })
      row(`${into.join(' + ')} = 1`)
      row(`${out.join(' + ')} = 1`)
      binaries.push(`x_s_${i}`, `x_${i}_e`, `z_${i}`)
      const own = bucketOf.get(a.coat.bucketId)!
      opens.push(`x_s_${i}`)
      row(`s_${i} - ${own.openS} x_s_${i} >= 0`)
      row(`s_${i} >= ${Math.max(0, a.pot.readyAtS)}`)
      row(`f - s_${i} >= ${a.coat.dipS}`)
      if (a.last && input.deadline)
        row(`t - s_${i} >= ${a.coat.outAtS + a.pot.kilnDryS - input.deadline.loadStartS}`)
      row(`s_${i} - g_${i} <= ${own.freshS}`)
      row(`g_${i} - s_${i} <= 0`)
      dips.forEach((b, j) => {
        if (i === j || before(b, a)) return
        const x = `x_${i}_${j}`
        binaries.push(x)
        const to = bucketOf.get(b.coat.bucketId)!
        const same = a.coat.bucketId === b.coat.bucketId
        if (!same) opens.push(x)
        const setUp = same ? 0 : to.openS
        const big = cap + setUp + to.restirS
        // s_j >= s_i + dip + set-up (+ re-stir)
        row(
          `s_${j} - s_${i} - ${big} ${x}${same ? ` - ${to.restirS} z_${j}` : ''} >= ${a.coat.dipS + setUp - big}`,
        )
        // The same bucket, not stirred again: the stir that served i serves j.
        if (same) row(`g_${j} - g_${i} + ${cap} ${x} - ${cap} z_${j} <= ${cap}`)
      })
      dips.forEach((b) => {
        if (a.p === b.p && b.k === a.k + 1)
          row(`s_${dips.indexOf(b)} - s_${i} >= ${Math.max(a.coat.dipS, a.coat.outAtS + a.coat.waitAfterS)}`)
      })
    })
    // Alike pots in a fixed order.
    input.pots.forEach((pot, p) => {
      const twin = input.pots.findIndex(
        (other, q) => q > p && JSON.stringify({ ...other, id: '' }) === JSON.stringify({ ...pot, id: '' }),
      )
      if (twin > 0)
        row(`s_${dips.findIndex((d) => d.p === twin)} - s_${dips.findIndex((d) => d.p === p)} >= 0`)
    })
    const goals = ['t', 'f', opens.join(' + '), dips.map((_, i) => `z_${i}`).join(' + ')]
    const found: number[] = []
    for (const goal of goals) {
      const text = [
        'Minimize',
        ` goal: ${goal}`,
        'Subject To',
        ...rows,
        ...found.map((value, k) => ` held${k}: ${goals[k]} <= ${value}`),
        ...found.map((value, k) => ` kept${k}: ${goals[k]} >= ${value}`),
        'Bounds',
        ` 0 <= t <= ${most + 1e6}`,
        ` 0 <= f <= ${cap}`,
        ...dips.flatMap((_, i) => [` 0 <= s_${i} <= ${cap}`, ` 0 <= g_${i} <= ${cap}`]),
        'Binary',
        ` ${binaries.join(' ')}`,
        'End',
      ].join('\n')
      const solved = highs.solve(text, { mip_rel_gap: 0, mip_abs_gap: 0.5, time_limit: 60 })
      if (solved.Status !== 'Optimal') throw new Error(`HiGHS: ${solved.Status}`)
      found.push(Math.round(solved.ObjectiveValue))
    }
    return [found[0]!, found[1]!, found[2]!, found[3]!]
  }
}
