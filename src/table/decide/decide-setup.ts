import type { BucketFacts, CoatFacts, Settings } from '../../../shared/nouns.ts'
import { thickestGramsPerMl } from '../../engine/slop/slop.ts'
import { brimLitres } from '../advice/fill.ts'
import { withCone } from '../entry/bisque.ts'
import type { Action, Refusal } from '../model/action.ts'
import { checkName, LIMITS, outOfRange } from '../model/limits.ts'
import type { Table } from '../model/state.ts'
import { roomChangedAt } from '../model/taken.ts'
import { needsBucket, needsStack } from '../model/uses.ts'
import { checked, firstWrong } from './check-entry.ts'
import { decideCorrections } from './decide-corrections.ts'
import { decideFiring } from './decide-firing.ts'
import { move, setPot } from './decide-pots.ts'
import type { Decision, HitStamp } from './decision.ts'

/**
 * Setting up with clean hands: every value is checked, and nothing is stored unless all of it is right. What is not
 * setting up is putting right.
 */
export function decideSetup(table: Table, action: Action, stamp: HitStamp): Decision {
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
    case 'change-room':
      return checked(
        action.changed || roomChangedAt(table) !== undefined ? undefined : { code: 'nothing-to-do' },
        { kind: 'room-changed', changed: action.changed },
      )
    case 'set-bucket': {
      const bucket: BucketFacts = { ...action.bucket, bucketId: action.bucket.bucketId ?? `b.${stamp.hit}` }
      const name = bucket.name.trim()
      return checked(bucketRefusal(table, bucket), { kind: 'bucket-set', bucket: { ...bucket, name } })
    }
    case 'remove-bucket': {
      if (!table.buckets[action.bucketId]) return { refusal: { code: 'unknown-bucket' } }
      const by = needsBucket(table, action.bucketId)
      return checked(by === undefined ? undefined : { code: 'in-use', field: 'bucket', facts: { by } }, {
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
      const by = needsStack(table, action.stackId)
      return checked(by === undefined ? undefined : { code: 'in-use', field: 'stack', facts: { by } }, {
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
      return decideFiring(table, action, stamp)
    case 'set-slab':
      if (!table.pots[action.potId]) return { refusal: { code: 'unknown-pot' } }
      return { events: [{ kind: 'slab-set', potId: action.potId, slab: action.slab }] }
    case 'clear-table':
      return { events: [{ kind: 'table-cleared', read: true }] }
    default:
      return decideCorrections(table, action, stamp)
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

/** Why a bucket can't stand at the table so. */
export function bucketRefusal(table: Table, bucket: BucketFacts): Refusal | undefined {
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
      ['clingsGramsPerCm2', bucket.clingsGramsPerCm2],
      ...(bucket.dippedTiles ?? []).flatMap(({ gainG, gramsPerMl }) => [
        ['tileG', gainG] as const,
        ['gramsPerMl', gramsPerMl] as const,
      ]),
    ]) ??
    thickness(bucket)
  )
}

/** A target that is no slop: with these solids it would stand like the coat itself. */
function thickness({ targetGramsPerMl, solidsGravity }: BucketFacts): Refusal | undefined {
  const most = Math.floor(thickestGramsPerMl(solidsGravity) * 100) / 100
  if (targetGramsPerMl <= most) return undefined
  const facts = { value: targetGramsPerMl, least: LIMITS.gramsPerMl.least, most }
  return { code: 'out-of-range', field: 'gramsPerMl', facts }
}

/** The planner's most for one pot; no wall takes half as many. */
const MOST_COATS = 20

/** Why coats can't be a pot's or a stack's. */
export function coatsRefusal(table: Table, coats: readonly CoatFacts[]): Refusal | undefined {
  if (coats.length === 0) return { code: 'missing', field: 'coats' }
  if (coats.length > MOST_COATS)
    return {
      code: 'out-of-range',
      field: 'coats',
      facts: { value: coats.length, least: 1, most: MOST_COATS },
    }
  for (const coat of coats) {
    if (!table.buckets[coat.bucketId]) return { code: 'unknown-bucket', field: 'coats' }
    const wrong = firstWrong([
      ['holdS', coat.holdS],
      ['laterWaitMin', coat.afterMin],
      ['edgeUpMm', 'edgeUpMm' in coat.cover ? coat.cover.edgeUpMm : undefined],
      ['depthMm', coat.cover.kind === 'collar' ? coat.cover.depthMm : undefined],
    ])
    if (wrong) return wrong
  }
  return undefined
}

function level(
  table: Table,
  action: Extract<Action, { do: 'refill' | 'read-level' }>,
  stamp: HitStamp,
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
