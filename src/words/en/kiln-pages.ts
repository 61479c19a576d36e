import { isOne } from './counts.ts'

const pots = (n: number): string => (isOne(n) ? '1 pot' : `${n} pots`)

/** English of pages of the kiln that few hits lead to. */
export const kilnPages = {
  why: {
    tooTall: (most: string) => `too tall: ${most} is free`,
    tooWide: (most: string) => `too wide: ${most} is free`,
    noShelf: 'no shelf left',
    noPosts: 'no three posts reach over it',
    noRoom: 'no room left',
    noSlab: 'may run onto the shelf, and has no catch slab',
    foot: 'its foot is not checked',
    wet: 'not dry when the kiln goes on',
    later: 'kept for a later firing',
    fits: 'may go in now: propose anew',
  },
  would: {
    posts: (mm: string) => `three more posts of ${mm}`,
    shelf: 'one more shelf',
    aside: (number: string, n: number) => `lay ${number} aside: ${pots(n)} more go in`,
    nextFiring: (n: number): string =>
      n === 1 ? 'has room in the next firing' : 'has room in a later firing',
    slab: 'Put it on a slab',
    back: 'Take it in',
  },
  map: {
    place: 'Place',
    pot: 'Pot',
    size: 'High × wide, mm',
    after: 'After the fire',
    posts: (n: number, mm: string) => `Shelf ${n}: three posts of ${mm} on it`,
    top: (n: number) => `Shelf ${n}: the top`,
    of: (day: string, cone: string) => `Load of ${day}, cone ${cone}`,
    key: 's on a slab · T flow tile · C cones · hatched: posts',
    shrinks: 'After the fire pots are 3 to 7 % smaller.',
  },
  late: { on: 'KILN ON', off: 'KILN OFF', bung: 'BUNG OUT' },
  right: {
    firing: (cone: string) => `Change the firing, cone ${cone}`,
    tap: 'Tap what is not so:',
    cone: (cone: string, stand: string, clock: string) => `Cone ${cone} ${stand}, ${clock}`,
    glass: (fogged: boolean, clock: string) => (fogged ? `Glass fogged, ${clock}` : `Glass clear, ${clock}`),
    offset: (degrees: string, hotter: boolean) =>
      hotter
        ? `This kiln is ${degrees} hotter than it shows`
        : `This kiln is ${degrees} cooler than it shows`,
    drop: 'Drop that',
    deed: (what: string, clock: string) => `${what}, ${clock}`,
    shelf: (n: number) => `Shelf ${n} loaded`,
    deeds: {
      'lid-shut': 'Lid shut',
      'kiln-lit': 'Kiln on',
      'bung-pulled': 'Bung out',
      'kiln-off': 'Kiln off',
      'lid-opened': 'Lid open',
    },
  },
}
