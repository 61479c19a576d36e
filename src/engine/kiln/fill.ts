/** Fills one level: into the tightest spots first, then by pressing apart what stands there. Lengths in mm. */
import type { Item } from './items.ts'
import type { Region } from './region.ts'
import { drawnIn, type Loose, squeeze } from './squeeze.ts'
import { place, regionFor, type Tray } from './tray.ts'

/** Kicks for one more pot, and pots in a row that did not go in before a level counts as full. Tuned. */
const KICKS = 5
const FAILURES = 4
/** Nothing is pressed into a level fuller than this part of its face. Tuned. */
const FULL = 0.82

/** Face that discs of radius `r` may cover, mm2. */
function roomMm2(region: Region, r: number): number {
  const disc = Math.PI * (region.r + r) ** 2
  const half = Number.isFinite(region.minX) !== Number.isFinite(region.maxX) ? 2 : 1
  const box = (region.maxX - region.minX + 2 * r) * (region.maxY - region.minY + 2 * r)
  return Math.min(disc / half, box)
}

const areaMm2 = (r: number): number => Math.PI * r * r

/** Presses one more item in; false, and nothing moved, where it doesn't go. */
function press(tray: Tray, item: Item, halfGap: number, roll: () => number): boolean {
  const region = regionFor(tray, item)
  const r = item.reachMm + halfGap
  const full = tray.stood.reduce((sum, { disc }) => sum + areaMm2(disc.r), areaMm2(r))
  if (full > FULL * roomMm2(region, r)) return false
  const still = tray.stood.filter(({ fixed }) => fixed).map(({ disc }) => disc)
  const fixedFor = (one: Item) => {
    const probed = tray.probe && one.heightMm > tray.probe.overMm
    return [...tray.posts, ...still, ...(probed ? [tray.probe!.disc] : [])]
  }
  const disc = { ...drawnIn(region, roll), r }
  const moving = tray.stood.filter(({ fixed }) => !fixed)
  const loose: Loose[] = [...moving, { item, disc }].map((one) => ({
    disc: one.disc,
    region: regionFor(tray, one.item),
    fixed: fixedFor(one.item),
  }))
  if (!squeeze(loose, KICKS, roll)) return false
  tray.stood.push({ item, disc, pinned: false, fixed: false })
  return true
}

/** Fills a tray from `rest`, in its order; what is placed is taken out of it. Without `roll` nothing is pressed in. */
export function fill(
  tray: Tray,
  rest: Item[],
  halfGap: number,
  allowed: (item: Item) => boolean,
  roll: (() => number) | null,
): void {
  // What is no smaller than something that found no spot finds none either.
  const hopeless = (item: Item, failed: readonly Item[]) =>
    failed.some((one) => item.reachMm >= one.reachMm && item.footMm >= one.footMm)
  const intoSpots = () => {
    const failed: Item[] = []
    for (let i = 0; i < rest.length; i++) {
      const item = rest[i]!
      if (!allowed(item) || item.heightMm > tray.limitMm || hopeless(item, failed)) continue
      if (place(tray, item, halfGap)) rest.splice(i--, 1)
      else failed.push(item)
    }
  }
  intoSpots()
  if (!roll) return
  const failed: Item[] = []
  let pressedIn = false
  for (let i = 0; i < rest.length && failed.length < FAILURES; i++) {
    const item = rest[i]!
    if (!allowed(item) || item.heightMm > tray.limitMm || hopeless(item, failed)) continue
    if (press(tray, item, halfGap, roll)) {
      rest.splice(i--, 1)
      pressedIn = true
    } else failed.push(item)
  }
  if (pressedIn) intoSpots()
}
