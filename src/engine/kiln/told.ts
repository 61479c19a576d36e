/** Levels as they are told: numbered, with places. */

import { boundOf } from './bound.ts'
import type { Kiln, LeftOut, LoadLevel, LoadPlan, PlacedItem, Shelf } from './contract.ts'
import { inOrder } from './places.ts'
import type { Built, Problem } from './problem.ts'
import { holeAt, raisedMm } from './riders.ts'
import { topMm, unseenIn } from './search.ts'
import { freeMm, type Stood, type Tray } from './tray.ts'

function placed(kiln: Kiln, tray: Tray, { item, disc, pinned }: Stood): PlacedItem {
  const hole = item.kind === 'cones' ? holeAt(kiln, tray, freeMm(kiln, tray)) : undefined
  const raised = hole ? raisedMm(hole, tray.upMm, item.heightMm) : 0
  return {
    id: item.id,
    kind: item.kind,
    xMm: disc.x,
    yMm: disc.y,
    bellyRadiusMm: item.bellyMm,
    footRadiusMm: item.footMm,
    heightMm: item.heightMm,
    onSlab: item.onSlab,
    pinned,
    place: null,
    ...(raised > 0 ? { raisedMm: raised } : {}),
  }
}

/** Items with their places: those told before keep theirs, the others take the next free numbers. */
function numbered(
  shelf: Shelf,
  level: number,
  items: readonly PlacedItem[],
  known: ReadonlyMap<string, string>,
): PlacedItem[] {
  const used = new Set(known.values())
  let next = 1
  const named = inOrder(
    shelf,
    items.filter(({ kind }) => kind !== 'cones'),
  ).map((item) => {
    const before = known.get(item.id)
    if (before !== undefined) return { ...item, place: before }
    while (used.has(`${level}.${next}`)) next++
    return { ...item, place: `${level}.${next++}` }
  })
  return [...named, ...items.filter(({ kind }) => kind === 'cones')]
}

/** Numbers of levels: those told before keep theirs, the others take the free ones from below. */
function numbersOf(trays: readonly Tray[], problem: Problem): number[] {
  const toldBefore = (tray: Tray) =>
    problem.loaded.find(({ column, storey }) => column === tray.column && storey === tray.storey)?.number
  const used = new Set(problem.loaded.map(({ number }) => number))
  let next = 1
  return trays.map((tray) => {
    const before = toldBefore(tray)
    if (before !== undefined) return before
    while (used.has(next)) next++
    return next++
  })
}

/** The plan of what was built. */
export function toldPlan(
  problem: Problem,
  built: Built,
  leftOut: readonly LeftOut[],
  passes: number,
): LoadPlan {
  const { kiln } = problem
  const from = (tray: Tray) => ['whole', 'left', 'right'].indexOf(tray.column)
  const trays = [...built.trays].sort((a, b) => a.upMm - b.upMm || from(a) - from(b))
  const numbers = numbersOf(trays, problem)
  const levels = trays.map((tray, i): LoadLevel => {
    const loaded = problem.loaded.find((one) => one.column === tray.column && one.storey === tray.storey)
    const known = new Map(
      (loaded?.items ?? []).flatMap(({ id, place }) => (place === undefined ? [] : [[id, place] as const])),
    )
    return {
      number: numbers[i]!,
      column: tray.column,
      storey: tray.storey,
      shelfId: tray.shelf.id,
      upMm: tray.upMm,
      freeMm: freeMm(kiln, tray),
      postMm: tray.postMm,
      posts: tray.posts.map(({ x, y }) => ({ xMm: x, yMm: y })),
      items: numbered(
        tray.shelf,
        numbers[i]!,
        tray.stood.map((one) => placed(kiln, tray, one)),
        known,
      ),
      loaded: loaded !== undefined,
    }
  })
  return {
    levels: levels.sort((a, b) => a.number - b.number),
    leftOut,
    unseen: unseenIn(problem, trays).map(({ id }) => id),
    heightMm: topMm(trays),
    bound: boundOf(problem),
    passes,
  }
}
