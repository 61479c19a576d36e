/**
 * How well limits, tiles, dipped densities and boards are told, by simulation of rooms whose truth is known; in full by `npm
 * run prove`.
 */
import { describe, expect, test } from 'vitest'
import { dipAlarm, dipDensity } from '../../../../src/engine/fired/dip-density.ts'
import { roomMemory } from '../../../../src/engine/fired/room-memory.ts'
import { thicknessLimit } from '../../../../src/engine/fired/thickness-limit.ts'
import { LOSSES, tileValues } from '../../../../src/engine/fired/tile-value.ts'
import { normalCdf as cdf } from '../../../../src/engine/numeric/spread.ts'
import { drawFrom } from '../../../fixtures/fired/draw.ts'
import { bucketOf, glazeOf, roomOf, tileBoardOf } from '../../../fixtures/fired/rooms.ts'

const FULL = process.env.PROVE === '1'
const say = (line: string) => {
  if (FULL) console.log(line)
}
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
const part = (values: readonly boolean[]) => mean(values.map(Number))

describe('thickness limits', () => {
  test.each([
    [0, 0.35],
    [1, 0.28],
    [2, 0.24],
    [3, 0.22],
    [5, 0.18],
    [10, 0.14],
  ])('after %d results', (count, sd) => {
    const told = Array.from({ length: FULL ? 600 : 200 }, (_, seed) => {
      const { lnLimit, seen } = glazeOf(300 + seed, count)
      const { mm, lnSd } = thicknessLimit(1, seen)
      return { held: lnLimit >= Math.log(mm.low) && lnLimit <= Math.log(mm.high), lnSd }
    })
    const [held, spread] = [part(told.map((one) => one.held)), mean(told.map(({ lnSd }) => lnSd))]
    say(`limit, ${count}: holds ${held.toFixed(3)}, sd ${spread.toFixed(3)} (${sd})`)
    expect(held).toBeGreaterThanOrEqual(0.75)
    expect(held).toBeLessThanOrEqual(0.88)
    expect(spread).toBeLessThanOrEqual(1.1 * sd)
  })
})

test('the tile worth most saves more than the thickest, and that more than any', () => {
  const boards = FULL ? 3000 : 400
  const saved = { random: 0, thickest: 0, worth: 0 }
  for (let seed = 0; seed < boards; seed++) {
    const { asked, truth } = tileBoardOf(700 + seed)
    const { roll, normal } = drawFrom(90_000 + seed)
    const unknown = asked.filter(({ lnSd }) => lnSd > 0.3)
    if (unknown.length === 0) continue
    /** What a tile of one subject truly saves: pots put the other way by what it shows. */
    const saves = (subject: string) => {
      const i = asked.findIndex((one) => one.subject === subject)
      const { lnMean, lnSd, firings, shelfLn } = asked[i]!
      const keeps = lnSd ** 2 / (lnSd ** 2 + 0.16)
      const after = lnMean + keeps * (truth[i]! + shown[i]! - lnMean)
      const width = [Math.hypot(lnSd, 0.4), Math.hypot(lnSd * Math.sqrt(1 - keeps), 0.4)] as const
      const bare = (at: number, m: number, s: number) => 10 * (1 - cdf((at - m) / s)) < 1
      return shelfLn.reduce((sum, at) => {
        const truly = LOSSES.shelf * (1 - cdf((at - truth[i]!) / 0.4))
        const costs = (asBare: boolean) => (asBare ? truly : LOSSES.slab)
        return sum + firings * (costs(bare(at, lnMean, width[0])) - costs(bare(at, after, width[1])))
      }, 0)
    }
    const shown = asked.map(() => normal(0.4))
    const thick = unknown.toSorted(
      (a, b) => b.thickMm ** 2 * b.shelfLn.length - a.thickMm ** 2 * a.shelfLn.length,
    )
    saved.random += saves(unknown[Math.floor(roll() * unknown.length)]!.subject) / boards
    saved.thickest += saves(thick[0]!.subject) / boards
    const [best] = tileValues(asked)
    saved.worth += best ? saves(best.subject) / boards : 0
  }
  say(
    `tiles save ${saved.random.toFixed(2)} at random, ${saved.thickest.toFixed(2)} the thickest, ${saved.worth.toFixed(2)} by worth`,
  )
  expect(saved.worth).toBeGreaterThan(1.2 * saved.thickest)
  expect(saved.worth).toBeGreaterThan(1.5 * saved.random)
})

test.each([
  [1, 0.016, 0.3],
  [3, 0.0135, 0.15],
])(
  'density by dip of %d references: to %d g/mL, misses %d of what is far off, never cries wolf',
  (n, rmse, missed) => {
    const buckets = Array.from({ length: FULL ? 1500 : 500 }, (_, seed) => {
      const { truth, gainG, before } = bucketOf(4000 + seed, n)
      const told = dipDensity(gainG, before, 1.45)
      const alarm = dipAlarm(told, 1.45, 0.02)
      return { truth, told, alarm }
    })
    const off = Math.sqrt(mean(buckets.map(({ truth, told }) => (told.likely - truth) ** 2)))
    const held = part(buckets.map(({ truth, told }) => truth >= told.low && truth <= told.high))
    const wolf = part(buckets.map(({ truth, alarm }) => alarm !== null && Math.abs(truth - 1.45) <= 0.02))
    const far = buckets.filter(({ truth }) => Math.abs(truth - 1.45) > 0.05)
    const silent = part(far.map(({ alarm }) => alarm === null))
    say(
      `density, ${n}: rmse ${off.toFixed(4)}, holds ${held.toFixed(3)}, false ${wolf.toFixed(4)}, missed ${silent.toFixed(3)}`,
    )
    expect(off).toBeLessThanOrEqual(rmse)
    expect(held).toBeGreaterThanOrEqual(0.8)
    expect(wolf).toBeLessThanOrEqual(0.006)
    expect(silent).toBeLessThanOrEqual(missed)
  },
)

test.each([3, 5, 8, 12])('boards after %d sittings', (sittings) => {
  const rooms = Array.from({ length: FULL ? 400 : 150 }, (_, seed) => {
    const { flat, boards, seen } = roomOf(6000 + seed, sittings)
    const memory = roomMemory(seen)
    const of = memory.boards.map(({ board, ln, sd, speak }) => {
      const others = boards.filter((_, k) => `${k}` !== board)
      const truth = boards[Number(board)]! - mean(others)
      return {
        speak,
        right: Math.sign(ln) === Math.sign(truth),
        held: Math.abs(truth - ln) <= 1.2816 * sd,
        truth,
      }
    })
    const waits = memory.fastest === null ? 0 : boards[Number(memory.fastest)]! - Math.min(...boards)
    return { flat, of, waits, any: mean(boards) - Math.min(...boards) }
  })
  const all = rooms.flatMap(({ of }) => of)
  const real = rooms.filter(({ flat }) => !flat)
  const spoken = real.flatMap(({ of }) => of).filter(({ speak }) => speak)
  const big = real.flatMap(({ of }) => of).filter(({ truth }) => Math.abs(truth) > Math.log(1.2))
  const right = part(spoken.map((one) => one.right))
  const flatSpoken = part(rooms.filter(({ flat }) => flat).map(({ of }) => of.some(({ speak }) => speak)))
  const held = part(all.map((one) => one.held))
  say(
    `boards, ${sittings} sittings: holds ${held.toFixed(3)}, told ${part(big.map(({ speak }) => speak)).toFixed(3)} of the ` +
      `far ones, right ${right.toFixed(3)}, flat rooms spoken of ${flatSpoken.toFixed(3)}, late pots wait ` +
      `${(100 * mean(rooms.map(({ waits }) => waits))).toFixed(1)} % longer than on the best, ${(100 * mean(rooms.map(({ any }) => any))).toFixed(1)} % on any`,
  )
  expect(held).toBeGreaterThanOrEqual(0.75)
  if (spoken.length >= 20) expect(right).toBeGreaterThanOrEqual(0.85)
  expect(flatSpoken).toBeLessThanOrEqual(0.05)
})
