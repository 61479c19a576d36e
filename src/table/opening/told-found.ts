import { againstRange } from '../../engine/fired/guess-score.ts'
import { FIRST_MM, type RunCurve, type RunSeen, runAt } from '../../engine/fired/run-curve.ts'
import { firedOf } from '../fired/fired-pot.ts'
import { LATEST_RESULTS } from '../fired/latest.ts'
import { isTold, judgedPots, onShelf, resultOf, seenOf } from '../fired/results.ts'
import type { PotState, Table } from '../model/state.ts'

/** How far the melt of a fired pot was told to come, and came, mm from where its glaze ended. */
export interface ToldFound {
  readonly pot: PotState
  /** What the app fixed before the lid went up; else what tiles alone tell. */
  readonly by: 'guess' | 'tile'
  /** The 10th, 50th and 90th percentile, and the bare wall down to the shelf. */
  readonly lowMm: number
  readonly likelyMm: number
  readonly highMm: number
  readonly roomMm: number
  readonly found: RunSeen
  /** It, or a drip of it, came onto the shelf. */
  readonly shelved: boolean
  /** Against the range told. A run that nobody measured is held to have been anything from a millimetre on. */
  readonly is: 'within' | 'farther' | 'less'
}

/** What tiles tell of a pot is doubted by so much either way. Our choice, as for a guess without results. */
const TILE_LN = Math.log(2)

type Told = Pick<ToldFound, 'lowMm' | 'likelyMm' | 'highMm' | 'roomMm'>

function toldBy(curve: RunCurve): Told {
  const at = (ln: number): number => {
    const mm = runAt(curve, ln)
    return mm < FIRST_MM ? 0 : mm
  }
  return { lowMm: at(-TILE_LN), likelyMm: at(0), highMm: at(TILE_LN), roomMm: curve.roomMm }
}

/** Every judged pot that is known and that nobody left out, of whose run something was said and told, the earliest judged first. */
export function toldFound(table: Table): readonly ToldFound[] {
  const judged = judgedPots(table).filter(isTold)
  const latest = new Set(judged.slice(-LATEST_RESULTS))
  return judged.flatMap((one): ToldFound[] => {
    const { pot, found } = one
    const app = firedOf(pot).appGuess
    // What tiles tell takes a phone long: of the latest alone, as in what they teach.
    const curve = app || !latest.has(one) ? undefined : resultOf(table, one).curve
    const told = app ?? (curve && toldBy(curve))
    const seen = seenOf(pot, found)
    if (!seen || !told) return []
    return [
      {
        pot,
        by: app ? 'guess' : 'tile',
        ...told,
        found: seen,
        shelved: onShelf(found.run),
        is: againstRange(told, seen),
      },
    ]
  })
}
