import { expect, test } from 'vitest'
import { routeOf } from '../../../src/wire/route.ts'

test.each([
  ['#/pot/p.1', { at: 'pot', potId: 'p.1' }],
  ['#/tile/a%2Fb/c', { at: 'tile', bucketId: 'a/b', underId: 'c' }],
  ['#/tile/a', { at: 'tile', bucketId: 'a' }],
  ['#/buckets', { at: 'buckets' }],
  ['#/shelf', { at: 'shelf' }],
  ['#/shelf/l.1', { at: 'shelf', loadId: 'l.1' }],
  ['#/judge/p.1', { at: 'judge', potId: 'p.1' }],
  ['#/judge', { at: 'opening' }],
  ['#/which/l.1', { at: 'which', loadId: 'l.1' }],
  ['#/firing', { at: 'firing' }],
  ['#/room', { at: 'room' }],
  ['#/room/air', { at: 'room', door: 'air' }],
  ['#/nowhere', undefined],
  ['', undefined],
])('the address %j names its screen', (hash, route) => {
  expect(routeOf(hash)).toEqual(route)
})

test.each([
  ['#/pot/%E0%A4%A', { at: 'pot' }],
  ['#/tile/a/%', { at: 'tile', bucketId: 'a' }],
  ['#/buckets/%zz', { at: 'buckets' }],
])('the broken address %j opens its screen all the same', (hash, route) => {
  expect(routeOf(hash)).toEqual(route)
})
