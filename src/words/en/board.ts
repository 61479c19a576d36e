import type { Name } from '../name.ts'
import { isOne } from './counts.ts'

/** English of the board. */
export const board = {
  title: 'Board',
  counts: (waiting: number, ready: number) =>
    `${waiting} ${isOne(waiting) ? 'waits' : 'wait'}, ${ready} ready`,
  pots: (n: number) => (isOne(n) ? '1 pot' : `${n} pots`),
  ends: (waiting: number, when: string) =>
    [...(waiting > 0 ? [isOne(waiting) ? '1 waits' : `${waiting} wait`] : []), `all dipped ${when}`].join(
      ', ',
    ),
  judge: (n: number) => (isOne(n) ? 'Judge 1 pot' : `Judge ${n} pots`),
  lookAgain: (n: number) => (isOne(n) ? 'Look again at 1 pot' : `Look again at ${n} pots`),
  toSettle: (n: number) => (isOne(n) ? '1 thing to settle' : `${n} things to settle`),
  fired: 'Fired pots',
  bench: 'Bench',
  add: 'Pots',
  buckets: 'Buckets',
  stacks: 'Stacks',
  room: 'Room',
  move: 'Move pots',
  air: (temp: string, rh: string, draught: string) => `${temp}, ${rh}, ${draught}`,
  wall: (wall: string) => `walls ${wall}`,
  state: {
    ready: 'READY',
    next: 'next',
    wax: 'wax',
    wipe: 'wipe',
    dip: 'dip',
    count: 'in it',
    foot: 'foot',
    check: 'check',
    stuck: 'ask',
    later: 'later',
    never: 'never',
  },
  /** In smaller letters on a tile. */
  kiln: {
    dry: 'kiln-dry',
    in: 'kiln-dry in',
  },
  /** An hour and its minutes, as short as it can be told. */
  hours: (h: number, min: number) => `${h} h ${String(min).padStart(2, '0')}`,
  tile: (number: Name, place: string, state: string) => `Pot ${number} at ${place}: ${state}`,
  empty: {
    title: 'An empty board',
    lines: 'Two things, in this order.',
    bucket: 'Name your buckets',
    bucketWhy: 'A name each. The rest can wait.',
    pots: 'Put pots on the board',
    potsWhy: 'Their coats, then an outline and a size each.',
  },
}

/** English of the places on the boards. */
export const places = {
  title: 'Places',
  take: 'Tap a pot, then its place; or drag it.',
  free: (place: string) => `${place}, free`,
  stands: (number: Name, place: string) => `${number} stands on ${place}.`,
  where: (number: Name) => `Where does ${number} stand?`,
}
