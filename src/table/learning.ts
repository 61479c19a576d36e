import { type Learned, type Lesson, type Look, learn, UNLEARNED } from '../engine/index.ts'
import { MIN_MS, standingWith } from './standing.ts'
import type { PotState, Table } from './state.ts'

/** Touches beyond the latest so many no longer move the estimate much, and a phone must answer at once. */
const LOOKS_USED = 24

let kept: { readonly key: string; readonly lesson: Lesson | Learned } | undefined

/**
 * What this table's touch checks teach about its waits, recomputed from the touches themselves: one that is taken
 * back is as if it had never been. One dip gives one look, from its last *not yet* to its first *dry*.
 */
export function lessonOf(table: Table): Learned {
  const touched = Object.values(table.pots).filter((pot) => pot.touches.length > 0)
  const key = JSON.stringify([
    touched.map((pot) => [pot.facts, pot.touches, pot.dips]),
    touched.length > 0 ? table.air : 0,
  ])
  if (kept?.key === key) return kept.lesson
  const looks = touched
    .flatMap((pot) => looksOf(table, pot))
    .sort((a, b) => latest(a) - latest(b))
    .slice(-LOOKS_USED)
  const lesson = looks.length === 0 ? UNLEARNED : learn(looks)
  kept = { key, lesson }
  return lesson
}

const latest = (look: Look): number => Math.max(look.dampMin ?? 0, look.dryMin ?? 0)

function looksOf(table: Table, pot: PotState): Look[] {
  return pot.dips.flatMap((dip, i): Look[] => {
    const touches = pot.touches.filter((touch) => touch.dipId === dip.dipId)
    const damp = touches.findLast((touch) => !touch.dry)
    const dry = touches.find((touch) => touch.dry)
    if (!damp && !dry) return []
    const { pot: wall, events, air0 } = standingWith(table, pot, pot.dips.slice(0, i + 1))
    const minutes = (touch: typeof dry) => (touch === undefined ? undefined : touch.at / MIN_MS)
    const dampMin = minutes(damp)
    const dryMin = minutes(dry)
    return [
      {
        kind: 'look',
        id: dip.dipId,
        of: table.settings.readyMeans,
        pot: wall,
        events,
        air0,
        ...(dampMin === undefined ? {} : { dampMin }),
        ...(dryMin === undefined ? {} : { dryMin }),
      },
    ]
  })
}
