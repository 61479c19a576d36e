import { FINAL_WORK, plan } from './plan.ts'
import type { Plan, PlanInput } from './types.ts'

/** Ways out when the kiln's hour can't be met (R14). */
export type Cut = 'fan' | 'otherBoard' | 'candling' | 'skipCollar' | 'fewerCoats' | 'nextFiring'

/** A way out: the table as it would be, with the waits, coats or deadline that go with it. */
export interface Variant {
  readonly cut: Cut
  readonly input: PlanInput
}

export interface CutGain {
  readonly cut: Cut
  readonly plan: Plan
  /** Slack gained, seconds; negative when the way out makes things worse. */
  readonly gainS: number
  readonly meetsDeadline: boolean
}

/** Latest start of all work as it stands: now plus slack, earlier than now when late. Null without a deadline. */
export const latestStart = (nowS: number, told: Plan): number | null =>
  told.slackS === null ? null : nowS + told.slackS

/**
 * Plans every way out and says what it gains over `told`, most first.
 * @throws RangeError naming field, value and allowed range, also for a variant without a deadline.
 */
export function cutGains(told: Plan, variants: readonly Variant[], work: number = FINAL_WORK): CutGain[] {
  if (told.slackS === null) throw new RangeError('told.slackS is null, allowed is a plan with a deadline')
  const before = told.slackS
  return variants
    .map(({ cut, input }) => {
      const found = plan(input, work)
      if (found.slackS === null)
        throw new RangeError(`variants[${cut}].input.deadline is null, allowed is a deadline`)
      return { cut, plan: found, gainS: found.slackS - before, meetsDeadline: found.slackS >= 0 }
    })
    .sort((a, b) => b.gainS - a.gainS)
}

/** The table without any collar dip; pots with no other coat left drop out. For the cut `skipCollar`. */
export function withoutCollars(input: PlanInput): PlanInput {
  const pots = input.pots
    .map((pot) => ({ ...pot, coats: pot.coats.filter((coat) => !coat.collar) }))
    .filter((pot) => pot.coats.length > 0)
  return { ...input, pots }
}

/** The table with at most `most` coats left on each pot. For the cut `fewerCoats`. */
export function withFewerCoats(input: PlanInput, most: number): PlanInput {
  if (!Number.isInteger(most) || most < 1)
    throw new RangeError(`most is ${most}, allowed are whole numbers from 1 on`)
  return { ...input, pots: input.pots.map((pot) => ({ ...pot, coats: pot.coats.slice(0, most) })) }
}
