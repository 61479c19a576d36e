import type { TableEvent } from '../../../shared/events.ts'
import type { Place, PotFacts } from '../../../shared/nouns.ts'
import { lidFor, withGallery } from '../advice/lid.ts'
import { ownAbsorption } from '../entry/bisque.ts'
import { outerOf } from '../entry/offer.ts'
import type { Action, Refusal } from '../model/action.ts'
import { checkName, LIMITS } from '../model/limits.ts'
import { arePieces, otherPiece } from '../model/pieces.ts'
import { freePlace, nextNumber, samePlace } from '../model/places.ts'
import { potsOnTable } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { firstWrong } from './check-entry.ts'
import type { Decision, HitStamp } from './decision.ts'

/** One pot or several alike, each with a number and a place that nobody has; a lid has its jar's number. */
export function setPot(table: Table, action: Extract<Action, { do: 'set-pot' }>, stamp: HitStamp): Decision {
  const { pot, lid } = action
  const like = table.pots[action.likePotId ?? '']
  const wrong = potRefusal(table, action)
  if (wrong) return { refusal: wrong }
  const all = potsOnTable(table).filter(({ facts }) => facts.potId !== pot.potId)
  const piece = all.find(({ facts }) => arePieces(facts, pot))?.facts
  const others = all.filter(({ facts }) => facts !== piece)
  const twin = others.find(({ facts }) => facts.number === pot.number)
  if (twin)
    return { refusal: { code: 'number-taken', field: 'number', facts: { number: twin.facts.number } } }
  const there = all.find(({ facts }) => pot.place && samePlace(facts.place, pot.place))
  if (there)
    return { refusal: { code: 'place-taken', field: 'place', facts: { number: there.facts.number } } }

  const events: TableEvent[] = []
  const set = (facts: PotFacts) => events.push({ kind: 'pot-set', pot: facts })
  const taken = all.map(({ facts }) => facts.place)
  const nextPlace = (wanted?: Place): Place => {
    const place = wanted ?? freePlace(taken)
    taken.push(place)
    return place
  }
  const used = [...others, ...justFired(table, stamp.at - table.skewMs)].map(({ facts }) => facts.number)
  let number = pot.number ?? piece?.number ?? nextNumber(used)
  if (piece && piece.number !== number) set({ ...piece, number })
  const kept = bisqued(table, pot)
  const shape = lid ? withGallery(pot.shape) : pot.shape
  for (let i = 0; i < (action.copies ?? 1); i++) {
    const potId = i === 0 && pot.potId ? pot.potId : `p.${stamp.hit}.${i}`
    set({ ...kept, shape, potId, number, place: nextPlace(i === 0 ? pot.place : undefined) })
    if (like) events.push(...ownOf(like, potId))
    if (lid) {
      const lidId = `l.${stamp.hit}.${i}`
      const likeLid = like && otherPiece(table, like.facts)
      set({
        ...likeJar(kept),
        potId: lidId,
        number,
        place: nextPlace(),
        shape: lidFor(pot.shape),
        stackId: lid.stackId,
        lidOf: potId,
      })
      if (likeLid) events.push(...ownOf(likeLid, lidId))
    }
    do number++
    while (used.includes(number))
  }
  return { events }
}

/** So long a fired pot is spoken of by its number, ms. Our choice, as long as it is asked for again. */
const SPOKEN_OF_MS = 60 * 86_400_000

/** Pots that came out of a fire of late: none gets their numbers unasked. */
const justFired = ({ pots }: Table, now: number): readonly PotState[] =>
  Object.values(pots).filter(({ fired }) => fired?.some(({ at }) => now - at < SPOKEN_OF_MS))

/** What is wrong with a pot, wherever it stands and whatever its number. */
export function potRefusal(table: Table, action: Extract<Action, { do: 'set-pot' }>): Refusal | undefined {
  const { pot, lid } = action
  return (
    measuresRefusal(action) ??
    (pot.whose === undefined ? undefined : checkName('whose', pot.whose)) ??
    [pot.stackId, lid?.stackId ?? pot.stackId]
      .filter((stackId) => !table.stacks[stackId])
      .map((): Refusal => ({ code: 'unknown-stack', field: 'stack' }))[0]
  )
}

/** What a pot has of its own beside its facts, for another one. */
const ownOf = ({ ownPlan, slab }: PotState, potId: string): readonly TableEvent[] => [
  ...(ownPlan ? [{ kind: 'plan-changed' as const, potId, coats: ownPlan }] : []),
  ...(slab ? [{ kind: 'slab-set' as const, potId, slab }] : []),
]

type PotAsked = Extract<Action, { do: 'set-pot' }>['pot']

/** The pot with its absorption after its own cone, where it has one. */
function bisqued(table: Table, pot: PotAsked): PotAsked {
  const { absorption: _asked, ...rest } = pot
  const absorption = ownAbsorption(table.board, table.pots[pot.potId ?? '']?.facts ?? {}, pot)
  return absorption === undefined ? rest : { ...rest, absorption }
}

/** What a lid shares with its jar besides the number: the bisque. */
function likeJar({ absorption, bisqueCone, bisqueWater }: PotAsked): Partial<PotFacts> {
  return {
    ...(absorption === undefined ? {} : { absorption }),
    ...(bisqueCone === undefined ? {} : { bisqueCone }),
    ...(bisqueWater === undefined ? {} : { bisqueWater }),
  }
}

function measuresRefusal({ pot, copies }: Extract<Action, { do: 'set-pot' }>): Refusal | undefined {
  const { shape } = pot
  return (
    firstWrong([
      ['number', pot.number],
      ['copies', copies],
      ['heightMm', shape.heightMm],
      ['rimMm', shape.rimMm],
      ['bellyMm', shape.bellyMm],
      ['footMm', shape.footMm],
      ['wallMm', shape.wallMm],
      ['footLineMm', shape.footLineMm],
      ['galleryMm', shape.galleryMm],
      ['absorption', pot.absorption],
    ]) ?? shapeRefusal(shape)
  )
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

/** Measures that contradict each other. */
function shapeRefusal(shape: PotFacts['shape']): Refusal | undefined {
  const { galleryMm = 0, heightMm } = shape
  if (galleryMm > heightMm / 3)
    return {
      code: 'out-of-range',
      field: 'galleryMm',
      facts: { value: galleryMm, least: LIMITS.galleryMm.least, most: heightMm / 3 },
    }
  // Under a lid's knob the wall has to leave a hollow.
  if (shape.form === 'lid' && shape.wallMm > heightMm / 3)
    return {
      code: 'out-of-range',
      field: 'wallMm',
      facts: { value: shape.wallMm, least: LIMITS.wallMm.least, most: heightMm / 3 },
    }
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
  return outerOf(shape) ? undefined : { code: 'no-such-pot', field: 'wallMm' }
}
