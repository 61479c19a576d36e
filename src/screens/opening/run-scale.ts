import { rulerInches, type Units } from '../../words/format.ts'

/** The marks by which a run is tapped and told: one scale for ruler, keys and figures. */
export interface RunScale {
  /** From one mark to the next, mm along the wall. */
  readonly markMm: number
  /** So many marks lie between two that bear a number, the fewest first. */
  readonly every: readonly number[]
  /** What stands at a mark. */
  number(mark: number): string
}

const SIXTEENTH_MM = 25.4 / 16
const SCALES: Readonly<Record<Units, RunScale>> = {
  metric: { markMm: 1, every: [1, 2, 5, 10, 20, 50, 100], number: String },
  us: {
    markMm: SIXTEENTH_MM,
    every: [2, 4, 8, 16, 32, 64],
    number: (mark) => rulerInches(mark * SIXTEENTH_MM),
  },
}

/** Whole millimetres, or sixteenths of an inch. */
export const scaleOf = (units: Units): RunScale => SCALES[units]

/** The last mark on a wall with so much room; beyond it is the shelf. */
export const lastMark = ({ markMm }: RunScale, roomMm: number): number =>
  Math.floor(Math.floor(roomMm) / markMm + 1e-9)

/** How far down a mark is, mm as it is stored. */
export const atMark = ({ markMm }: RunScale, mark: number): number => Math.round(mark * markMm * 100) / 100

/** A mark more or less on a wall with so much room: beyond its last one is the shelf. */
export function stepped(
  scale: RunScale,
  at: number | 'shelf' | undefined,
  by: 1 | -1,
  roomMm: number,
): number | 'shelf' {
  const most = lastMark(scale, roomMm)
  if (at === 'shelf') return by > 0 ? 'shelf' : atMark(scale, most)
  const to = at === undefined ? Math.max(0, by) : Math.round(at / scale.markMm) + by
  return to > most ? 'shelf' : atMark(scale, Math.max(0, to))
}
