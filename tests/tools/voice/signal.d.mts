export function writeWav(samples: Float32Array, rate: number): Buffer
