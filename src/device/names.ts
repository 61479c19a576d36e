/** A bucket's name in the person's own voice: recorded once, cut to its sound, brought to the clips' level. */
import type { Clip } from './sound-schedule.ts'

/** Samples of a recorded name, -1 to 1. */
export interface RecordedName {
  readonly rate: number
  readonly samples: Float32Array<ArrayBuffer>
}

/** Like the clips: where a word begins and ends, this far under its loudest, and what is kept around it. */
const EDGE = 10 ** (-30 / 20)
const BEFORE_S = 0.004
const AFTER_S = 0.03
/** Level of the clips while something is spoken. */
const LEVEL = 0.2
const LOUDEST = 0.9
/** Quieter than this is no voice but the room (assumption). */
const SILENCE = 0.01
const FRAME_S = 0.02
export const NAME_S = { least: 0.12, most: 2.5 }
/** Room noises before and after a name end its cut: only what lies this near to the loudest part belongs to it. */
const PAUSE_S = 0.35

const levelOf = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / Math.max(1, samples.length))

/** Levels of 20 ms each. */
function frames({ rate, samples }: RecordedName): {
  readonly size: number
  readonly levels: readonly number[]
} {
  const size = Math.round(FRAME_S * rate)
  const levels: number[] = []
  for (let i = 0; i + size <= samples.length; i += size) levels.push(levelOf(samples.subarray(i, i + size)))
  return { size, levels }
}

/** A recording cut to the name in it and brought to level; null when nobody spoke, or too long. */
export function trimName(recorded: RecordedName): RecordedName | null {
  const { rate, samples } = recorded
  const { size, levels } = frames(recorded)
  const loudest = Math.max(0, ...levels)
  if (loudest < SILENCE) return null
  const spoken = (level: number): boolean => level > loudest * EDGE
  const pause = Math.round(PAUSE_S / FRAME_S)
  let from = levels.indexOf(loudest)
  let to = from
  for (let i = from; i >= 0 && from - i <= pause; i--) if (spoken(levels[i] ?? 0)) from = i
  for (let i = to; i < levels.length && i - to <= pause; i++) if (spoken(levels[i] ?? 0)) to = i
  const edge = loudest * EDGE
  const isLoud = (x: number): boolean => Math.abs(x) > edge
  const first = samples.subarray(from * size).findIndex(isLoud) + from * size
  const start = Math.max(0, first - Math.round(BEFORE_S * rate))
  const cut = samples.slice(start, Math.min(samples.length, (to + 1) * size + Math.round(AFTER_S * rate)))
  const lastsS = cut.length / rate
  if (lastsS < NAME_S.least || lastsS > NAME_S.most) return null
  return { rate, samples: fade(toLevel(cut, { rate, samples: cut }), rate) }
}

function toLevel(cut: Float32Array<ArrayBuffer>, recorded: RecordedName): Float32Array<ArrayBuffer> {
  const { levels } = frames(recorded)
  const loud = levels.filter((level) => level > Math.max(...levels) * EDGE)
  const level = Math.sqrt(loud.reduce((sum, x) => sum + x * x, 0) / loud.length)
  const gain = LEVEL / level
  // Peaks are rounded, as those of the clips, rather than clipped.
  return cut.map((x) => LOUDEST * Math.tanh((x * gain) / LOUDEST))
}

function fade(samples: Float32Array<ArrayBuffer>, rate: number): Float32Array<ArrayBuffer> {
  const fadeIn = BEFORE_S * rate
  const fadeOut = AFTER_S * rate
  return samples.map((x, i) => x * Math.min(1, i / fadeIn, (samples.length - 1 - i) / fadeOut))
}

/** A name as a clip like any other; its stress is taken to be at its start. */
export function clipOf({ rate, samples }: RecordedName): Clip {
  const buffer = new AudioBuffer({ length: samples.length, sampleRate: rate })
  buffer.copyToChannel(samples, 0)
  return { buffer, fromS: 0, lastsS: samples.length / rate, beatS: BEFORE_S }
}

/** Enough for a name, little to keep. */
const KEPT_HZ = 16_000

export interface Recording {
  stop(): void
  /** What was recorded; a word when there is no microphone or it is refused. */
  readonly done: Promise<RecordedName | 'refused' | 'absent'>
}

/** Records from now until `stop`. Inside a tap. */
export function record(): Recording {
  let stopped = false
  let recorder: MediaRecorder | undefined
  const stop = (): void => {
    stopped = true
    if (recorder?.state === 'recording') recorder.stop()
  }
  const done = (async () => {
    if (!navigator.mediaDevices || !('MediaRecorder' in globalThis)) return 'absent' as const
    const stream = await navigator.mediaDevices.getUserMedia({ audio: true }).catch(() => null)
    if (!stream) return 'refused' as const
    const parts: Blob[] = []
    const made = new MediaRecorder(stream)
    recorder = made
    const ended = new Promise<void>((resolve) => {
      made.onstop = () => resolve()
    })
    made.ondataavailable = ({ data }) => parts.push(data)
    made.start()
    // The person let go while the browser was still asking.
    if (stopped) made.stop()
    await ended
    for (const track of stream.getTracks()) track.stop()
    const bytes = await new Blob(parts, { type: made.mimeType }).arrayBuffer()
    const decoder = new OfflineAudioContext(1, 1, KEPT_HZ)
    const buffer = await decoder.decodeAudioData(bytes).catch(() => null)
    return {
      rate: KEPT_HZ,
      samples: buffer ? new Float32Array(buffer.getChannelData(0)) : new Float32Array(0),
    }
  })()
  return { stop, done }
}
