import type { PotFacts, StackFacts } from '../../shared/nouns.ts'
import { withPot } from './change.ts'
import { coatsOn, nextCoat, planOf } from './plan.ts'
import type { PotState, Table } from './state.ts'

const NEW_POT: Omit<PotState, 'facts'> = {
  dips: [],
  touches: [],
  weighings: [],
  uncounted: false,
  gone: false,
}

/**
 * The table with a stack as it is from now on. What was done stands: a pot already begun keeps the coats it has, what
 * is still to come follows the stack, and a pot that had all its coats has all of them still.
 */
export function stackSet(table: Table, stack: StackFacts): Table {
  const changed = { ...table, stacks: { ...table.stacks, [stack.stackId]: stack } }
  const begun = Object.values(table.pots).filter(
    (pot) => pot.facts.stackId === stack.stackId && !pot.ownPlan && coatsOn(pot).length > 0,
  )
  return begun.reduce((next, pot) => {
    const { begunPlan: _then, ...anew } = pot
    const [was, now, on] = [planOf(table, pot), planOf(changed, anew), nextCoat(pot)]
    const begunPlan = on < was.length ? [...was.slice(0, on), ...now.slice(on)] : was
    return withPot(next, { ...pot, begunPlan })
  }, changed)
}

/** The table with a pot as it is said to be. Another stack is a plan of its own again. */
export function potSet(table: Table, facts: PotFacts, at: number): Table {
  const before: PotState = table.pots[facts.potId] ?? { ...NEW_POT, facts }
  const { dampAt, ownPlan, begunPlan, ...rest } = before
  const sameStack = before.facts.stackId === facts.stackId
  const poured = (before.facts.pourInsideFirst ?? false) !== (facts.pourInsideFirst ?? false)
  const then = begunPlan ?? (poured && coatsOn(before).length > 0 ? planOf(table, before) : undefined)
  return withPot(table, {
    ...rest,
    facts,
    ...(facts.damp ? { dampAt: dampAt ?? at } : {}),
    ...(sameStack && ownPlan ? { ownPlan } : {}),
    ...(sameStack && then ? { begunPlan: then } : {}),
  })
}
