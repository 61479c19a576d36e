import type { Pattern } from '../../../shared/nouns.ts'
import type { OutlinePoint } from '../../engine/contract.ts'
import { downToMm, downwards } from '../../engine/melt/path.ts'
import { drawingOf } from '../forecast/drawing.ts'
import { profileOf } from '../forecast/shape-inputs.ts'
import type { PotState, Table } from '../model/state.ts'

/** The outside of a pot as a melt goes down it, mm along the wall from the rim. */
export interface OutsideWall {
  /** From the rim down to the shelf. */
  readonly line: readonly OutlinePoint[]
  readonly lengthMm: number
  /** The lowest glazed edge; undefined where no glaze is known on the outside. */
  readonly edgeMm?: number
  /** Bare wall from that edge to the shelf; all of the wall where none is known. */
  readonly roomMm: number
  /** The foot line, below that edge where it is on the bare wall. */
  readonly footMm: number
  /** Of the coat that reaches down farthest. */
  readonly pattern?: Pattern
}

/** The outside of a pot, and how much of it is bare above the shelf. */
export function outsideWall(table: Table, pot: PotState): OutsideWall {
  const line = downwards(profileOf(pot.facts), 'outside')
  const lengthMm = downToMm(line, 0)
  const { bands, footLineMm } = drawingOf(table, pot, 'as-is')
  const footMm = downToMm(line, footLineMm)
  const lowest = bands.toReversed().sort((a, b) => a.fromMm - b.fromMm)[0]
  if (!lowest) return { line, lengthMm, roomMm: lengthMm, footMm }
  const edgeMm = downToMm(line, lowest.fromMm)
  const { pattern } = lowest
  return { line, lengthMm, edgeMm, roomMm: lengthMm - edgeMm, footMm: footMm - edgeMm, pattern }
}

/** The point of the outside so far down the wall from the rim; its ends beyond them. */
export function pointAt(line: readonly OutlinePoint[], downMm: number): OutlinePoint {
  let passed = 0
  for (const [i, to] of line.entries()) {
    const from = line[i - 1]
    if (!from) continue
    const span = Math.hypot(to.rMm - from.rMm, to.zMm - from.zMm)
    if (downMm <= passed + span && span > 0) {
      const share = Math.max(0, downMm - passed) / span
      return {
        rMm: from.rMm + share * (to.rMm - from.rMm),
        zMm: from.zMm + share * (to.zMm - from.zMm),
      }
    }
    passed += span
  }
  return line.at(-1) ?? { rMm: 0, zMm: 0 }
}
