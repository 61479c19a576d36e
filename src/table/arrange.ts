import type { TableEvent } from '../../shared/events.ts'
import type { BucketFacts, CoatFacts, Place, PotFacts, Settings } from '../../shared/nouns.ts'
import type { Action, Refusal } from './action.ts'
import { arrangeFiring } from './arrange-firing.ts'
import { withCone } from './bisque.ts'
import { checked, firstWrong } from './check.ts'
import type { Decision, Stamp } from './decide.ts'
import { brimLitres } from './fill.ts'
import { checkName, LIMITS, outOfRange } from './limits.ts'
import { freePlace, nextNumber } from './places.ts'
import { potsOnTable } from './plan.ts'
import type { Table } from './state.ts'

/** Setting up with clean hands: every value is checked, and nothing is stored unless all of it is right. */
export function arrange(table: Table, action: Action, stamp: Stamp): Decision {
  switch (action.do) {
    case 'set-settings':
      return checked(settingsRefusal(action.settings), { kind: 'settings-set', settings: action.settings })
    case 'set-board': {
      const { board } = action
      return checked(
        firstWrong([
          ['wallMm', board.wallMm],
          ['footLineMm', board.footLineMm],
          ['absorption', board.absorption],
          ['sorptivityMmPerSqrtS', board.sorptivityMmPerSqrtS],
        ]),
        { kind: 'board-set', board: withCone(table.board, board) },
      )
    }
    case 'set-air':
      return checked(
        firstWrong([
          ['tempC', action.air.tempC],
          ['rh', action.air.rh],
          ['altitudeM', action.air.altitudeM],
          ['potsC', action.air.cold?.potC],
          ['clothMm', action.air.hung?.widthMm],
          ['clothMm', action.air.hung?.heightMm],
          ['clothG', action.air.hung?.grams],
          ['airFactor', action.air.cloth?.factor],
        ]),
        { kind: 'air-set', air: action.air },
      )
    case 'drop-lesson': {
      const { potId, lessonId, dropped } = action
      if (!table.pots[potId]) return { refusal: { code: 'unknown-pot' } }
      return { events: [{ kind: 'lesson-dropped', potId, lessonId, dropped }] }
    }
    case 'set-bucket': {
      const bucket: BucketFacts = { ...action.bucket, bucketId: action.bucket.bucketId ?? `b.${stamp.hit}` }
      const name = bucket.name.trim()
      return checked(bucketRefusal(table, bucket), { kind: 'bucket-set', bucket: { ...bucket, name } })
    }
    case 'remove-bucket': {
      if (!table.buckets[action.bucketId]) return { refusal: { code: 'unknown-bucket' } }
      const used = Object.values(table.stacks).find((s) =>
        s.coats.some((c) => c.bucketId === action.bucketId),
      )
      return checked(used && { code: 'in-use', field: 'bucket', facts: { by: used.name } }, {
        kind: 'bucket-gone',
        bucketId: action.bucketId,
      })
    }
    case 'read-density':
      if (!table.buckets[action.bucketId]) return { refusal: { code: 'unknown-bucket' } }
      return checked(outOfRange('gramsPerMl', action.gramsPerMl), {
        kind: 'density-read',
        bucketId: action.bucketId,
        gramsPerMl: action.gramsPerMl,
      })
    case 'refill':
    case 'read-level':
      return level(table, action, stamp)
    case 'sieved':
      if (!table.buckets[action.bucketId]) return { refusal: { code: 'unknown-bucket' } }
      return { events: [{ kind: 'sieved', bucketId: action.bucketId }] }
    case 'set-pair': {
      const { pair } = action
      const known = table.buckets[pair.overId] && table.buckets[pair.underId] && pair.overId !== pair.underId
      if (!known) return { refusal: { code: 'unknown-bucket' } }
      return checked(
        firstWrong([
          ['firings', pair.proved],
          ['firings', pair.wrong],
        ]),
        { kind: 'pair-set', pair },
      )
    }
    case 'set-stack': {
      const stack = { ...action.stack, stackId: action.stack.stackId ?? `s.${stamp.hit}` }
      const wrong = checkName('stack', stack.name) ?? coatsRefusal(table, stack.coats)
      return checked(wrong, { kind: 'stack-set', stack: { ...stack, name: stack.name.trim() } })
    }
    case 'remove-stack': {
      if (!table.stacks[action.stackId]) return { refusal: { code: 'unknown-stack' } }
      const used = potsOnTable(table).find((pot) => pot.facts.stackId === action.stackId)
      return checked(used && { code: 'in-use', field: 'stack', facts: { by: used.facts.number } }, {
        kind: 'stack-gone',
        stackId: action.stackId,
      })
    }
    case 'move':
      return move(table, action.potId, action.place)
    case 'set-pot':
      return setPot(table, action, stamp)
    case 'set-plan': {
      if (!table.pots[action.potId]) return { refusal: { code: 'unknown-pot' } }
      const { potId, coats } = action
      return checked(coatsRefusal(table, coats), { kind: 'plan-changed', potId, coats })
    }
    case 'read-tile':
    case 'remove-tile':
    case 'plan-firing':
    case 'log-firing':
      return arrangeFiring(table, action, stamp)
    case 'set-slab':
      if (!table.pots[action.potId]) return { refusal: { code: 'unknown-pot' } }
      return { events: [{ kind: 'slab-set', potId: action.potId, slab: action.slab }] }
    case 'clear-table':
      return { events: [{ kind: 'table-cleared' }] }
    default:
      return { refusal: { code: 'nothing-to-do' } }
  }
}

const settingsRefusal = (settings: Partial<Settings>): Refusal | undefined =>
  firstWrong([
    ['leadInS', settings.leadInS],
    ['lowerMmPerS', settings.lowerMmPerS],
    ['dripS', settings.dripS],
    ['staleMin', settings.staleMin],
    ['stackLimitMm', settings.stackLimitMm],
    ['collarVesselMm', settings.collarVesselMm],
    ['firstWaitMin', settings.firstWaitMin],
    ['laterWaitMin', settings.laterWaitMin],
    ['kilnWaitMin', settings.kilnWaitMin],
    ['loadMin', settings.loadMin],
  ])

function bucketRefusal(table: Table, bucket: BucketFacts): Refusal | undefined {
  const twin = Object.values(table.buckets).find(
    ({ facts }) => facts.bucketId !== bucket.bucketId && facts.letter === bucket.letter,
  )
  return (
    checkName('bucket', bucket.name) ??
    (/^\p{Lu}$/u.test(bucket.letter) ? undefined : { code: 'missing', field: 'letter' }) ??
    (twin && {
      code: 'letter-taken',
      field: 'letter',
      facts: { letter: bucket.letter, by: twin.facts.name },
    }) ??
    firstWrong([
      ['gramsPerMl', bucket.targetGramsPerMl],
      ['toleranceGramsPerMl', bucket.toleranceGramsPerMl],
      ['solidsGravity', bucket.solidsGravity],
      ['insideMm', bucket.insideMm],
      ['litres', bucket.litres],
      ['bucketHeightMm', bucket.heightMm],
      ['limitMm', bucket.limitMm],
      ['pinMm', bucket.pinMm],
    ])
  )
}

function coatsRefusal(table: Table, coats: readonly CoatFacts[]): Refusal | undefined {
  if (coats.length === 0) return { code: 'missing', field: 'coats' }
  for (const coat of coats) {
    if (!table.buckets[coat.bucketId]) return { code: 'unknown-bucket', field: 'coats' }
    const wrong = firstWrong([
      ['holdS', coat.holdS],
      ['edgeUpMm', 'edgeUpMm' in coat.cover ? coat.cover.edgeUpMm : undefined],
      ['depthMm', coat.cover.kind === 'collar' ? coat.cover.depthMm : undefined],
    ])
    if (wrong) return wrong
  }
  return undefined
}

function setPot(table: Table, action: Extract<Action, { do: 'set-pot' }>, stamp: Stamp): Decision {
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

function level(
  table: Table,
  action: Extract<Action, { do: 'refill' | 'read-level' }>,
  stamp: Stamp,
): Decision {
  const { bucketId, litres } = action
  const facts = table.buckets[bucketId]?.facts
  if (!facts) return { refusal: { code: 'unknown-bucket' } }
  const most = brimLitres(facts)
  const wrong =
    outOfRange('litres', litres) ??
    (litres > most
      ? {
          code: 'out-of-range' as const,
          field: 'litres',
          facts: { value: litres, least: LIMITS.litres.least, most },
        }
      : undefined)
  return checked(
    wrong,
    action.do === 'refill'
      ? { kind: 'filled', bucketId, fillId: `f.${stamp.hit}`, litres }
      : { kind: 'level-read', bucketId, litres },
  )
}

function move(table: Table, potId: string, place: Place): Decision {
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
