import { describe, expect, test } from 'vitest'
import { doseOf } from '../../../src/table/advice/dose.ts'
import { potToMend } from '../../../src/table/card/to-mend.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { lessonsUsed } from '../../../src/table/forecast/learning.ts'
import { coatsOn, nextCoat, planOf, strayed } from '../../../src/table/model/plan.ts'
import { variantsOf } from '../../../src/table/order/schedule-options.ts'
import { stepOf } from '../../../src/table/steps/steps.ts'
import { Play } from './play.ts'

const [GATEPOST, BRACKWATER, HEATHER] = ['demo.gatepost', 'demo.brackwater', 'demo.heather']
const evening = () => new Play().act({ do: 'lay-demo' })
const id = (number: number) => `demo.${number}`
const pot = (play: Play, number: number) => play.table.pots[id(number)]!
const buckets = (play: Play, number: number) => planOf(play.table, pot(play, number)).map((c) => c.bucketId)
const full = (bucketId: string, holdS = 3) => ({ bucketId, cover: { kind: 'full' }, holdS }) as const
const collar = (holdS: number) =>
  ({ bucketId: HEATHER!, cover: { kind: 'collar', depthMm: 20 }, holdS }) as const

/** Stirs, starts and counts to OUT. */
function dip(play: Play, number: number, bucketId?: string): string {
  if (bucketId) play.act({ do: 'pick', potId: id(number), bucketId })
  const into = bucketId ?? buckets(play, number)[nextCoat(pot(play, number))]!
  play.act({ do: 'stirred', bucketId: into })
  play.act({ do: 'start', potId: id(number), again: bucketId !== undefined, unstirred: false })
  const { dipId } = pot(play, number).dips.at(-1)!
  play.wait(20)
  return dipId
}

describe('the pot that is put right', () => {
  const mended = (play: Play) => potToMend(play.table, play.card)?.facts.number

  test('is the one that was picked, on the card of the bucket chosen for it as well', () => {
    const play = evening()
    dip(play, 31)
    play.act({ do: 'sponged', potId: id(31) }).act({ do: 'pick', potId: id(33), bucketId: BRACKWATER! })
    expect(play.card).toMatchObject({ kind: 'stir', bucketId: BRACKWATER })
    expect(mended(play)).toBe(33)
    play.act({ do: 'pick', potId: id(33), bucketId: GATEPOST! })
    expect(play.card).toMatchObject({ kind: 'armed', armed: { potId: id(33), hasIt: false } })
  })

  test('is none on a card that is about no pot', () => {
    const play = evening()
    const stir = {
      kind: 'stir',
      bucketId: GATEPOST!,
      change: true,
      stirredAt: undefined,
      waiting: 3,
    } as const
    expect(potToMend(play.table, stir)).toBeUndefined()
    expect(
      potToMend(play.table, { kind: 'lid', bucketId: GATEPOST!, more: 0, levelRead: true }),
    ).toBeUndefined()
    expect(potToMend(play.table, play.card)?.facts.potId).toBe('potId' in play.card ? play.card.potId : '')
  })
})

describe('a dip that is told afterwards', () => {
  test('implies the foot that was in the hands before it, as START does', () => {
    const play = evening()
    dip(play, 33)
    play.wait(120).act({ do: 'logged', potId: id(31), agoMin: 0 })
    expect(pot(play, 33).dips[0]!.spongedAt).toBe(play.nowMs)
    expect(pot(play, 33).dips[0]!.setDownAt).toBe(play.nowMs)
  })

  test('leaves the foot of a pot that came out after it', () => {
    const play = evening().wait(1200)
    dip(play, 33)
    play.act({ do: 'logged', potId: id(31), agoMin: 10 })
    expect(pot(play, 33).dips[0]!.spongedAt).toBeUndefined()
  })

  test('opens no bucket for hands that have moved on, though that bucket was taken from them since', () => {
    const play = evening()
      .act({ do: 'set-settings', settings: { potters: 2 } })
      .wait(600)
    play.act({ do: 'stirred', bucketId: HEATHER! })
    play.wait(60).append([{ kind: 'stirred', bucketId: HEATHER!, hands: 1 }], 'theirs')
    expect(play.table.openBucket).toBeUndefined()
    play.act({ do: 'logged', potId: id(33), agoMin: 5 })
    expect(play.table.openBucket).toBeUndefined()
  })
})

describe('a dip that was another pot', () => {
  test('is the coat that came next on the pot that got it', () => {
    const play = evening()
    dip(play, 34)
    const dipId = dip(play.wait(7200), 34)
    play.act({ do: 'was-other-pot', dipId, potId: id(33) })
    expect(pot(play, 33).dips).toMatchObject([
      { coat: 0, bucketId: HEATHER, plannedBucketId: GATEPOST, how: 'corrected' },
    ])
    expect(nextCoat(pot(play, 34))).toBe(1)
    expect(strayed(play.table, pot(play, 33))).toBeDefined()
    expect(stepOf(play.table, pot(play, 33), play.nowMs + 86_400_000)).toMatchObject({ why: 'strayed' })
  })

  test('leaves the told pot to be asked about what went on without it', () => {
    const play = evening()
    const first = dip(play, 33)
    dip(play.wait(7200), 33)
    play.act({ do: 'was-other-pot', dipId: first, potId: id(34) })
    expect(pot(play, 33).dips).toMatchObject([{ coat: 0, bucketId: BRACKWATER, plannedBucketId: GATEPOST }])
    expect(strayed(play.table, pot(play, 33))).toBeDefined()
    expect(pot(play, 34).dips).toMatchObject([{ coat: 0, bucketId: GATEPOST }])
  })

  test('takes its sponged foot along, and what told it afterwards implied', () => {
    const play = evening()
    const dipId = dip(play, 33)
    play.act({ do: 'sponged', potId: id(33) }).act({ do: 'was-other-pot', dipId, potId: id(34) })
    expect(pot(play, 34).dips[0]!.spongedAt).toBeDefined()
    play.act({ do: 'logged', potId: id(31), agoMin: 0 })
    const told = pot(play, 31).dips[0]!.dipId
    play.act({ do: 'was-other-pot', dipId: told, potId: id(32) })
    expect(pot(play, 31).waxedAt).toBeUndefined()
    expect(pot(play, 32)).toMatchObject({ waxedAt: play.nowMs - 600_000, wipedAt: play.nowMs - 600_000 })
    expect(pot(play, 32).dips[0]!.spongedAt).toBe(play.nowMs)
  })
})

test('a START that was another pot found NOT YET dry implies no touch there', () => {
  const play = evening()
  dip(play, 33)
  const step = () => stepOf(play.table, pot(play, 33), play.nowMs)
  for (let i = 0; i < 200 && step().is !== 'touch'; i++) play.wait(60)
  play.act({ do: 'touched', potIds: [id(33)], dry: false }).wait(120)
  const dipId = dip(play, 34)
  play.act({ do: 'was-other-pot', dipId, potId: id(33) })
  expect(pot(play, 33).dips).toHaveLength(2)
  expect(pot(play, 33).touches.filter(({ dry }) => dry)).toEqual([])
})

describe('what START implied', () => {
  const due = () => {
    const play = evening()
    dip(play, 34)
    return play.act({ do: 'sponged', potId: id(34) }).wait(7200)
  }

  test('goes with a count that is called off, and teaches nothing', () => {
    const play = due()
    play.act({ do: 'stirred', bucketId: HEATHER! })
    const before = play.table
    play.act({ do: 'start', potId: id(34), again: false, unstirred: false }).wait(1)
    expect(pot(play, 34).touches).toHaveLength(1)
    play.act({ do: 'cancel-count', dipId: pot(play, 34).dips[1]!.dipId })
    expect(play.table.pots).toEqual(before.pots)
    expect(lessonsUsed(play.table)).toEqual([])
  })

  test('a count that was called off is not taken up again in its middle, nor one that was stopped after its time', () => {
    const play = evening().act({ do: 'stirred', bucketId: GATEPOST! })
    const start = () => {
      play.act({ do: 'start', potId: id(33), again: false, unstirred: false })
      return pot(play, 33).dips.at(-1)!.dipId
    }
    const calledOff = start()
    play.wait(1).act({ do: 'cancel-count', dipId: calledOff })
    expect(play.wait(2).try({ do: 'take-back' })).toEqual({ code: 'nothing-to-take-back' })
    expect(pot(play, 33).dips).toEqual([])
    const stopped = start()
    const { underAt } = pot(play, 33).dips[0]!
    play.wait((underAt - play.nowMs) / 1000 + 0.9).act({ do: 'stop', dipId: stopped })
    expect(pot(play, 33).dips[0]).toMatchObject({ holdS: 0.9 })
    play.wait(1).act({ do: 'take-back' })
    expect(play.card.kind).toBe('count')
    play.act({ do: 'put-back' }).wait(4)
    expect(play.try({ do: 'take-back' })).toEqual({ code: 'nothing-to-take-back' })
    expect(pot(play, 33).dips[0]).toMatchObject({ holdS: 0.9 })
  })

  test('goes with a dip that was another pot', () => {
    const play = due()
    const dipId = dip(play, 34)
    expect(lessonsUsed(play.table)).toHaveLength(1)
    play.act({ do: 'was-other-pot', dipId, potId: id(31) })
    expect(pot(play, 34).touches).toEqual([])
    expect(lessonsUsed(play.table)).toEqual([])
  })
})

describe('what START on the right pot would have implied', () => {
  test.each([
    ['a pot that was due', false, 33],
    ['a pot that was due', true, 33],
    ['a bare pot', false, 38],
    ['a bare pot', true, 38],
  ])('is said once of the coat below, hit on %s (touched before: %s)', (_on, touched, hit) => {
    const play = evening()
    for (const number of [33, 34]) dip(play, number)
    play.act({ do: 'sponged', potId: id(34) }).wait(7200)
    if (touched) play.act({ do: 'touched', potIds: [id(34)], dry: true }).wait(60)
    const dipId = dip(play, hit)
    play.act({ do: 'was-other-pot', dipId, potId: id(34) })
    expect(pot(play, 34).dips).toHaveLength(2)
    expect(pot(play, 34).touches).toMatchObject([{ dry: true, dipId: pot(play, 34).dips[0]!.dipId }])
  })
})

describe('another stack, or a coat less', () => {
  test('on a pot whose inside was poured keeps every coat of the new stack', () => {
    const play = evening().act({ do: 'logged', potId: id(35), agoMin: 60 })
    expect(pot(play, 35).dips[0]!.cover.kind).toBe('inside')
    play.act({ do: 'restack', potId: id(35), stackId: 'demo.doorstep' })
    expect(planOf(play.table, pot(play, 35)).map(({ cover }) => cover.kind)).toEqual([
      'inside',
      'full',
      'collar',
    ])
  })

  test('two collars of one pot are left out together, in putting right and to be in time', () => {
    const play = evening()
    play.act({ do: 'set-plan', potId: id(33), coats: [full(GATEPOST!), collar(3), collar(2)] })
    const coats = [1, 2].map((coat) => ({ potId: id(33), coat }))
    const way = variantsOf(play.table, { plan: { dryAtS: null, slackS: null } } as never, play.nowMs).find(
      ({ cut }) => cut === 'skipCollar',
    )!
    expect(planOf(way.table, way.table.pots[id(33)]!)).toEqual([full(GATEPOST!)])
    expect(way.potIds.filter((potId) => potId === id(33))).toHaveLength(1)
    play.act({ do: 'leave-out', coats })
    expect(planOf(play.table, pot(play, 33))).toEqual([full(GATEPOST!)])
  })

  test('the inside is poured first on a pot with a plan of its own, and left out again', () => {
    const play = evening().act({ do: 'set-plan', potId: id(33), coats: [full(BRACKWATER!), collar(3)] })
    play.act({ do: 'pour-inside', potId: id(33) })
    const kinds = () => planOf(play.table, pot(play, 33)).map(({ cover }) => cover.kind)
    expect(kinds()).toEqual(['inside', 'full', 'collar'])
    expect(buckets(play, 33)[0]).toBe(BRACKWATER)
    expect(play.try({ do: 'pour-inside', potId: id(33) })?.code).toBe('not-its-step')
    play.act({ do: 'set-pot', pot: { ...pot(play, 33).facts, pourInsideFirst: false } })
    expect(kinds()).toEqual(['full', 'collar'])
  })
})

test('the eye counts: fewer coats than the record has, or more', () => {
  const play = evening()
  dip(play, 33)
  const one = pot(play, 33).dips
  dip(play.wait(7200), 33)
  play.act({ do: 'count-coats', potId: id(33), coats: null })
  play.act({ do: 'count-coats', potId: id(33), coats: 1 })
  expect(nextCoat(pot(play, 33))).toBe(1)
  expect(coatsOn(pot(play, 33)).map(({ coat }) => coat)).toEqual(one.map(({ coat }) => coat))
  play.act({ do: 'count-coats', potId: id(33), coats: 2 })
  expect(nextCoat(pot(play, 33))).toBe(2)
  play.act({ do: 'take-back' })
  dip(play.wait(7200), 33)
  expect(nextCoat(pot(play, 33))).toBe(2)
})

test('a correction keeps the density that the bucket had; another bucket brings the one it had then', () => {
  const play = evening().act({ do: 'read-density', bucketId: HEATHER!, gramsPerMl: 1.49 })
  play.act({ do: 'read-density', bucketId: GATEPOST!, gramsPerMl: 1.47 })
  const dipId = dip(play, 33)
  play.act({ do: 'read-density', bucketId: GATEPOST!, gramsPerMl: 1.4 })
  play.act({ do: 'read-density', bucketId: HEATHER!, gramsPerMl: 1.3 })
  play.act({ do: 'held-longer', dipId, byS: 2 })
  expect(pot(play, 33).dips[0]).toMatchObject({ gramsPerMl: 1.47, holdS: 6 })
  play.act({ do: 'was-other-bucket', dipId, bucketId: HEATHER! })
  expect(pot(play, 33).dips[0]).toMatchObject({ gramsPerMl: 1.49, bucketId: HEATHER, coat: 0 })
})

describe('a bucket that is to go', () => {
  test('stays while a coat of it is on, or a pot plans one', () => {
    const play = evening()
    dip(play, 33)
    for (const stackId of ['demo.tideline', 'demo.doorstep'])
      play.act({ do: 'set-stack', stack: { stackId, name: 'Plain', coats: [full(BRACKWATER!)] } })
    expect(play.try({ do: 'remove-bucket', bucketId: GATEPOST! })).toMatchObject({
      code: 'in-use',
      facts: { by: 33 },
    })
    play.act({ do: 'set-plan', potId: id(31), coats: [full(HEATHER!)] })
    expect(play.try({ do: 'remove-bucket', bucketId: HEATHER! })).toMatchObject({ facts: { by: 31 } })
  })

  test('does not go from under coats where another phone let it go, and comes back where one is dipped into', () => {
    const play = evening()
    dip(play, 33)
    const { ready } = forecastOf(play.table, pot(play, 33))!
    play.append([{ kind: 'bucket-gone', bucketId: GATEPOST! }], 'other')
    expect(forecastOf(play.table, pot(play, 33))!.ready).toEqual(ready)
    const spare = { ...play.table.buckets[GATEPOST!]!.facts, bucketId: 'spare', letter: 'S', name: 'Spare' }
    play.act({ do: 'set-bucket', bucket: spare }).act({ do: 'remove-bucket', bucketId: 'spare' })
    expect(play.table.buckets.spare).toBeUndefined()
    play.append([{ kind: 'plan-changed', potId: id(31), coats: [full('spare')] }], 'late')
    expect(play.table.buckets.spare!.facts).toEqual(spare)
  })
})

test('a coat of no seconds is refused, and one from before blanks no page', () => {
  const play = evening()
  expect(play.try({ do: 'set-plan', potId: id(33), coats: [full(GATEPOST!, 0)] })).toMatchObject({
    code: 'out-of-range',
    field: 'holdS',
  })
  const stack = { stackId: 'demo.tideline', name: 'Old', coats: [full(GATEPOST!, 0)] }
  play.append([{ kind: 'stack-set', stack }], 'old')
  const dose = doseOf(play.table, play.table.buckets[GATEPOST!]!.facts, play.nowMs)
  expect(dose.densityFor(0.5)).toBeGreaterThan(1)
})

describe('a dip told afterwards', () => {
  test('does not open its bucket over one that was used since', () => {
    const play = evening().act({ do: 'stirred', bucketId: BRACKWATER! }).wait(60)
    play.act({ do: 'logged', potId: id(33), agoMin: 10 })
    expect(play.table.openBucket).toBe(BRACKWATER)
    play.act({ do: 'logged', potId: id(31), agoMin: 0 })
    expect(play.table.openBucket).toBe(GATEPOST)
  })

  test('does not lie under the coat below it', () => {
    const play = evening()
    const below = dip(play, 34)
    play.wait(150)
    expect(play.try({ do: 'logged', potId: id(34), agoMin: 5 })).toMatchObject({
      code: 'out-of-range',
      field: 'agoMin',
      facts: { value: 5, least: 0, most: 2 },
    })
    play.act({ do: 'logged', potId: id(34), agoMin: 2 })
    const { dipId } = pot(play, 34).dips[1]!
    expect(dipId).not.toBe(below)
    expect(play.try({ do: 'was-earlier', dipId, byMin: 1 })?.code).toBe('out-of-range')
    expect(play.try({ do: 'was-earlier', dipId: below, byMin: 30 })).toBeUndefined()
  })
})

test('STOP while lowering ends the count', () => {
  const play = evening().act({ do: 'stirred', bucketId: GATEPOST! })
  play.act({ do: 'start', potId: id(33), again: false, unstirred: false })
  const { underAt, lowerS, dipId } = pot(play, 33).dips[0]!
  play.nowMs = underAt - lowerS * 500
  expect(play.card.kind).toBe('count')
  play.act({ do: 'stop', dipId })
  expect(play.card.kind).not.toBe('count')
  expect(pot(play, 33).dips).toMatchObject([{ holdS: 0, outAt: play.nowMs, underAt: play.nowMs }])
})

test('a cleared table keeps the wax pan that is on', () => {
  const play = evening().act({ do: 'wax-pan', is: 'on' })
  const { pan } = play.table
  expect(play.act({ do: 'clear-table' }).table.pan).toEqual(pan)
  expect(play.act({ do: 'lay-demo' }).table.pan).toEqual(pan)
})

test('with two at the phone each takes back what they did', () => {
  const play = evening().act({ do: 'set-settings', settings: { potters: 2 } })
  play.act({ do: 'stirred', bucketId: GATEPOST! })
  play.append([{ kind: 'stirred', bucketId: BRACKWATER!, hands: 1 }], 'second')
  play.act({ do: 'take-back' })
  expect(play.table.buckets[GATEPOST!]!.stirredAt).toBeUndefined()
  expect(play.table.buckets[BRACKWATER!]!.stirredAt).toBeDefined()
})

describe('a dip that was not stirred for', () => {
  const potId = 'demo.33'
  const dipped = (play: Play) => {
    play.act({ do: 'start', potId, again: false, unstirred: true })
    return pot(play, 33).dips[0]!
  }
  const armed = (): Play => {
    const play = new Play().act({ do: 'lay-demo' })
    play.act({ do: 'waxed', potId }).wait(300).act({ do: 'wiped', potId }).wait(61)
    return play.act({ do: 'pick', potId })
  }

  test('keeps for how long, whatever is stirred afterwards', () => {
    const play = armed()
    const { bucketId } = planOf(play.table, pot(play, 33))[0]!
    play.act({ do: 'stirred', bucketId }).wait(34 * 60)
    expect(dipped(play)).toMatchObject({ unstirred: true, stirredAgoMs: 34 * 60_000 })
    play.wait(60).act({ do: 'stirred', bucketId })
    expect(pot(play, 33).dips[0]!.stirredAgoMs).toBe(34 * 60_000)
  })

  test('of a bucket that never was, says none; of a fresh one, nothing at all', () => {
    const never = dipped(armed())
    expect(never.unstirred).toBe(true)
    expect(never.stirredAgoMs).toBeUndefined()
    const play = armed()
    play.act({ do: 'stirred', bucketId: planOf(play.table, pot(play, 33))[0]!.bucketId }).wait(60)
    const fresh = dipped(play)
    expect(fresh.unstirred).toBe(false)
    expect(fresh.stirredAgoMs).toBeUndefined()
  })
})
