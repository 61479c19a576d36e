/** What a load may be made of. Each refusal is a RangeError that names field, value and range. */
import { inRange, oneOf } from '../check.ts'
import type { Chamber, Kiln, LoadInput, Shelf } from './contract.ts'

/** Lengths of chambers and shelves, of pots, mm. */
const MOST_MM = 5000
const MOST_ITEMS = 1000

function checkChamber(chamber: Chamber): void {
  oneOf('chamber.kind', chamber.kind, ['round', 'box'])
  inRange('chamber.heightMm', chamber.heightMm, 50, MOST_MM)
  if (chamber.kind === 'round') inRange('chamber.diameterMm', chamber.diameterMm, 50, MOST_MM)
  else {
    inRange('chamber.widthMm', chamber.widthMm, 50, MOST_MM)
    inRange('chamber.depthMm', chamber.depthMm, 50, MOST_MM)
  }
}

/** A shelf goes into the chamber: its corners of a round one, its sides of a box. */
function checkShelf(shelf: Shelf, at: string, chamber: Chamber): void {
  const kind = oneOf(`${at}.kind`, shelf.kind, ['round', 'halfRound', 'box', 'halfBox'])
  const round = kind === 'round' || kind === 'halfRound'
  const [width, depth] =
    chamber.kind === 'round' ? [chamber.diameterMm, chamber.diameterMm] : [chamber.widthMm, chamber.depthMm]
  inRange(`${at}.widthMm`, shelf.widthMm, 50, width)
  if (round) inRange(`${at}.depthMm`, shelf.depthMm, shelf.widthMm, shelf.widthMm)
  const most =
    chamber.kind === 'round' && !round
      ? Math.sqrt(Math.max(0, chamber.diameterMm ** 2 - shelf.widthMm ** 2))
      : depth
  inRange(`${at}.depthMm`, shelf.depthMm, 50, most)
  inRange(`${at}.thickMm`, shelf.thickMm, 1, 100)
  inRange(`${at}.count`, shelf.count, 0, 100)
}

/** Refuses a kiln whose measures cannot be. */
export function checkKiln(kiln: Kiln): void {
  const { chamber, shelves, posts, thermocouple, spyHoles, clearances } = kiln
  checkChamber(chamber)
  inRange('shelves.length', shelves.length, 1, 20)
  for (const [i, shelf] of shelves.entries()) checkShelf(shelf, `shelves.${i}`, chamber)
  inRange('posts.length', posts.length, 0, 50)
  for (const [i, post] of posts.entries()) {
    inRange(`posts.${i}.lengthMm`, post.lengthMm, 5, MOST_MM)
    inRange(`posts.${i}.count`, post.count, 3, 1000)
  }
  for (const [i, hole] of spyHoles.entries()) {
    inRange(`spyHoles.${i}.upMm`, hole.upMm, 0, chamber.heightMm)
    inRange(`spyHoles.${i}.angleDeg`, hole.angleDeg, 0, 360)
  }
  if (thermocouple) {
    inRange('thermocouple.upMm', thermocouple.upMm, 0, chamber.heightMm)
    inRange('thermocouple.angleDeg', thermocouple.angleDeg, 0, 360)
    inRange('thermocouple.reachMm', thermocouple.reachMm, 0, 500)
  }
  for (const [name, value] of Object.entries(clearances)) inRange(`clearances.${name}`, value, 0, 300)
}

const once = (field: string, ids: readonly string[]): void => {
  const seen = new Set<string>()
  for (const id of ids) {
    if (seen.has(id)) throw new RangeError(`${field} holds ${id} twice: must hold each once`)
    seen.add(id)
  }
}

/** Refuses a load that cannot be: measures out of range, a pot twice, a pin or a level of something that isn't there. */
export function checkLoad({ kiln, pots, specials, pinned, loaded }: LoadInput): void {
  checkKiln(kiln)
  inRange('pots.length', pots.length, 0, MOST_ITEMS)
  for (const pot of pots) {
    inRange(`${pot.id}.bellyRadiusMm`, pot.bellyRadiusMm, 1, 1000)
    inRange(`${pot.id}.footRadiusMm`, pot.footRadiusMm, 1, 1000)
    inRange(`${pot.id}.heightMm`, pot.heightMm, 1, MOST_MM)
    inRange(`${pot.id}.marginShelfMl`, pot.marginShelfMl ?? 0, 0, 1000)
    oneOf(`${pot.id}.risk`, pot.risk, ['clear', 'near', 'over', 'unknown'])
    if (pot.notYet !== undefined) oneOf(`${pot.id}.notYet`, pot.notYet, ['foot', 'wet'])
  }
  inRange('specials.length', specials.length, 0, 20)
  for (const one of specials) {
    oneOf(`${one.id}.kind`, one.kind, ['tile', 'cones'])
    inRange(`${one.id}.radiusMm`, one.radiusMm, 1, 500)
    inRange(`${one.id}.heightMm`, one.heightMm, 1, 1000)
  }
  const ids = [...pots, ...specials].map(({ id }) => id)
  once('pots and specials', ids)
  once('pinned and loaded', [
    ...pinned.map(({ id }) => id),
    ...loaded.flatMap(({ items }) => items.map(({ id }) => id)),
  ])
  for (const at of [...pinned, ...loaded]) {
    oneOf('column', at.column, ['whole', 'left', 'right'])
    inRange('storey', at.storey, 1, 100)
  }
  const known = new Set(ids)
  for (const spot of [...pinned, ...loaded.flatMap(({ items }) => items)]) {
    if (!known.has(spot.id))
      throw new RangeError(`pinned or loaded id is ${spot.id}: must be one of the load`)
    inRange(`${spot.id}.xMm`, spot.xMm, -MOST_MM, MOST_MM)
    inRange(`${spot.id}.yMm`, spot.yMm, -MOST_MM, MOST_MM)
  }
  const shelves = kiln.shelves.map(({ id }) => id)
  for (const level of loaded) {
    oneOf('shelfId', level.shelfId, shelves)
    inRange('number', level.number, 1, 200)
    inRange('postMm.length', level.postMm.length, 0, 3)
    for (const piece of level.postMm) inRange('postMm', piece, 5, MOST_MM)
  }
}
