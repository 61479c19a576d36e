import type { Stamped } from '../../../shared/events.ts'
import type { BoardFacts, CoatFacts, PotFacts, StackFacts } from '../../../shared/nouns.ts'
import { withPot } from '../model/change.ts'
import { plainlyNamed } from '../model/plain-name.ts'
import { nextCoat, planOf, withPour } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'

const NEW_POT: Omit<PotState, 'facts'> = {
  dips: [],
  touches: [],
  weighings: [],
  uncounted: false,
  gone: false,
}

/**
 * The table with a stack as it is from now on; `isOwn`: by this phone's own word. What was done stands: a pot already begun keeps the coats it has, what
 * is still to come follows the stack, and a pot that had all its coats has all of them still.
 */
export function stackSet(table: Table, set: StackFacts, isOwn: boolean): Table {
  const stack = plainlyNamed(set)
  const changed = {
    ...table,
    stacks: { ...table.stacks, [stack.stackId]: stack },
    ...(isOwn ? { ownStacks: new Set([...(table.ownStacks ?? []), stack.stackId]) } : {}),
  }
  const begun = Object.values(table.pots).filter(
    (pot) => pot.facts.stackId === stack.stackId && !pot.ownPlan && nextCoat(pot) > 0,
  )
  return begun.reduce((next, pot) => {
    const { begunPlan: _then, ...anew } = pot
    const [was, now, on] = [planOf(table, pot), planOf(changed, anew), nextCoat(pot)]
    const begunPlan = on < was.length ? [...was.slice(0, on), ...now.slice(on)] : was
    return withPot(next, { ...pot, begunPlan })
  }, changed)
}

/** The table with how a pot stands to the plan that it came of, if any, by what was said of it at this phone. */
export function plannedBy({ event, from }: Stamped, table: Table): Table {
  const potId = event.kind === 'pot-set' ? event.pot.potId : 'potId' in event ? event.potId : ''
  const pot = table.pots[potId ?? '']
  const ofPlan = event.handed ?? event.anew
  if (from !== undefined || !pot) return table
  if (event.kind === 'pot-gone') return ofPlan ? withPot(table, { ...pot, planned: 'away' }) : table
  if (!ofPlan) return withPot(table, { ...pot, planned: 'changed' })
  return withPot(table, { ...pot, planned: 'so', gone: pot.gone && pot.planned !== 'away' })
}

/** The table with a pot as it is said to be; a new one is of the other phone `from`, if any. Another stack is a plan of its own again. */
export function potSet(table: Table, facts: PotFacts, at: number, from?: string): Table {
  const before: PotState = table.pots[facts.potId] ?? { ...NEW_POT, facts, ...(from ? { from } : {}) }
  const { damp: _damp, ownPlan, begunPlan, ...rest } = before
  const sameStack = before.facts.stackId === facts.stackId
  const poured = (before.facts.pourInsideFirst ?? false) !== (facts.pourInsideFirst ?? false)
  const then = begunPlan ?? (poured && nextCoat(before) > 0 ? planOf(table, before) : undefined)
  return withPot(table, {
    ...rest,
    facts,
    ...dampOf(table.board, { ...before, facts }, at),
    ...(sameStack && ownPlan ? { ownPlan: poured ? pouredPlan(before, facts, ownPlan) : ownPlan } : {}),
    ...(sameStack && then ? { begunPlan: then } : {}),
  })
}

/** A bare pot's own plan with the pouring of its inside put first, or left out again. */
function pouredPlan(
  pot: PotState,
  { pourInsideFirst }: PotFacts,
  plan: readonly CoatFacts[],
): readonly CoatFacts[] {
  if (nextCoat(pot) > 0) return plan
  const inside = plan[0]?.cover.kind === 'inside'
  if (pourInsideFirst) return inside ? plan : withPour(plan)
  return inside ? plan.slice(1) : plan
}

/** The board as it is from now on. A pot without coats comes as wet as the board's bisque does, unless it has its own. */
export function boardSet(table: Table, board: BoardFacts, at: number): Table {
  const changed = { ...table, board }
  if ((board.bisqueWater ?? 'dry') === (table.board.bisqueWater ?? 'dry')) return changed
  return Object.values(table.pots)
    .filter((pot) => pot.facts.bisqueWater === undefined && pot.dips.length === 0)
    .reduce((next, { damp: _damp, ...pot }) => withPot(next, { ...pot, ...dampOf(board, pot, at) }), changed)
}

/** How wet a pot came, since when: the moment it was first said stands while it is said so. */
function dampOf(board: BoardFacts, { facts, damp }: PotState, at: number): Pick<PotState, 'damp'> {
  const water = facts.bisqueWater ?? board.bisqueWater ?? 'dry'
  if (water === 'dry') return {}
  return { damp: damp?.water === water ? damp : { at, water } }
}
