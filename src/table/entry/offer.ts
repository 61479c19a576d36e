import type { BoardFacts, Form, Pattern, Place, PotFacts, ShapeFacts } from '../../../shared/nouns.ts'
import { DRAUGHTS, FORMS, PATTERNS } from '../../../shared/nouns.ts'
import type { OutlinePoint } from '../../engine/contract.ts'
import { conesOf } from '../../engine/melt/cones.ts'
import { SIZES, type Size, sizeSteps } from '../../engine/shape/forms.ts'
import { outlineOf } from '../../engine/shape/outline.ts'
import { NAME_MOST } from '../model/limits.ts'
import { freePlace, nextNumber } from '../model/places.ts'
import { potsOnTable } from '../model/plan.ts'
import type { Table } from '../model/state.ts'

export { DRAUGHTS, FORMS, NAME_MOST, PATTERNS, SIZES, type Size }

/** A low form's foot line is never above this part of its height: a tall pot's board default would cover it. */
const FOOT_LINE_PART = 0.3

/** Forms with a belly wider than rim and foot. */
const BELLIED: ReadonlySet<Form> = new Set(['bottle', 'cup', 'jar'])
/** Whether a form has a belly to measure. */
export const hasBelly = (form: Form): boolean => BELLIED.has(form)

/** Forms whose inside a short dip may not fill, or that are lined first as a rule: the pour is offered. */
export const mayPour = (form: Form): boolean => form !== 'plate' && form !== 'lid'

/** The usual measures of a form and size, with the board's own wall and foot line. */
export function stepShape(board: BoardFacts, form: Form, size: Size): ShapeFacts {
  const usual = sizeSteps(form)[size]
  const footLineMm = Math.min(board.footLineMm, Math.floor(usual.heightMm * FOOT_LINE_PART))
  return { ...usual, wallMm: board.wallMm, footLineMm }
}

/** The outside of a shape, or nothing where its measures contradict each other. */
export function outerOf(shape: ShapeFacts): readonly OutlinePoint[] | undefined {
  try {
    return outlineOf(shape).outer
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

/** The stack of the pot that was put on the table last, else the first there is. */
export function lastStack(table: Table): string | undefined {
  const used = Object.values(table.pots).findLast((pot) => !pot.gone && table.stacks[pot.facts.stackId])
  return used?.facts.stackId ?? Object.keys(table.stacks)[0]
}

/** The form of the pot that was put on the table last. */
export const lastForm = (table: Table): Form =>
  Object.values(table.pots).findLast((pot) => !pot.gone)?.facts.shape.form ?? 'beaker'

/** Number and place that the next pot gets: the first free number from `from` on, without it one past the highest. */
export function nextPot(table: Table, from?: number): { readonly number: number; readonly place: Place } {
  const facts = potsOnTable(table).map((pot) => pot.facts)
  const taken = facts.map(({ number }) => number)
  let number = from ?? nextNumber(taken)
  while (taken.includes(number)) number++
  return { number, place: freePlace(facts.map(({ place }) => place)) }
}

/** Seconds of a coat nobody has timed yet. Common practice, no source. */
export const USUAL_S = 3

/** A name for a new stack, from the form of the first pots that get it: counted on where there is one of that name. */
export function freeStackName(table: Table, form: string): string {
  const taken = new Set(Object.values(table.stacks).map(({ name }) => name))
  const name = `${form.charAt(0).toLocaleUpperCase()}${form.slice(1)}`
  let nth = 1
  while (taken.has(nth === 1 ? name : `${name} ${nth}`)) nth++
  return nth === 1 ? name : `${name} ${nth}`
}

const PLACE = /^([A-Z]{1,2}) ?([1-9]\d?)$/

/** A place as it is chalked on the board's edge, "B 3" or "b3". */
export function readPlace(text: string): Place | undefined {
  const found = PLACE.exec(text.trim().toUpperCase())
  return found?.[1] && found[2] ? { board: found[1], spot: Number(found[2]) } : undefined
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'

/** A capital letter for a bucket of this name that no other bucket has: from the name, else from the alphabet. */
export function freeLetter(table: Table, name: string, bucketId: string | undefined): string {
  const taken = new Set(
    Object.values(table.buckets).flatMap(({ facts }) => (facts.bucketId === bucketId ? [] : facts.letter)),
  )
  const own = [...name.toUpperCase()].filter((letter) => /^\p{Lu}$/u.test(letter))
  return [...own, ...ALPHABET].find((letter) => !taken.has(letter)) ?? ''
}

/** The first pattern that no bucket at the table has yet. */
export function freePattern(table: Table): Pattern {
  const taken = new Set(Object.values(table.buckets).map(({ facts }) => facts.pattern))
  return PATTERNS.find((pattern) => !taken.has(pattern)) ?? 'hatch'
}

/** Cones a bisque firing ends at, coolest first: whole cones of the American make up to a glaze firing's. */
export const BISQUE_CONES: readonly string[] = conesOf('american').filter((cone) =>
  /^(0\d+|[1-6])$/.test(cone),
)

/** Bisque so dense that coats come out thin. Our choice: cone 1 and hotter on an ordinary stoneware. */
export const drinksLittle = (absorption: number): boolean => absorption < 0.08

/** A pot to show a stack on where none uses it yet. */
export function samplePot(table: Table): PotFacts {
  const shape = stepShape(table.board, 'beaker', 'medium')
  return { potId: 'sample', number: 0, place: { board: 'A', spot: 1 }, shape, stackId: '' }
}
