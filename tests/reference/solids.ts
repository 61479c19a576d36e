import type { OutlinePoint, Profile } from '../../src/engine/contract.ts'

/** Profiles of textbook solids, points as [radius, height] from the axis up. */
type Points = readonly (readonly [number, number])[]

const line = (points: Points): OutlinePoint[] => points.map(([rMm, zMm]) => ({ rMm, zMm }))

/** A solid of revolution with no hollow, or with the one given. */
export function turned(outer: Points, inner?: Points): Profile {
  const [rimR, height] = outer[outer.length - 1] ?? [0, 0]
  return {
    shape: { form: 'cylinder', heightMm: height, rimMm: 2 * rimR, wallMm: 1, footLineMm: 0 },
    outer: line(outer),
    inner: line(
      inner ?? [
        [0, height],
        [0, height],
      ],
    ),
  }
}

export const cylinder = (r: number, h: number): Profile =>
  turned([
    [0, 0],
    [r, 0],
    [r, h],
  ])

/** A straight cup: inside `wall` smaller, `floor` up. */
export const cup = (r: number, h: number, wall: number, floor: number): Profile =>
  turned(
    [
      [0, 0],
      [r, 0],
      [r, h],
    ],
    [
      [0, floor],
      [r - wall, floor],
      [r - wall, h],
    ],
  )

/** Hemisphere standing on its pole, cut in `pieces` of equal angle. */
export const hemisphere = (r: number, pieces: number): Profile =>
  turned(
    Array.from({ length: pieces + 1 }, (_, i) => {
      const angle = (Math.PI / 2) * (i / pieces)
      return [r * Math.sin(angle), r * (1 - Math.cos(angle))] as const
    }),
  )

/** The drawn mug of the worked mass balance: turned foot, belly, slightly drawn-in rim. */
export const mug: Profile = turned(
  [
    [0, 0],
    [36, 0],
    [36, 6],
    [40, 8],
    [48, 40],
    [46, 75],
    [43, 100],
  ],
  [
    [0, 12],
    [34, 14],
    [43, 42],
    [41, 75],
    [39, 100],
  ],
)
