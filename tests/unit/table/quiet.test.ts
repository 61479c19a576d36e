import { describe, expect, test } from 'vitest'
import { nextCoat } from '../../../src/engine/index.ts'
import { footRoom } from '../../../src/engine/melt/melt.ts'
import { afterSlip } from '../../../src/table/advice/after-slip.ts'
import { brimLitres, litresNow } from '../../../src/table/advice/fill.ts'
import { mostSeconds } from '../../../src/table/advice/most-seconds.ts'
import { gravity, isLoud, type Warning } from '../../../src/table/advice/warning.ts'
import { adviceFor } from '../../../src/table/advice/warnings.ts'
import { footOf } from '../../../src/table/fired/foot.ts'
import { filledAt, forecastOf } from '../../../src/table/forecast/forecast.ts'
import { dipNow, zonesWith } from '../../../src/table/forecast/hypothetical-dip.ts'
import { engineDip, historyOf } from '../../../src/table/forecast/pot-history.ts'
import { planOf } from '../../../src/table/model/plan.ts'
import { twelve } from '../../fixtures/twelve.ts'
import { Play } from './play.ts'

const demo = (): Play => new Play().act({ do: 'lay-demo' })
const potOf = (play: Play, potId: string) => play.table.pots[potId]!

/** The next coat of a pot is on and takes a touch. */
function coated(play: Play, potId: string): Play {
  play.act({ do: 'logged', potId, agoMin: 0 })
  play.nowMs = forecastOf(play.table, potOf(play, potId))!.touch.likely
  return play.act({ do: 'touched', potIds: [potId], dry: true })
}

const nextAdvice = (play: Play, potId: string) => {
  const pot = potOf(play, potId)
  return adviceFor(play.table, pot, planOf(play.table, pot)[pot.dips.length]!.bucketId, play.nowMs)
}

describe('one line a coat, once a pot', () => {
  test('over the whole demo evening every warning of the line is said once a pot, and most coats have none', () => {
    const play = demo()
    let [coats, lines] = [0, 0]
    for (const potId of Object.keys(play.table.pots)) {
      const said: string[] = []
      for (const _ of planOf(play.table, potOf(play, potId))) {
        const { line } = nextAdvice(play, potId)
        if (line) said.push(`${line.kind} ${'grade' in line ? line.grade : ''}`)
        coats++
        coated(play, potId)
      }
      expect(new Set(said).size, `${potId}: ${said.join()}`).toBe(said.length)
      lines += said.length
    }
    expect(coats).toBeGreaterThan(20)
    expect(lines / coats).toBeLessThan(0.25)
  })

  test('a rim collar that adds nothing to the run is not warned of, and the drawing keeps its mark', () => {
    const play = coated(coated(demo(), 'demo.31'), 'demo.31')
    const collar = nextAdvice(play, 'demo.31')
    expect(collar.warnings.map(({ kind }) => kind)).not.toContain('run')
    expect(collar.foot).toBe('near')
  })

  test('the coat that brings the run near says so', () => {
    const play = coated(demo(), 'demo.31')
    expect(nextAdvice(play, 'demo.31').line).toMatchObject({ kind: 'run', grade: 'near' })
  })

  test('a full wall is told in the list, not on the line: a range, and when it drinks again', () => {
    const play = demo().act({ do: 'logged', potId: 'demo.31', agoMin: 0 }).wait(60)
    const { line, warnings } = nextAdvice(play, 'demo.31')
    const thin = warnings.find((warning) => warning.kind === 'thin')!
    expect(line?.kind).not.toBe('thin')
    expect(thin.lowerMm).toBeLessThan(thin.upperMm)
    const forecast = forecastOf(play.table, potOf(play, 'demo.31'))!
    expect(thin.again?.at).toBe(forecast.thirsty.likely)
    expect(thin.again?.likelyMm).toBeGreaterThan(thin.upperMm)
    // Told as it is: waited for, the wall is no longer called full.
    play.nowMs = forecast.thirsty.likely + 60_000
    expect(nextAdvice(play, 'demo.31').warnings.map(({ kind }) => kind)).not.toContain('thin')
  })

  test.each(['demo.31', 'demo.36'])(
    '%s: whatever is likely thin is told before the dip, as full where the card tells its wall so',
    (potId) => {
      const play = demo().act({ do: 'logged', potId, agoMin: 0 })
      const pot = potOf(play, potId)
      const dip = dipNow(play.table, pot, planOf(play.table, pot)[1]!.bucketId, play.nowMs)!
      const standing = historyOf(play.table, pot)
      const told = { full: 0, likely: 0, none: 0 }
      for (let min = 0.5; min < 200; min *= 1.12) {
        // Advice is kept for 20 s.
        const at = Math.ceil((play.nowMs + min * 60_000) / 20_000) * 20_000
        const coat = nextCoat(standing, engineDip(play.table, pot, { ...dip, outAt: at })!)
        const thin = adviceFor(play.table, pot, dip.bucketId, at).warnings.find(({ kind }) => kind === 'thin')
        const is = thin?.kind === 'thin' ? thin.grade : 'none'
        told[is]++
        expect(is === 'none').toBe(coat.likelyMm >= 0.6 * coat.thirstyMm)
        if (is !== 'none') expect(is === 'full').toBe(filledAt(play.table, pot, at) >= 0.95)
        if (thin?.kind === 'thin' && thin.again) expect(thin.again.likelyMm).toBeGreaterThan(coat.likelyMm)
      }
      expect(told.none).toBeGreaterThan(0)
      expect(told.full + told.likely).toBeGreaterThan(0)
    },
  )

  test.each(['washed off', 'washed bisque'])(
    'a first coat on a wall that is %s is told thin, and the wall full',
    (how) => {
      const play = demo()
      if (how === 'washed bisque')
        play.act({ do: 'set-board', board: { ...play.table.board, bisqueWater: 'washed' } })
      const potId = Object.keys(play.table.pots).at(-1)!
      if (how === 'washed off')
        play.act({ do: 'logged', potId, agoMin: 0 }).wait(60).act({ do: 'wash-off', potId })
      const bucketId = planOf(play.table, potOf(play, potId))[0]!.bucketId
      play.wait(60).act({ do: 'stirred', bucketId }).act({ do: 'pick', potId })
      const card = play.card as Extract<typeof play.card, { kind: 'armed' }>
      expect(card.kind).toBe('armed')
      expect(card.armed.filled).toBeGreaterThan(0.95)
      const thin = card.armed.warnings.find((warning) => warning.kind === 'thin')
      expect(thin).toMatchObject({ grade: 'full' })
      expect(thin?.again?.at).toBe(forecastOf(play.table, potOf(play, potId))!.thirsty.likely)
    },
  )

  test('a second dip of the same glaze keeps what is said of thickness', () => {
    const play = coated(demo(), 'demo.38')
    play.act({ do: 'held-longer', dipId: potOf(play, 'demo.38').dips[0]!.dipId, byS: 14 })
    play.wait(24 * 3600)
    const { line } = adviceFor(play.table, potOf(play, 'demo.38'), 'demo.gatepost', play.nowMs)
    expect(line?.kind === 'build' || line?.kind === 'repair').toBe(true)
    expect(
      adviceFor(play.table, potOf(play, 'demo.38'), 'demo.gatepost', play.nowMs).warnings.some(
        (warning) => warning.kind === 'build' && warning.grade === 'over',
      ),
    ).toBe(true)
  })
})

describe('which of several warnings the card says', () => {
  const build = {
    kind: 'build',
    zone: 'body',
    face: 'outside',
    likelyMm: 1,
    upperMm: 1.2,
    limitMm: 1,
  } as const
  const run = { kind: 'run', roomMm: 6, runMm: 4, carried: false } as const
  const pair = { kind: 'pair', over: 'a', under: 'b', zone: 'body' } as const
  /** Worst first. */
  const SAID: readonly Warning[] = [
    { kind: 'repair', holdS: 2 },
    { ...run, grade: 'over' },
    { ...build, grade: 'over', remedyS: 2 },
    { kind: 'level', levelMm: 80, needsMm: 90 },
    { kind: 'fit', misfit: 'mouth' },
    { ...run, grade: 'near' },
    { ...pair, is: 'went-wrong' },
    { kind: 'dew', potC: 8, dewC: 12 },
    { kind: 'held', until: 9 },
    { kind: 'neck', fillS: 6 },
  ]
  /** Read behind the key alone. */
  const READ: readonly Warning[] = [
    { kind: 'thin', grade: 'full', likelyMm: 0.15, lowerMm: 0.1, upperMm: 0.2 },
    { kind: 'density', gramsPerMl: 1.4, targetGramsPerMl: 1.45 },
    { kind: 'thin', grade: 'likely', likelyMm: 0.2, lowerMm: 0.1, upperMm: 0.4 },
    { ...build, grade: 'close', remedyS: 3 },
    { ...run, grade: 'unknown' },
    { ...pair, is: 'untried' },
  ]

  test('what spoils the coat before what is good to know, which is read behind the key', () => {
    const order = [...SAID, ...READ].map(gravity)
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(SAID.filter((warning) => !isLoud(warning))).toEqual([])
    expect(READ.filter(isLoud)).toEqual([])
  })

  test('none that was said at an earlier coat of the pot, and no run onto a catch slab', () => {
    expect(SAID.filter((warning) => isLoud({ ...warning, before: true }))).toEqual([])
    expect(isLoud({ ...run, grade: 'near', slab: true })).toBe(false)
  })
})

describe('a need that is met is no warning', () => {
  test('thickness: over in the tenths it is told in, else not over', () => {
    const play = coated(demo(), 'demo.38')
    const pot = potOf(play, 'demo.38')
    const facts = play.table.buckets['demo.gatepost']!.facts
    const now = Math.max(...forecastOf(play.table, pot)!.pot.zones.map(({ likelyMm }) => likelyMm))
    const limitTo = (limitMm: number) => {
      play.act({ do: 'set-bucket', bucket: { ...facts, limitMm } })
      play.act({ do: 'wash-off', potId: 'demo.38' })
      play.wait(48 * 3600)
      const { warnings } = adviceFor(play.table, potOf(play, 'demo.38'), 'demo.gatepost', play.nowMs)
      return warnings.flatMap((warning) => (warning.kind === 'build' ? [warning.grade] : []))
    }
    expect(limitTo(Math.max(0.2, now - 0.2))).toEqual(['over'])
    expect(limitTo(now + 0.01)).not.toContain('over')
  })

  test('level: a pot that needs what stands there in whole millimetres is not warned of', () => {
    const play = demo()
    const bucket = play.table.buckets['demo.gatepost']!
    expect(litresNow(play.table, bucket)).toBeLessThan(brimLitres(bucket.facts))
    let low = 0.5
    let high = 12
    const short = (litres: number) => {
      play.act({ do: 'read-level', bucketId: 'demo.gatepost', litres })
      return nextAdvice(play, 'demo.31').warnings.find(({ kind }) => kind === 'level')
    }
    for (let i = 0; i < 20; i++) {
      const middle = (low + high) / 2
      if (short(middle)) low = middle
      else high = middle
    }
    const least = short(low)
    if (least?.kind !== 'level') throw new Error('a level a hair lower is short')
    expect(Math.round(least.needsMm)).toBeGreaterThan(Math.round(least.levelMm))
  })
})

describe('seconds that hands can do', () => {
  test('half seconds from one second up, never more than planned; none is none', () => {
    expect(mostSeconds(4, (s) => s <= 2.7)).toBe(2.5)
    expect(mostSeconds(4, (s) => s <= 1)).toBe(1)
    expect(mostSeconds(4, (s) => s <= 0.9)).toBe(0)
    expect(mostSeconds(1, () => true)).toBe(0)
  })
})

describe('after a coat was held longer', () => {
  test('what was logged, how thick it is, and the seconds of the next coat', () => {
    const play = demo().act({ do: 'logged', potId: 'demo.34', agoMin: 0 })
    const { dipId } = potOf(play, 'demo.34').dips[0]!
    const before = afterSlip(play.table, dipId, play.nowMs)!
    play.act({ do: 'held-longer', dipId, byS: 5 })
    const after = afterSlip(play.table, dipId, play.nowMs)!
    expect(after.holdS).toBe(9)
    expect(after.buildMm).toBeGreaterThan(before.buildMm)
    expect(after.pot.facts.number).toBe(34)
    expect(after.plannedS).toBe(3)
    expect(after.betterS === 0 || after.betterS! >= 1).toBe(true)
    expect(after.betterS!).toBeLessThan(3)
  })

  test.each([1, 2, 3, 5])('%d s too long and far from every limit: no glaze is left out', (byS) => {
    const play = new Play()
    for (const [i, events] of twelve().entries()) play.append(events, `laid-${i}`)
    play.nowMs += 3_600_000
    play.act({ do: 'logged', potId: 't.1', agoMin: 0 })
    const { dipId } = potOf(play, 't.1').dips[0]!
    play.act({ do: 'held-longer', dipId, byS })
    const { buildMm, plannedS, betterS } = afterSlip(play.table, dipId, play.nowMs)!
    expect(buildMm).toBeLessThan(0.6)
    expect(betterS ?? plannedS).toBeGreaterThanOrEqual(1)
  })

  test.each(['demo.31', 'demo.34'])(
    '%s: the seconds told are those of the card once it is ready',
    (potId) => {
      const play = demo().act({ do: 'logged', potId, agoMin: 0 })
      const { dipId } = potOf(play, potId).dips[0]!
      play.act({ do: 'held-longer', dipId, byS: 8 })
      const { plannedS, betterS } = afterSlip(play.table, dipId, play.nowMs)!
      play.nowMs = forecastOf(play.table, potOf(play, potId))!.ready.likely
      const pot = potOf(play, potId)
      const plan = planOf(play.table, pot)[1]!
      const repair = nextAdvice(play, potId).warnings.find((warning) => warning.kind === 'repair')
      expect(plannedS).toBe(plan.holdS)
      expect(betterS).toBe(repair && (repair.holdS ?? 0))
    },
  )

  test('the next coat of that pot says it before anything else', () => {
    const play = demo().act({ do: 'logged', potId: 'demo.34', agoMin: 0 })
    play.act({ do: 'held-longer', dipId: potOf(play, 'demo.34').dips[0]!.dipId, byS: 12 })
    play.nowMs = forecastOf(play.table, potOf(play, 'demo.34'))!.touch.likely
    play.act({ do: 'touched', potIds: ['demo.34'], dry: true })
    expect(nextAdvice(play, 'demo.34').line).toMatchObject({ kind: 'repair' })
  })
})

describe('whose run it is', () => {
  test('no rim collar of the demo evening is warned of a run to the foot, whatever lies below it', () => {
    let collars = 0
    for (const factor of [1, 3]) {
      const play = demo()
      for (const potId of Object.keys(play.table.pots)) {
        for (const coat of planOf(play.table, potOf(play, potId))) {
          if (coat.cover.kind === 'collar') {
            collars++
            expect(
              nextAdvice(play, potId).warnings.map(({ kind }) => kind),
              potId,
            ).not.toContain('run')
          }
          coated(play, potId)
          if (factor > 1 && coat.bucketId === 'demo.brackwater') {
            const { dipId, holdS } = potOf(play, potId).dips.at(-1)!
            play.act({ do: 'held-longer', dipId, byS: holdS * (factor - 1) })
          }
        }
      }
    }
    expect(collars).toBe(16)
  })

  test('a coat that adds more than a tenth of a millimetre to the run is warned of, one that adds less is not', () => {
    const seen = { less: 0, more: 0 }
    for (let edgeUpMm = 8; edgeUpMm < 76; edgeUpMm += 2) {
      const play = coated(coated(demo(), 'demo.31'), 'demo.31')
      const stack = play.table.stacks[potOf(play, 'demo.31').facts.stackId!]!
      const [first, second, last] = stack.coats
      const coats = [first!, second!, { ...last!, cover: { kind: 'downTo' as const, edgeUpMm } }]
      play.act({ do: 'set-stack', stack: { ...stack, coats } })
      const pot = potOf(play, 'demo.31')
      const { bucketId } = planOf(play.table, pot)[2]!
      const dip = dipNow(play.table, pot, bucketId, play.nowMs)!
      const { input, room } = footOf(play.table, pot, zonesWith(play.table, pot, dip)!)
      const bare = footRoom({ ...input, coats: input.coats.filter(({ dipId }) => dipId !== dip.dipId) })
      const addsMm = Math.max(room.marginRunMm - bare.marginRunMm, bare.roomMm - room.roomMm)
      if (room.verdict === 'clear' || addsMm === 0) continue
      const isTold = adviceFor(play.table, pot, bucketId, play.nowMs).warnings.some(
        ({ kind }) => kind === 'run',
      )
      expect(isTold, `down to ${edgeUpMm} mm adds ${addsMm} mm`).toBe(addsMm > 0.1)
      seen[isTold ? 'more' : 'less']++
    }
    expect(Math.min(seen.less, seen.more)).toBeGreaterThan(0)
  })
})
