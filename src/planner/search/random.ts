/** Seeded numbers: xorshift32 (G. Marsaglia, "Xorshift RNGs", J. Statistical Software 8 (14), 2003). */
export interface Random {
  /** Whole number from 0 to `below - 1`. */
  int(below: number): number
  /** In (0, 1]. */
  unit(): number
}

/** Numbers that follow from `seed` alone (xorshift). */
export function makeRandom(seed: number): Random {
  // Zero is the one state the generator never leaves.
  let state = (seed ^ 0x9e3779b9) | 0 || 1
  const step = () => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return state >>> 0
  }
  for (let k = 0; k < 8; k++) step()
  return {
    int: (below) => step() % below,
    unit: () => (step() + 1) / 4294967296,
  }
}
