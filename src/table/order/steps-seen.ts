import { waxSetMs } from '../forecast/forecast.ts'
import type { Potter } from '../model/potters.ts'
import type { DipState, HitLine, PotState, Table } from '../model/state.ts'
import { FOOT_S } from '../steps/pot-in-hand.ts'

/** What hands do that nobody counts. */
export type Chore = 'open' | 'restir' | 'wax' | 'wipe'

/** Bare work, which hands are taken at until their hits tell otherwise. Common practice, no source. */
export const BARE_S: Readonly<Record<Chore, number>> = { open: 180, restir: 60, wax: 60, wipe: 60 }
/** A pause so long parts two sittings, ms. Our choice. */
const APART_MS = 3 * 3_600_000

/** A step of these hands among the latest hits. */
export interface Step {
  readonly potter: Potter
  /** A dip right after a stir has no foot before it. */
  readonly is: 'dip' | 'first-dip' | Chore
  /** How much later than bare work it came; negative of quicker hands. */
  readonly laterS: number
  /** It was in an earlier sitting. */
  readonly earlier: boolean
}

/** From when a pair of hands is free, table time, ms, and what it has to do with the foot of its last pot from then on. */
interface Free {
  readonly at: number
  readonly footS: number
}

interface Stir {
  readonly is: 'open' | 'restir'
  readonly bucketId: string
  readonly at: number
  readonly from: Free | undefined
}

const PREPS: Partial<Record<HitLine['kind'], 'wax' | 'wipe'>> = { waxed: 'wax', wiped: 'wipe' }

/** What a chore came later than bare work; of hands quicker at it and at the foot before it, each has its part. */
function choreLaterS({ at, footS }: Free, until: number, bareS: number): number {
  const tookS = (until - at) / 1000
  const quickerS = (tookS * bareS) / (footS + bareS) - bareS
  return quickerS < 0 ? quickerS : tookS - footS - bareS
}

/** Whether a dip's pot was known to be ready by then: bare, or touched dry before. */
const isReadyBy = ({ touches }: PotState, dip: DipState, at: number): boolean =>
  dip.coat === 0 || touches.some((touch) => touch.dry && touch.at <= at)

const isSetBy = (table: Table, pot: PotState, at: number): boolean =>
  pot.waxedAt === undefined || pot.waxedAt + waxSetMs(table, pot) <= at

/** One pair of hands as its hits go by. */
class Pair {
  free: Free | undefined
  private stir: Stir | undefined
  private opened: string | undefined
  private before: HitLine['kind'] | undefined
  private readonly potter: Potter
  private readonly table: Table
  private readonly add: (step: Omit<Step, 'earlier'>) => void

  constructor(potter: Potter, table: Table, add: (step: Omit<Step, 'earlier'>) => void) {
    this.potter = potter
    this.table = table
    this.add = add
  }

  private saw(is: Step['is'], laterS: number, wasReady: boolean): void {
    // What came sooner than bare work tells of the hands, whatever they waited for.
    if (laterS < 0 || wasReady) this.add({ potter: this.potter, is, laterS })
  }

  dipped(pot: PotState, dip: DipState): void {
    const stir = this.stir?.bucketId === dip.bucketId ? this.stir : undefined
    if (dip.how === 'planned' && stir) this.saw('first-dip', (dip.tappedAt - stir.at) / 1000, true)
    else if (dip.how === 'planned' && this.free) {
      const { at, footS } = this.free
      this.saw('dip', (dip.tappedAt - at) / 1000 - footS, isReadyBy(pot, dip, at + footS * 1000))
    }
    if (stir?.from) {
      const laterS = choreLaterS(stir.from, stir.at, BARE_S[stir.is])
      this.saw(stir.is, laterS, isReadyBy(pot, dip, stir.at - laterS * 1000))
    }
    this.free = { at: dip.outAt + this.table.settings.dripS * 1000, footS: FOOT_S }
    this.stir = undefined
    this.before = 'dipped'
  }

  other({ kind, at, bucketId, potId }: HitLine): void {
    const prep = PREPS[kind]
    const { free } = this
    if (kind === 'sponged') return
    if (kind === 'stirred' && bucketId !== undefined) {
      this.stir = { is: this.opened === bucketId ? 'restir' : 'open', bucketId, at, from: free }
      this.opened = bucketId
    } else if (prep && free) {
      const pot = this.table.pots[potId ?? '']
      const wasReady =
        this.before === kind && (prep === 'wax' || (pot !== undefined && isSetBy(this.table, pot, free.at)))
      this.saw(prep, choreLaterS(free, at, BARE_S[prep]), wasReady)
    }
    this.before = kind
    this.free = { at: Math.max(at, free?.at ?? at), footS: 0 }
  }
}

const kept = new WeakMap<readonly HitLine[], readonly Step[]>()

/** The steps among the latest hits that could begin as soon as the hands were free, oldest first. */
export function stepsSeen(table: Table): readonly Step[] {
  const before = kept.get(table.hits)
  if (before) return before
  const dips = new Map(
    Object.values(table.pots).flatMap((pot) => pot.dips.map((dip) => [dip.hit, { pot, dip }] as const)),
  )
  let steps: Step[] = []
  const add = (step: Omit<Step, 'earlier'>) => steps.push({ ...step, earlier: false })
  const pairs = () => [new Pair(0, table, add), new Pair(1, table, add)] as const
  let [first, second] = pairs()
  let lastAt: number | undefined
  for (const line of table.hits) {
    if (line.at - (lastAt ?? line.at) > APART_MS) {
      steps = steps.map((step) => ({ ...step, earlier: true }))
      ;[first, second] = pairs()
    }
    lastAt = line.at
    const found = dips.get(line.hit)
    const hands = found && line.kind === 'dipped' ? (found.dip.hands ?? 0) : (line.hands ?? 0)
    if (hands === 2) continue
    const pair = hands === 0 ? first : second
    if (found && line.kind === 'dipped') pair.dipped(found.pot, found.dip)
    else pair.other(line)
  }
  kept.set(table.hits, steps)
  return steps
}
