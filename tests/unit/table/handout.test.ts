import { describe, expect, it } from 'vitest'
import { atTable, handoutOf } from '../../../src/table/entry/handout.ts'
import { Play } from './play.ts'

const teacher = new Play().act({ do: 'lay-demo' }).table
const handout = handoutOf(teacher, 'demo.tideline')
const names = (play: Play) => Object.values(play.table.buckets).map(({ facts }) => facts.name)

const take = (play: Play, of = handout) => play.act({ do: 'take-handout', handout: of })

describe('taking what was handed on', () => {
  it('an empty table has the stack and its buckets then, and it is nothing new the second time', () => {
    const play = take(new Play())
    expect(play.table.stacks['demo.tideline']).toEqual(teacher.stacks['demo.tideline'])
    expect(names(play).sort()).toEqual(handout.buckets.map(({ name }) => name).sort())
    expect(play.try({ do: 'take-handout', handout })).toEqual({ code: 'nothing-to-do' })
    expect(atTable(play.table, handout)).toMatchObject({ stacks: [{ is: 'here' }], buckets: [] })
  })

  it('a bucket of that name stays as it was weighed here, and the stack is dipped in it', () => {
    const play = new Play()
    const [first] = handout.buckets
    if (!first) throw new Error('no bucket')
    const { bucketId: _id, ...facts } = first
    play.act({ do: 'set-bucket', bucket: { ...facts, name: ` ${facts.name.toUpperCase()}`, litres: 7 } })
    const own = Object.values(play.table.buckets)[0]?.facts
    take(play)
    expect(play.table.buckets[own?.bucketId ?? '']?.facts).toEqual(own)
    expect(names(play)).toHaveLength(handout.buckets.length)
    const dipped = play.table.stacks['demo.tideline']?.coats.map(({ bucketId }) => bucketId)
    expect(dipped).toContain(own?.bucketId)
    expect(dipped).not.toContain(first.bucketId)
  })

  it('a letter or pattern that another bucket has gives way to a free one', () => {
    const play = new Play()
    for (const { bucketId: _id, ...facts } of handout.buckets)
      play.act({ do: 'set-bucket', bucket: { ...facts, name: `Other ${facts.name}` } })
    take(play)
    const all = Object.values(play.table.buckets).map(({ facts }) => facts)
    expect(all).toHaveLength(2 * handout.buckets.length)
    expect(new Set(all.map(({ letter }) => letter)).size).toBe(all.length)
    expect(new Set(all.map(({ pattern }) => pattern)).size).toBe(all.length)
  })

  it('a stack that stands here with other coats gets these, under its own name for this phone', () => {
    const play = take(new Play())
    const stack = play.table.stacks['demo.tideline']
    if (!stack) throw new Error('no stack')
    play.act({ do: 'remove-stack', stackId: stack.stackId })
    play.act({ do: 'set-stack', stack: { name: 'tideline', coats: stack.coats.slice(0, 1) } })
    const [own] = Object.values(play.table.stacks)
    expect(atTable(play.table, handout).stacks).toMatchObject([{ is: 'other' }])
    take(play)
    expect(Object.values(play.table.stacks)).toMatchObject([{ stackId: own?.stackId, coats: stack.coats }])
  })

  it('is all of it or nothing: a value out of range, a bucket that did not come along', () => {
    const play = new Play()
    const dense = handout.buckets.map((facts) => ({ ...facts, targetGramsPerMl: 9 }))
    expect(play.try({ do: 'take-handout', handout: { ...handout, buckets: dense } })).toMatchObject({
      code: 'out-of-range',
      field: 'gramsPerMl',
      facts: { value: 9 },
    })
    expect(play.try({ do: 'take-handout', handout: { ...handout, buckets: [] } })).toMatchObject({
      code: 'unknown-bucket',
    })
    expect(play.table.buckets).toEqual({})
  })
})
