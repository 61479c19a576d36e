import { lastDip } from '../model/plan.ts'
import { potterOf } from '../model/potters.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { HELD_RANK, type HeldAt, STEP_ROWS } from './step-rows.ts'
import type { AtStep } from './work.ts'

export interface HeldLine {
  readonly potId: string
  readonly at: HeldAt
}

/** The pot in the hands is the one dipped last, until its foot is sponged or the next dip implies it. */
export function potInHand(
  table: Table,
  steps: readonly AtStep[],
): { readonly pot: PotState; readonly dip: DipState } | undefined {
  let latest: { pot: PotState; dip: DipState } | undefined
  for (const { pot, step } of steps) {
    const dip = lastDip(pot)
    if (
      dip === undefined ||
      (dip.hands ?? 0) !== potterOf(table) ||
      (latest && dip.outAt <= latest.dip.outAt)
    )
      continue
    latest = step.is === 'drip' || step.is === 'foot' ? { pot, dip } : undefined
  }
  return latest
}

/** After the drip: sponge the foot, set down, take the next; hands need this slack in every dip. Assumption. */
export const FOOT_S = 30

/** From START to hands free again, ms. */
export const dipStepMs = (table: Table, dip: DipState): number =>
  dip.outAt - dip.tappedAt + (table.settings.dripS + FOOT_S) * 1000

/** Three lines of where the hands were when they were called away; the pots they left come first. */
export function whereYouWere(
  table: Table,
  steps: readonly AtStep[],
  left: readonly string[],
): readonly HeldLine[] {
  const rank = ({ potId, at }: HeldLine) => (left.includes(potId) ? -1 : HELD_RANK.indexOf(at))
  const hand = potInHand(table, steps)
  return steps
    .flatMap(({ pot, step }): HeldLine[] => {
      const potId = pot.facts.potId
      const { held } = STEP_ROWS[step.is]
      if (held === undefined) return []
      // A foot that the other hands have to sponge is their business: here that pot only dries.
      const theirs = (step.is === 'drip' || step.is === 'foot') && pot !== hand?.pot
      return [{ potId, at: theirs ? 'wait' : held }]
    })
    .sort((a, b) => rank(a) - rank(b))
    .slice(0, 3)
}
