/** Which colours are the pot's and which lie round it, learned from a picture inside and outside of a rough outline. */
import type { Cut } from './contract.ts'

const LEVELS = 8
const SIZE = LEVELS + 2
const BINS = SIZE * SIZE * SIZE
const STEP_R = SIZE * SIZE
const STEP_G = SIZE

/** No colour counts for more than this. */
const MOST = 1

/** How likely each colour is the pot's, -1 to 1 of the logarithm's odds. */
export class Colours {
  private readonly pot = new Float64Array(BINS)
  private readonly round = new Float64Array(BINS)
  private readonly odds = new Float64Array(BINS)

  constructor(private readonly cut: Cut) {}

  private bin(x: number, y: number): number {
    const { width, height, data } = this.cut
    const i = Math.max(0, Math.min(width - 1, Math.floor(x)))
    const j = Math.max(0, Math.min(height - 1, Math.floor(y)))
    const at = (j * width + i) * 4
    return ((data[at]! >> 5) + 1) * STEP_R + ((data[at + 1]! >> 5) + 1) * STEP_G + (data[at + 2]! >> 5) + 1
  }

  learn(x: number, y: number, isPot: boolean): void {
    const { width, height } = this.cut
    if (x < 0 || y < 0 || x >= width || y >= height) return
    const of = isPot ? this.pot : this.round
    const bin = this.bin(x, y)
    of[bin]! += 1
    for (const near of [STEP_R, STEP_G, 1]) {
      of[bin - near]! += 0.3
      of[bin + near]! += 0.3
    }
  }

  settle(): void {
    const sum = (of: Float64Array) => of.reduce((all, one) => all + one, 0)
    const [pot, round] = [sum(this.pot) || 1, sum(this.round) || 1]
    // Colours met seldom say little.
    const little = 0.002
    for (let i = 0; i < BINS; i++) {
      const odds = Math.log((this.pot[i]! / pot + little) / (this.round[i]! / round + little)) / 2
      this.odds[i] = Math.max(-MOST, Math.min(MOST, odds))
    }
  }

  at(x: number, y: number): number {
    return this.odds[this.bin(x, y)]!
  }
}
