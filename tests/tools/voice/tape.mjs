/**
 * Parts of the track that rings with the screen off: a hum nobody hears, the two notes of each letter, and
 * the few words of a call. MPEG-2.5 at 8 kHz and 8 kbit/s without a bit reservoir: frames of 72 bytes and
 * 72 ms that can be put one after another in any order.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { runnerImport } from 'vite'
import { at } from '../project.mjs'
import { encode, RATE } from './clips.mjs'
import { TAPE_WORDS } from './words.mjs'

const FRAME_BYTES = 72
const FRAME_S = 0.072
const FRAME = FRAME_S * RATE
const OPTIONS = ['-b', '8', '--resample', '8', '--nores']
/** Below -62 dBFS Chromium takes a track for silence (measured); no phone's speaker gives 42 Hz. */
const HUM_PEAK = 10 ** (-56 / 20)
/** Three waves a frame, so that one frame joins itself. */
const HUM_HZ = 3 / FRAME_S
const HUM_S = 10
/** Silence between parts, so that none leaks into the next. */
const APART = 4
/**
 * lame and a decoder delay by 1105 samples of 8 kHz, 66 ms short of two frames: put this far into a frame,
 * a sound comes out at the start of one.
 */
const INTO_FRAME = Math.round(0.0065 * RATE)
/** The frame before the sound holds the first half of its overlap. */
const FIRST_FRAME = 1

/** Encodes parts to one file; returns name to [first frame, number of frames]. */
function encodeParts(name, parts) {
  const places = {}
  let frame = APART
  for (const [key, samples] of parts) {
    const frames = Math.ceil((INTO_FRAME + samples.length) / FRAME)
    places[key] = [frame + FIRST_FRAME, frames + 2]
    frame += frames + APART
  }
  const all = new Float32Array((frame + APART) * FRAME)
  for (const [key, samples] of parts) {
    all.set(samples, (places[key][0] - FIRST_FRAME) * FRAME + INTO_FRAME)
  }
  const bytes = encode(all, `public/tape/${name}.mp3`, ...OPTIONS)
  if (bytes % FRAME_BYTES !== 0) throw new Error(`${name}: ${bytes} bytes are no whole frames`)
  console.log(`tape ${name}: ${parts.length} parts, ${bytes} bytes`)
  return places
}

function makeHum() {
  const samples = Float32Array.from(
    { length: HUM_S * RATE },
    (_, i) => HUM_PEAK * Math.sin((2 * Math.PI * HUM_HZ * i) / RATE),
  )
  encode(samples, 'public/tape/hum.mp3', ...OPTIONS)
  const bytes = readFileSync(at('public/tape/hum.mp3'))
  const middle = Math.floor(bytes.length / FRAME_BYTES / 2) * FRAME_BYTES
  const [one, next] = [0, 1].map((i) =>
    bytes.subarray(middle + i * FRAME_BYTES, middle + (i + 1) * FRAME_BYTES),
  )
  if (!one.equals(next)) throw new Error('the hum does not repeat')
  writeFileSync(at('public/tape/hum.mp3'), one)
}

/** The notes of each letter. */
async function makeCalls() {
  const { module } = await runnerImport(at('src/device/tones.ts'))
  const letters = Array.from('ABCDEFGHIJKLMNOPQRSTUVWXYZ', (letter) => `call-${letter}`)
  return encodeParts(
    'calls',
    letters.map((name) => [name, module.renderTone(name, RATE).map((x) => x * 1.5)]),
  )
}

/** Makes the calls anew, and leaves what is said: wants lame and no voices. */
export async function makeCallsAlone() {
  const places = JSON.parse(readFileSync(at('public/tape/parts.json'), 'utf8'))
  writeFileSync(at('public/tape/parts.json'), `${JSON.stringify({ ...places, calls: await makeCalls() })}\n`)
}

/** `said`: the clips of each language, 16 kHz. */
export async function makeTape(said) {
  makeHum()
  const places = { calls: await makeCalls() }
  for (const [language, clips] of Object.entries(said)) {
    const words = clips.filter((clip) => TAPE_WORDS.includes(clip.key))
    places[language] = encodeParts(
      language,
      words.map((clip) => [clip.key, clip.samples]),
    )
  }
  writeFileSync(at('public/tape/parts.json'), `${JSON.stringify(places)}\n`)
}
