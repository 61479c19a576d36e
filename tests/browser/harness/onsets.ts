/** When sounds begin in a recording. Knows nothing of how they were made. */

export interface Onset {
  readonly atS: number
  /** Where the sound has ended again, s. */
  readonly untilS: number
}

/**
 * Stretches louder than `level` with at least `quietS` below it on either side. The time of a stretch is
 * that of its first sample above the level.
 */
export function onsets(samples: Float32Array, rate: number, level = 0.02, quietS = 0.04): Onset[] {
  const found: { atS: number; untilS: number }[] = []
  const quiet = quietS * rate
  let lastLoud = -Infinity
  for (let i = 0; i < samples.length; i++) {
    if (Math.abs(samples[i]!) <= level) continue
    if (i - lastLoud > quiet) found.push({ atS: i / rate, untilS: i / rate })
    lastLoud = i
    found.at(-1)!.untilS = i / rate
  }
  return found
}
