import { describe, expect, it } from 'vitest'
import type { Stamped } from '../../../shared/events.ts'
import { fold, step } from '../../../src/table/fold/fold.ts'
import { reduce } from '../../../src/table/fold/reduce.ts'
import { EMPTY_TABLE } from '../../../src/table/model/defaults.ts'
import { season } from '../../fixtures/season.ts'

const EVENTS = season(600)

/** The latest hit that can be named, taken back or put back a second later. */
const about = (kind: 'taken-back' | 'put-back', hit: string, after: Stamped): Stamped => ({
  id: `${kind} ${hit}`,
  hit: `${kind} ${hit}`,
  at: after.at + 1000,
  event: { kind, hit },
})

describe('the fold of a history', () => {
  it('is what event after event gives, its line of hits among it', () => {
    expect(fold(EVENTS)).toEqual(EVENTS.reduce(reduce, EMPTY_TABLE))
    expect(step(fold(EVENTS.slice(0, 400)), EVENTS.slice(0, 400), EVENTS.slice(400))).toEqual(fold(EVENTS))
  })

  it('leaves out a hit that was taken back, remembers which until the next, and puts it back exactly', () => {
    const before = EVENTS.slice(0, 300)
    const last = before.at(-1)!
    const { hit } = fold(before).hits.at(-1)!
    const back = about('taken-back', hit, last)
    const without = fold([...before, back])
    expect(without.hits.map((line) => line.hit)).not.toContain(hit)
    expect(without.takenBack).toEqual({ hit, at: back.at })
    const again = fold([...before, back, about('put-back', hit, last)])
    expect(again).toEqual(fold(before))
    const [next] = EVENTS.slice(300).filter((each) => each.hit !== hit)
    expect(step(without, [...before, back], [next!])).toEqual(fold([...before, back, next!]))
    expect(fold([...before, back, next!]).takenBack).toBeUndefined()
  })
})
