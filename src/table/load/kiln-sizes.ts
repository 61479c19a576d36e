import type { KilnFacts } from '../../../shared/load.ts'

/** A kiln to begin from, until its measures are typed. */
export type KilnOffer = 'small' | 'round' | 'wide' | 'box' | 'halves'
export const KILN_OFFERS: readonly KilnOffer[] = ['round', 'small', 'wide', 'box', 'halves']

type Offered = Omit<KilnFacts, 'kilnId'>

const POSTS = [50, 75, 100, 125, 150, 200].map((lengthMm) => ({ lengthMm, count: 6 }))
const SPY = (upMm: number) => [{ upMm, angleDeg: 0 }]

const round = (diameterMm: number, heightMm: number, acrossMm: number, count: number): Offered => ({
  chamber: { kind: 'round', diameterMm, heightMm },
  shelves: [{ id: 's1', kind: 'round', widthMm: acrossMm, depthMm: acrossMm, thickMm: 16, count }],
  posts: POSTS,
  couple: { upMm: Math.round(heightMm / 2), angleDeg: 180, reachMm: 30 },
  spyHoles: SPY(Math.round(heightMm * 0.35)),
})

/** Usual sizes, ours: of no maker. Common practice, no source. */
export const KILN_SIZES: Readonly<Record<KilnOffer, Offered>> = {
  small: round(360, 340, 310, 3),
  round: round(460, 560, 400, 5),
  wide: round(580, 690, 520, 6),
  box: {
    chamber: { kind: 'box', widthMm: 500, depthMm: 500, heightMm: 600, elements: ['left', 'right', 'back'] },
    shelves: [{ id: 's1', kind: 'box', widthMm: 420, depthMm: 420, thickMm: 18, count: 5 }],
    posts: POSTS,
    couple: { upMm: 300, angleDeg: 180, reachMm: 30 },
    spyHoles: SPY(200),
  },
  halves: {
    ...round(580, 690, 520, 6),
    shelves: [{ id: 's1', kind: 'halfRound', widthMm: 520, depthMm: 520, thickMm: 18, count: 10 }],
    posts: POSTS.map(({ lengthMm }) => ({ lengthMm, count: 9 })),
  },
}
