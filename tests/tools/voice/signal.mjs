/** Arithmetic on samples for the making of clips. Times in seconds. */

/** Mono 16-bit PCM of a RIFF file, scaled to -1..1. */
export function readWav(bytes) {
  const rate = bytes.readUInt32LE(24)
  let at = 12
  while (bytes.toString('latin1', at, at + 4) !== 'data') at += 8 + bytes.readUInt32LE(at + 4)
  // A synthesiser that writes to a pipe leaves the length unset.
  const end = Math.min(bytes.length, at + 8 + bytes.readUInt32LE(at + 4))
  const samples = new Float32Array((end - at - 8) >> 1)
  for (let i = 0; i < samples.length; i++) samples[i] = bytes.readInt16LE(at + 8 + 2 * i) / 32768
  return { rate, samples }
}

export function writeWav(samples, rate) {
  const bytes = Buffer.alloc(44 + 2 * samples.length)
  bytes.write('RIFF', 0, 'latin1')
  bytes.writeUInt32LE(36 + 2 * samples.length, 4)
  bytes.write('WAVEfmt ', 8, 'latin1')
  bytes.writeUInt32LE(16, 16)
  bytes.writeUInt16LE(1, 20)
  bytes.writeUInt16LE(1, 22)
  bytes.writeUInt32LE(rate, 24)
  bytes.writeUInt32LE(2 * rate, 28)
  bytes.writeUInt16LE(2, 32)
  bytes.writeUInt16LE(16, 34)
  bytes.write('data', 36, 'latin1')
  bytes.writeUInt32LE(2 * samples.length, 40)
  for (let i = 0; i < samples.length; i++) {
    bytes.writeInt16LE(Math.round(32767 * Math.max(-1, Math.min(1, samples[i]))), 44 + 2 * i)
  }
  return bytes
}

/** Second-order sections after R. Bristow-Johnson's cookbook for audio equalisers. */
function biquad(samples, [b0, b1, b2, a0, a1, a2]) {
  const out = new Float32Array(samples.length)
  let [x1, x2, y1, y2] = [0, 0, 0, 0]
  for (let i = 0; i < samples.length; i++) {
    const x = samples[i]
    const y = (b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2) / a0
    ;[x2, x1, y2, y1] = [x1, x, y1, y]
    out[i] = y
  }
  return out
}

const angle = (hz, rate) => {
  const w = (2 * Math.PI * hz) / rate
  return { cos: Math.cos(w), alpha: Math.sin(w) / Math.SQRT2 }
}

export function highPass(samples, rate, hz) {
  const { cos, alpha } = angle(hz, rate)
  return biquad(samples, [(1 + cos) / 2, -(1 + cos), (1 + cos) / 2, 1 + alpha, -2 * cos, 1 - alpha])
}

export function lowPass(samples, rate, hz) {
  const { cos, alpha } = angle(hz, rate)
  return biquad(samples, [(1 - cos) / 2, 1 - cos, (1 - cos) / 2, 1 + alpha, -2 * cos, 1 - alpha])
}

/** Lifts what lies above `hz` by `db`: consonants through noise and small speakers. */
export function highShelf(samples, rate, hz, db) {
  const { cos, alpha } = angle(hz, rate)
  const a = 10 ** (db / 40)
  const root = 2 * Math.sqrt(a) * alpha
  return biquad(samples, [
    a * (a + 1 + (a - 1) * cos + root),
    -2 * a * (a - 1 + (a + 1) * cos),
    a * (a + 1 + (a - 1) * cos - root),
    a + 1 - (a - 1) * cos + root,
    2 * (a - 1 - (a + 1) * cos),
    a + 1 - (a - 1) * cos - root,
  ])
}

/** Level of `windowS` centred on each `hopS`. */
export function envelope(samples, rate, windowS, hopS) {
  const half = Math.max(1, Math.round((windowS * rate) / 2))
  const hop = hopS * rate
  const levels = []
  for (let c = 0; c < samples.length; c += hop) {
    const from = Math.max(0, Math.round(c) - half)
    const to = Math.min(samples.length, Math.round(c) + half)
    let sum = 0
    for (let i = from; i < to; i++) sum += samples[i] ** 2
    levels.push(Math.sqrt(sum / Math.max(1, to - from)))
  }
  return levels
}

export const peakOf = (samples) => samples.reduce((max, x) => Math.max(max, Math.abs(x)), 0)

/** Level of what is spoken: frames under -30 dB of the loudest are pauses. */
export function spokenLevel(samples, rate) {
  const levels = envelope(samples, rate, 0.02, 0.01)
  const loud = Math.max(...levels)
  const spoken = levels.filter((level) => level > loud * 10 ** (-30 / 20))
  return Math.sqrt(spoken.reduce((sum, level) => sum + level ** 2, 0) / spoken.length)
}

/** Scales to a spoken level, rounding peaks above 0.5 towards 0.9; the level is met after the rounding. */
export function toLevel(samples, rate, level) {
  const round = (x) => {
    const over = Math.max(0, Math.abs(x) - 0.5)
    return Math.sign(x) * (Math.min(Math.abs(x), 0.5) + (over * 0.4) / (over + 0.4))
  }
  let gain = level / spokenLevel(samples, rate)
  let out = samples.map((x) => round(gain * x))
  for (let i = 0; i < 12; i++) {
    gain *= level / spokenLevel(out, rate)
    out = samples.map((x) => round(gain * x))
  }
  return out
}

/**
 * Onset of the first vowel, s: where the band of its formants first holds half of the loudest level of the
 * 150 ms after. Nasals stay below that, fricatives outside the band. Band and part were tuned on the
 * English words, whose synthesiser tells its vowels: half of them within 15 ms, nine in ten within 40.
 */
export function vowelOnset(samples, rate) {
  const band = lowPass(highPass(samples, rate, 500), rate, 1200)
  const hopS = 0.001
  const levels = envelope(band, rate, 0.012, hopS)
  const loudest = Math.max(...levels)
  const first = levels.findIndex((level) => level > loudest * 0.35)
  const local = Math.max(...levels.slice(first, first + 150))
  return levels.findIndex((level, i) => i >= first && level > local * 0.5) * hopS
}
