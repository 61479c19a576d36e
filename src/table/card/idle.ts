import { isStale } from '../model/fresh.ts'
import type { Table } from '../model/state.ts'
import { dueAt, dueWhat, nextBucket } from '../steps/steps.ts'
import type { AtStep } from '../steps/work.ts'
import type { Card, Due } from './card.ts'
import { dipCard, returnCard } from './dip-card.ts'
import { endOfSitting } from './end.ts'

/** A bucket may be stirred this long before the pot it waits for can be dipped. */
const STIR_AHEAD_MS = 90_000

/** What comes due after the next, on a card with time to read. */
const DUES_SHOWN = 2

/** Nothing for the hands right now: return what was decanted, stir ahead, wait, or all is done. */
export function idleCard(table: Table, steps: readonly AtStep[], now: number): Card {
  const end = endOfSitting()
  const ending = end?.endSteps(table, now)
  const [ends] = ending ?? []
  if (end && ends) return end.endCard(table, ends, now)
  const due = dues(table, steps)
  const soon = due[0]
  if (soon && soon.what === 'wipe-dries' && soon.at - now < STIR_AHEAD_MS) {
    const pot = table.pots[soon.potId ?? '']
    const bucketId = pot && nextBucket(table, pot)
    if (pot && bucketId && isStale(table, bucketId, soon.at)) {
      const card = dipCard(table, steps, pot, bucketId, now)
      if (card?.kind === 'stir' || card?.kind === 'return') return { ...card, heldBar: undefined }
    }
  }
  if (soon) {
    if (table.collar && !collarStillWanted(table, steps)) return returnCard(table.collar)
    const { potId, what } = soon
    const early = what === 'touch' || what === 'damp-dries' || what === 'foot-check'
    const offer = early && potId ? ({ do: 'pick', potId } as const) : undefined
    return { kind: 'wait', next: soon, after: due.slice(1, 1 + DUES_SHOWN), offer }
  }
  if (table.collar) return returnCard(table.collar)
  // Where it is not over, the other hands have the rest.
  return end && ending ? end.closedCard(table) : { kind: 'wait', after: [] }
}

const collarStillWanted = (table: Table, steps: readonly AtStep[]): boolean =>
  steps.some(({ pot, step }) => {
    const wants = step.is === 'wait' || step.is === 'touch' || step.is === 'dip'
    return wants && table.collar !== undefined && nextBucket(table, pot) === table.collar.bucketId
  })

/** What will want the hands later, soonest first. */
function dues(table: Table, steps: readonly AtStep[]): readonly Due[] {
  return steps
    .flatMap(({ pot, step }): Due[] => {
      const what = dueWhat(table, pot, step)
      if (what === undefined) return []
      return [{ potId: pot.facts.potId, at: dueAt(step), what, ...('dry' in step ? { band: step.dry } : {}) }]
    })
    .sort((a, b) => a.at - b.at)
}
