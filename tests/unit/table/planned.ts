import { foresee, type Plan } from '../../../src/planner/index.ts'
import type { Card } from '../../../src/table/card/card.ts'
import type { FollowedSchedule } from '../../../src/table/card/card-now.ts'
import { judge } from '../../../src/table/card/engine-judge.ts'
import { followed } from '../../../src/table/card/follow.ts'
import { judged } from '../../../src/table/card/judged.ts'
import { type Shown, shownTo } from '../../../src/table/card/shown.ts'
import { decide } from '../../../src/table/decide/decide.ts'
import type { Action, Refusal } from '../../../src/table/model/action.ts'
import { type Potter, viewOf } from '../../../src/table/model/potters.ts'
import { awayOf, type Owings, owingOf } from '../../../src/table/order/absent.ts'
import { type Jobs, jobsOf, scheduleFrom } from '../../../src/table/order/jobs.ts'
import { twelve } from '../../fixtures/twelve.ts'
import { replan } from '../../planner/plain.ts'
import { plan } from '../../planner/plan.ts'
import { Play, setting } from './play.ts'

/** A table played by hand with an order of work told after every hit, as the app does it. */
export class PlannedPlay extends Play {
  schedule: FollowedSchedule | undefined
  /** Orders of ops timed per question: enough for small tables, quick enough for a test. */
  work = 60_000
  potter: Potter = 0
  private owings: Owings = []
  private shown: readonly Shown[] = []
  /** Whether the line of the card is being said. */
  saying = (): boolean => false

  override get card(): Card {
    return this.cardOf(this.potter)
  }

  cardOf(potter: Potter): Card {
    const now = this.nowMs - this.table.skewMs
    const seen = viewOf(this.table, potter)
    this.shown = shownTo(this.shown, seen, now, this.schedule, this.saying())
    return judged(seen, this.shown[potter]!.card, now, judge)
  }

  /** What one potter is told of the other's card. */
  elsewhere(potter: Potter): Card | undefined {
    this.cardOf(potter)
    return this.shown[1 - potter]?.card
  }

  /** Asks for the order of work of the table as it is now. */
  ask(): this {
    const now = this.nowMs - this.table.skewMs
    this.owings = owingOf(this.table, this.schedule, now, this.owings)
    const jobs = jobsOf(this.table, now, awayOf(this.owings, now))
    const before = this.schedule?.plan
    const answer = before ? replan(jobs.input, before, this.work).plan : plan(jobs.input, this.work)
    this.schedule = followed(scheduleFrom(jobs, answer, now, foresee(jobs.input, answer, jobs.odds)))
    this.heard(jobs, answer)
    return this
  }

  /** For whoever looks on: what was asked and what was answered. */
  protected heard(_jobs: Jobs, _answer: Plan): void {}

  override try(action: Action): Refusal | undefined {
    this.hits++
    const hit = `t-${this.hits}`
    const decision = decide(this.table, action, { at: this.nowMs, hit, hands: this.potter }, setting)
    if ('refusal' in decision) return decision.refusal
    this.append(decision.events, hit)
    // The next card comes up by the order as it was told, before the answer is there.
    this.card
    this.ask()
    return undefined
  }
}

/** A table of the twelve pots' kind with Gatepost open and stirred. */
export function begun(...of: Parameters<typeof twelve>): PlannedPlay {
  const play = new PlannedPlay()
  for (const [i, events] of twelve(...of).entries()) play.append(events, `laid-${i}`)
  return play.wait(3600).ask().wait(180).bar()
}
