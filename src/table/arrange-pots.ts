import type { TableEvent } from '../../shared/events.ts'
import type { Place, PotFacts } from '../../shared/nouns.ts'
import type { Action, Refusal } from './action.ts'
import { firstWrong } from './check.ts'
import type { Decision, Stamp } from './decide.ts'
import { freePlace, nextNumber } from './places.ts'
import { potsOnTable } from './plan.ts'
import type { Table } from './state.ts'

/** One pot or several alike, each with a number and a place that nobody has. */
export function setPot(table: Table, action: Extract<Action, { do: 'set-pot' }>, stamp: Stamp): Decision {
  const { pot } = action
  const { shape } = pot
  const wrong =
    firstWrong([
      ['number', pot.number],
      ['copies', action.copies],
      ['heightMm', shape.heightMm],
      ['rimMm', shape.rimMm],
      ['bellyMm', shape.bellyMm],
      ['footMm', shape.footMm],
      ['wallMm', shape.wallMm],
      ['footLineMm', shape.footLineMm],
      ['absorption', pot.absorption],
    ]) ?? shapeRefusal(pot.shape)
  if (wrong) return { refusal: wrong }
  if (!table.stacks[pot.stackId]) return { refusal: { code: 'unknown-stack', field: 'stack' } }
  const others = potsOnTable(table).filter(({ facts }) => facts.potId !== pot.potId)
  const twin = others.find(({ facts }) => facts.number === pot.number)
  if (twin)
    return { refusal: { code: 'number-taken', field: 'number', facts: { number: twin.facts.number } } }
  const there = others.find(({ facts }) => pot.place && samePlace(facts.place, pot.place))
  if (there)
    return { refusal: { code: 'place-taken', field: 'place', facts: { number: there.facts.number } } }

  const events: TableEvent[] = []
  const taken = others.map(({ facts }) => facts.place)
  let number = pot.number ?? nextNumber(others.map(({ facts }) => facts.number))
  for (let i = 0; i < (action.copies ?? 1); i++) {
    const place = i === 0 && pot.place ? pot.place : freePlace(taken)
    taken.push(place)
    const facts: PotFacts = {
      ...pot,
      potId: i === 0 && pot.potId ? pot.potId : `p.${stamp.hit}.${i}`,
      number,
      place,
    }
    events.push({ kind: 'pot-set', pot: facts })
    do number++
    while (others.some((other) => other.facts.number === number))
  }
  return { events }
}

/** To another place; a pot that stands there changes places with it. */
export function move(table: Table, potId: string, place: Place): Decision {
  const pot = table.pots[potId]
  if (!pot || pot.gone) return { refusal: { code: 'unknown-pot' } }
  if (samePlace(pot.facts.place, place)) return { refusal: { code: 'nothing-to-do' } }
  const there = potsOnTable(table).find(({ facts }) => samePlace(facts.place, place))
  return {
    events: [
      ...(there ? [{ kind: 'pot-set' as const, pot: { ...there.facts, place: pot.facts.place } }] : []),
      { kind: 'pot-set', pot: { ...pot.facts, place } },
    ],
  }
}

const samePlace = (a: Place, b: Place): boolean => a.board === b.board && a.spot === b.spot

/** Measures that contradict each other. */
function shapeRefusal(shape: PotFacts['shape']): Refusal | undefined {
  const narrowest = Math.min(shape.rimMm, shape.footMm ?? shape.rimMm)
  if (shape.wallMm * 2 >= narrowest)
    return {
      code: 'out-of-range',
      field: 'wallMm',
      facts: { value: shape.wallMm, least: 1, most: narrowest / 2 - 1 },
    }
  if (shape.footLineMm > shape.heightMm / 2)
    return {
      code: 'out-of-range',
      field: 'footLineMm',
      facts: { value: shape.footLineMm, least: 0, most: shape.heightMm / 2 },
    }
  if (shape.bellyMm !== undefined && shape.bellyMm < shape.rimMm)
    return {
      code: 'out-of-range',
      field: 'bellyMm',
      facts: { value: shape.bellyMm, least: shape.rimMm, most: 600 },
    }
  return undefined
}
