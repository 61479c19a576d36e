import { NONE, type Order } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import type { Sheet } from './sheet.ts'

/** Positions from one kept state to the next. */
const STEP = 4

/** What later positions of a pass hang on. */
type Hangs = Omit<Sheet, 'setUpBucket' | 'setUpS' | 'setUpDecant'>

/**
 * What a pass over an order knew on its way, so that another order with the same beginning goes on from there. `state`: all that a
 * pass carries from one position to the next besides the sheet.
 */
export function makeMemory({ n, next, release }: Problem, sheet: Sheet, state: Int32Array) {
  const size = state.length
  const kept = new Int32Array((Math.ceil(n / STEP) + 1) * size)
  // Positions that something later reached back over: what lies before them hangs on what follows.
  const closed = new Uint8Array(n)
  const base = {
    order: { ops: new Int32Array(n).fill(-1), potter: new Uint8Array(n), wish: new Uint8Array(n) },
    kept: kept.slice(),
    closed: closed.slice(),
    sheet: {
      start: sheet.start.slice(),
      ready: sheet.ready.slice(),
      gap: sheet.gap.slice(),
      setUp: sheet.setUp.slice(),
      fixedKind: sheet.fixedKind.slice(),
      fixedBucket: sheet.fixedBucket.slice(),
      fixedEnd: sheet.fixedEnd.slice(),
      tries: sheet.tries.slice(),
    },
  }
  const copySheet = (from: Hangs, to: Hangs) => {
    to.start.set(from.start)
    to.ready.set(from.ready)
    to.gap.set(from.gap)
    to.setUp.set(from.setUp)
    to.fixedKind.set(from.fixedKind)
    to.fixedBucket.set(from.fixedBucket)
    to.fixedEnd.set(from.fixedEnd)
    to.tries.set(from.tries)
  }
  /** The state before position `i`; ops from there on are not timed yet. */
  const backTo = ({ ops }: Order, i: number) => {
    const slot = (i / STEP) * size
    state.set(kept.subarray(slot, slot + size))
    for (let k = i; k < n; k++) {
      const after = next[ops[k]!]!
      if (after >= 0) sheet.ready[after] = -1
    }
  }
  return {
    /** Begins a pass that knows nothing. */
    clear() {
      sheet.ready.set(release)
      sheet.fixedKind.fill(NONE)
      sheet.tries.fill(0)
      closed.fill(0)
    },
    /** Whether the state before position `i` is one of those that are kept. */
    keeps: (i: number): boolean => i % STEP === 0,
    keep(i: number) {
      kept.set(state, (i / STEP) * size)
    },
    /** What happens at position `i` hangs on, or changes, what lies from `j` on. */
    reach(j: number, i: number) {
      closed.fill(1, j + 1, i + 1)
    },
    backTo,
    /** Lays the sheet and the state for `order` to go on from the position that is returned; 0 where it has to begin anew. */
    goOn(order: Order): number {
      const { ops, potter, wish } = order
      let same = 0
      for (; same < n; same++) {
        const o = ops[same]!
        if (
          base.order.ops[same] !== o ||
          base.order.wish[o] !== wish[o] ||
          base.order.potter[o] !== potter[o]
        )
          break
      }
      if (same === n) same--
      same -= same % STEP
      while (same > 0 && base.closed[same] === 1) same -= STEP
      if (same <= 0) return 0
      copySheet(base.sheet, sheet)
      for (let k = same; k < n; k++) {
        sheet.fixedKind[ops[k]!] = NONE
        sheet.tries[ops[k]!] = 0
      }
      kept.set(base.kept.subarray(0, (same / STEP + 1) * size))
      closed.set(base.closed.subarray(0, same + 1))
      closed.fill(0, same + 1)
      return same
    },
    /** The order last timed becomes the one that others go on from. */
    take(order: Order) {
      base.order.ops.set(order.ops)
      base.order.potter.set(order.potter)
      base.order.wish.set(order.wish)
      base.kept.set(kept)
      base.closed.set(closed)
      copySheet(sheet, base.sheet)
    },
  }
}
