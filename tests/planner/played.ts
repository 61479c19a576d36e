import { expect } from 'vitest'
import type { Band, Foresight, Plan, PlanInput } from '../../src/planner/index.ts'
import type { Card } from '../../src/table/card/card.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { isStale } from '../../src/table/model/fresh.ts'
import { lastDip } from '../../src/table/model/plan.ts'
import type { Potter } from '../../src/table/model/potters.ts'
import type { DipState, PotState } from '../../src/table/model/state.ts'
import type { Jobs } from '../../src/table/order/jobs.ts'
import { nextTaskEnds } from '../../src/table/order/schedule.ts'
import { dipStepMs, FOOT_S } from '../../src/table/steps/pot-in-hand.ts'
import { stepsOf } from '../../src/table/steps/work.ts'
import { PlannedPlay } from '../unit/table/planned.ts'
import { laterMs, luck, type PaceProfile } from './hands.ts'
import { dryness, laidTable, oddMs, type Truth } from './nature.ts'
import { faults } from './verify.ts'

export interface Sitting {
  readonly seed: number
  readonly pace: PaceProfile
  readonly truth: Truth
  readonly potters: 1 | 2
  /** Without an order of work the bench follows its simple rule. */
  readonly planned: boolean
  /** Part of the dips at which another pot that could go is taken. */
  readonly slips: number
  /** The evening of the demo, from bisque. */
  readonly demo?: true
  /** The same hands had a sitting the day before, with other pots. */
  readonly again?: true
  /** Orders timed a question. */
  readonly work: number
}

/** What came of a sitting; spans in minutes from its start. */
export interface Outcome {
  readonly finishMin: number
  readonly kilnMin: number
  readonly openings: number
  readonly restirs: number
  /** Armed cards that became a stir while the hands were on their way. */
  readonly stale: number
  /** Other cards that changed under the hands though their pot and bucket could still go. */
  readonly jumped: number
  /** START cards of pots that were not dry in truth. */
  readonly wet: number
  readonly hits: number
  /** Dips, and hits that were neither a dip nor a stir: touches, feet. */
  readonly dips: number
  readonly others: number
  readonly questions: number
  readonly first: PlanInput | undefined
  readonly told: Plan | undefined
  /** What was foreseen at the start and once half the dips were done, in minutes from the start. */
  readonly foreseen: Promised | undefined
  readonly halfway: Promised | undefined
  /** And after ten hits. */
  readonly tenth: Promised | undefined
  readonly waitsS: ReadonlyMap<string, number>
}

export interface Promised {
  readonly finish: Band
  readonly dry: Band
}

const TOUCH_MS = 5000
const DECANT_MS = 60_000
const LONGEST_MS = 12 * 3_600_000
/** Late hands are asked about as the app does. */
const OVERDUE_MS = 60_000
const LOOK_MS = 5000
const FEW_HITS = 10
/** Seeds of the days before lie so far from those of the days. */
const DAY_BEFORE = 1_000_000

interface Doing {
  readonly key: string
  readonly card: Card
  readonly since: number
  readonly doneAt: number
}

/** A table whose every order of work is checked. */
class Bench extends PlannedPlay {
  asks = true
  questions = 0
  askedAt = 0
  first: PlanInput | undefined
  told: Plan | undefined
  begun: Foresight | undefined

  override ask(): this {
    return this.asks ? super.ask() : this
  }

  protected override heard({ input }: Jobs, answer: Plan): void {
    this.first ??= input
    this.told ??= answer
    this.begun ??= this.schedule?.foresight
    this.questions++
    this.askedAt = this.nowMs
    expect(faults(input, answer)).toEqual([])
  }
}

function keyOf(card: Card): string {
  if (card.kind === 'armed') return `armed ${card.armed.potId}`
  const bucketId = 'bucketId' in card ? card.bucketId : ''
  const potIds = 'potIds' in card ? card.potIds.join() : 'potId' in card ? card.potId : ''
  return `${card.kind} ${bucketId} ${potIds}`
}

/** Plays a sitting to the last dip by the cards alone. */
export function playSitting(sitting: Sitting): Outcome {
  const { seed, potters } = sitting
  const bench = new Bench()
  bench.work = sitting.work
  if (sitting.demo) bench.append(demoEvents(), 'demo')
  else {
    if (sitting.again) dayBefore(bench, sitting)
    for (const [i, events] of laidTable(seed, potters).entries()) bench.append(events, `laid-${i}`)
  }
  // The pan is warm when the sitting begins.
  if (sitting.demo) bench.append([{ kind: 'wax-pan', is: 'on' }], 'pan')
  bench.wait(sitting.demo ? 900 : 3600)
  return seat(bench, sitting)
}

/** The pots of the day before, other ones, glazed by the simple rule and gone by now. */
function dayBefore(bench: Bench, sitting: Sitting): void {
  const before = { ...sitting, seed: sitting.seed + DAY_BEFORE, planned: false }
  const events = laidTable(before.seed, before.potters)
  const others = JSON.parse(JSON.stringify(events).replaceAll('"t.', '"y.')) as typeof events
  for (const [i, each] of others.entries()) bench.append(each, `before-${i}`)
  bench.wait(3600)
  seat(bench, before)
  for (const potId of Object.keys(bench.table.pots))
    bench.append([{ kind: 'pot-gone', potId }], `gone-${potId}`)
  bench.wait(20 * 3600)
}

/** Hands that sit down to what is laid. */
function seat(bench: Bench, sitting: Sitting): Outcome {
  const { seed, pace, potters } = sitting
  bench.nowMs += oddMs(seed)
  const startMs = bench.nowMs
  bench.asks = sitting.planned
  bench.ask()
  const busyUntil = [0, 0]
  const doing: (Doing | undefined)[] = [undefined, undefined]
  const truth = new Map<string, ReturnType<typeof dryness>>()
  const waitsS = new Map<string, number>()
  const stirs: Record<string, number> = {}
  const tally = { openings: 0, restirs: 0, stale: 0, jumped: 0, wet: 0, dips: 0, others: 0 }
  const freeAt = (dip: DipState) =>
    dip.tappedAt + dipStepMs(bench.table, dip) + (pace.bareS.foot - FOOT_S) * 1000
  const coatsOf = (pot: PotState) => bench.table.stacks[pot.facts.stackId ?? '']?.coats.length ?? 0
  const pots = () => Object.values(bench.table.pots).filter(({ gone }) => !gone)
  const coatsLeft = () => pots().some((pot) => pot.dips.length < coatsOf(pot))
  const half = pots().reduce((sum, pot) => sum + coatsOf(pot), 0) / 2
  let halfway: Foresight | undefined
  let tenth: Foresight | undefined
  const hitsBefore = bench.hits
  const truthOf = (potId: string, dip: DipState) => {
    const key = `${potId} ${dip.coat}`
    const known = truth.get(key) ?? dryness(seed, sitting.truth, bench.table, potId, dip)
    truth.set(key, known)
    waitsS.set(key, Math.round((known.dryAt - dip.outAt) / 1000))
    return known
  }
  const isDry = (potId: string) => {
    const dip = lastDip(bench.table.pots[potId]!)
    return dip === undefined || truthOf(potId, dip).dryAt <= bench.nowMs
  }
  // A delay is had once, though the card changes meanwhile.
  const spentMs = new Map<string, number>()
  const step = (card: Card): string =>
    card.kind === 'stir'
      ? `stir ${card.bucketId} ${stirs[card.bucketId] ?? 0}`
      : card.kind === 'armed'
        ? `dip ${card.armed.potId} ${card.armed.coat}`
        : ''
  const laterYet = (card: Card) =>
    Math.max(0, laterMs(seed, pace, step(card)) - (spentMs.get(step(card)) ?? 0))
  const takesMs = (card: Card): number => {
    if (card.kind === 'stir') {
      const workMs =
        (card.change ? pace.bareS.open : pace.bareS.restir) * 1000 + (card.collars ? DECANT_MS : 0)
      return workMs + laterYet(card)
    }
    if (card.kind === 'armed') return laterYet(card)
    if (card.kind === 'wax' || card.kind === 'wipe') return pace.bareS.prep * 1000
    return card.kind === 'ready' ? TOUCH_MS * card.potIds.length : card.kind === 'drip' ? 0 : TOUCH_MS
  }
  const changedUnder = ({ card: was, since }: Doing) => {
    spentMs.set(step(was), (spentMs.get(step(was)) ?? 0) + bench.nowMs - since)
    if (was.kind !== 'armed' && was.kind !== 'stir') return
    const bucketId = was.kind === 'armed' ? was.armed.bucketId : was.bucketId
    if (was.kind === 'armed' && isStale(bench.table, bucketId, bench.nowMs)) tally.stale++
    else tally.jumped++
  }
  const dipped = (potter: Potter, card: Extract<Card, { kind: 'armed' }>) => {
    const { potId, bucketId, coat } = card.armed
    if (!isDry(potId)) {
      tally.wet++
      tally.others++
      bench.act({ do: 'touched', potIds: [potId], dry: false })
      return
    }
    const rivals = stepsOf(bench.table, bench.nowMs).filter(
      ({ pot, step }) => step.is === 'dip' && step.plan.bucketId === bucketId && pot.facts.potId !== potId,
    )
    const slip = luck(seed, `slip ${potId} ${coat}`) < sitting.slips ? rivals[0]?.pot.facts.potId : undefined
    const start = { do: 'start', again: false, unstirred: false } as const
    if (slip === undefined || bench.try({ ...start, potId: slip })) bench.act({ ...start, potId })
    const dip = lastDip(
      bench.table.pots[slip !== undefined && bench.table.pots[potId]!.dips.length === coat ? slip : potId]!,
    )!
    tally.dips++
    if (tally.dips >= half) halfway ??= bench.schedule?.foresight
    busyUntil[potter] = freeAt(dip)
  }
  const act = (potter: Potter, card: Card) => {
    if (card.kind === 'armed') dipped(potter, card)
    else if (card.kind === 'ready') {
      const dry = card.potIds.filter(isDry)
      const damp = card.potIds.filter((potId) => !dry.includes(potId))
      tally.others += Number(dry.length > 0) + Number(damp.length > 0)
      if (dry.length > 0) bench.act({ do: 'touched', potIds: dry, dry: true })
      if (damp.length > 0) bench.act({ do: 'touched', potIds: damp, dry: false })
    } else {
      if (card.kind === 'stir') {
        stirs[card.bucketId] = (stirs[card.bucketId] ?? 0) + 1
        tally[card.change ? 'openings' : 'restirs']++
      } else tally.others++
      bench.act(card.big!)
    }
  }
  /** A phone looks four times a second; where hands are at something, now and then is enough. */
  const pass = () => {
    const due = [0, 1]
      .slice(0, potters)
      .map((potter) => (bench.nowMs < busyUntil[potter]! ? busyUntil[potter]! : (doing[potter]?.doneAt ?? 0)))
    bench.nowMs += Math.min(LOOK_MS, Math.max(1000, Math.min(...due) - bench.nowMs))
  }
  for (; coatsLeft(); pass()) {
    if (bench.hits >= hitsBefore + FEW_HITS) tenth ??= bench.schedule?.foresight
    expect(bench.nowMs - startMs).toBeLessThan(LONGEST_MS)
    const due = bench.schedule && nextTaskEnds(bench.table, bench.schedule)
    if (due !== undefined && bench.nowMs > due && bench.nowMs - bench.askedAt > OVERDUE_MS) bench.ask()
    for (const potter of potters === 2 ? ([0, 1] as const) : ([0] as const)) {
      if (bench.nowMs < busyUntil[potter]!) continue
      bench.potter = potter
      const { card } = bench
      // Somebody counts: whatever these hands are at goes on.
      if (card.kind === 'count' || card.kind === 'out') continue
      const was = doing[potter]
      if (!card.big) {
        if (was) changedUnder(was)
        doing[potter] = undefined
        continue
      }
      const key = keyOf(card)
      if (was?.key !== key) {
        if (was) changedUnder(was)
        doing[potter] = { key, card, since: bench.nowMs, doneAt: bench.nowMs + takesMs(card) }
      }
      if (bench.nowMs < doing[potter]!.doneAt) continue
      doing[potter] = undefined
      act(potter, card)
    }
  }
  const last = pots().map((pot) => ({ potId: pot.facts.potId, dip: lastDip(pot)! }))
  const minutes = (ms: number) => (ms - startMs) / 60_000
  return {
    ...tally,
    finishMin: minutes(Math.max(...last.map(({ dip }) => freeAt(dip)))),
    kilnMin: minutes(Math.max(...last.map(({ potId, dip }) => truthOf(potId, dip).kilnAt))),
    hits: bench.hits - hitsBefore,
    questions: bench.questions,
    first: bench.first,
    told: bench.told,
    foreseen: promised(bench.begun, startMs),
    halfway: promised(halfway, startMs),
    tenth: promised(tenth, startMs),
    waitsS,
  }
}

const promised = (told: Foresight | undefined, startMs: number): Promised | undefined =>
  told && { finish: minutesOf(told.finishS, startMs), dry: minutesOf(told.dryAtS, startMs) }

const minutesOf = (band: Band, startMs: number): Band => {
  const min = (s: number) => (s * 1000 - startMs) / 60_000
  return { lower: min(band.lower), likely: min(band.likely), upper: min(band.upper) }
}
