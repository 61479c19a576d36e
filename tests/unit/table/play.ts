import type { Stamped, TableEvent } from '../../../shared/events.ts'
import { contentFault } from '../../../src/store/events-schema.ts'
import type { Card } from '../../../src/table/card/card.ts'
import { cardOf } from '../../../src/table/card/card-now.ts'
import { judge } from '../../../src/table/card/engine-judge.ts'
import { judged } from '../../../src/table/card/judged.ts'
import { decide } from '../../../src/table/decide/decide.ts'
import { decideHandout } from '../../../src/table/decide/decide-handout.ts'
import { decideLoad } from '../../../src/table/decide/decide-load.ts'
import { decideMeeting } from '../../../src/table/decide/decide-meeting.ts'
import { decideOpening } from '../../../src/table/decide/decide-opening.ts'
import { decideSetup } from '../../../src/table/decide/decide-setup.ts'
import type { More } from '../../../src/table/decide/decision.ts'
import { layDemo } from '../../../src/table/decide/demo.ts'
import { fold, step } from '../../../src/table/fold/fold.ts'
import type { Action, Refusal } from '../../../src/table/model/action.ts'
import type { Table } from '../../../src/table/model/state.ts'

/** 18:00 UTC of an ordinary day. */
export const START_MS = Date.UTC(2026, 2, 3, 18, 0, 0)

/** Setting up as the program decides on it. */
export const setting: More = (table, action, stamp) =>
  (action.do === 'lay-demo' ? layDemo(table, action, stamp) : decideLoad(table, action, stamp)) ??
  decideOpening(table, action) ??
  (action.do === 'take-handout' ? decideHandout(table, action, stamp) : undefined) ??
  (action.do === 'meet' || action.do === 'settle'
    ? decideMeeting(table, action)
    : decideSetup(table, action, stamp))

/** A table played by hand: a clock that is set, actions, and the card shown. */
export class Play {
  readonly events: Stamped[] = []
  table: Table = fold([])
  nowMs = START_MS
  hits = 0

  /** Lets time pass. */
  wait(seconds: number): this {
    this.nowMs += seconds * 1000
    return this
  }

  get card(): Card {
    const now = this.nowMs - this.table.skewMs
    return judged(this.table, cardOf(this.table, now), now, judge)
  }

  /** Does an action now; throws when it is refused. */
  act(action: Action): this {
    const refusal = this.try(action)
    if (refusal) throw new Error(`${action.do} refused: ${JSON.stringify(refusal)}`)
    return this
  }

  /** Does an action now, or says why not. */
  try(action: Action): Refusal | undefined {
    this.hits++
    const hit = `t-${this.hits}`
    const decision = decide(this.table, action, { at: this.nowMs, hit }, setting)
    if ('refusal' in decision) return decision.refusal
    // What one start writes the next one has to take: the schemas let all of it pass.
    for (const event of decision.events) {
      const fault = contentFault(JSON.parse(JSON.stringify(event)))
      if (fault !== undefined) throw new Error(`${fault}: ${JSON.stringify(event)}`)
    }
    this.append(decision.events, hit)
    return undefined
  }

  /** The bar of the card that shows. */
  bar(): this {
    const { big, kind } = this.card
    if (!big) throw new Error(`no bar on card ${kind}`)
    return this.act(big)
  }

  append(events: readonly TableEvent[], hit: string): void {
    const stamped = events.map((event, i): Stamped => ({ id: `${hit}.${i}`, hit, at: this.nowMs, event }))
    this.table = step(this.table, this.events, stamped)
    this.events.push(...stamped)
  }
}
