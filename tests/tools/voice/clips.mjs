/** One spoken word: said by a synthesiser, cut to its sound, brought to the common level. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { at } from '../project.mjs'
import { highPass, highShelf, peakOf, readWav, toLevel, vowelOnset, writeWav } from './signal.mjs'

export const RATE = 16_000
const LEVEL = 0.2
/** Where a word begins and ends: this far under its loudest. */
export const EDGE = 10 ** (-30 / 20)
export const BEFORE_S = 0.004
const AFTER_S = 0.03
/** A number must be over before the next second, a call before nobody listens; what is longer is said again, quicker. */
const LONGEST_S = { number: 0.82, call: 1.2 }
const TEMPOS = [1, 1.15, 1.3, 1.45, 1.6, 1.8]
const VOWELS = /^(a[aehowxy]|e[hry]|i[hy]|o[wy]|u[hw]|er|axr?)$/

const scratch = mkdtempSync(join(tmpdir(), 'voice-'))
process.on('exit', () => rmSync(scratch, { recursive: true }))
export const file = (name) => join(scratch, name)

/** Samples of a word and, where the synthesiser tells it, the onset of its first vowel. */
const SPEAKERS = {
  en(text, tempo) {
    const wav = file('word.wav')
    const args = [
      '-voice',
      'rms',
      '--setf',
      `duration_stretch=${0.85 / tempo}`,
      '-psdur',
      '-t',
      text,
      '-o',
      wav,
    ]
    const phones = execFileSync('flite', args, { encoding: 'utf8' }).trim().split(/\s+/)
    const vowel = phones.findIndex((phone) => VOWELS.test(phone.split(':')[0]))
    return { ...readWav(readFileSync(wav)), vowelS: Number(phones[vowel - 1].split(':')[1]) }
  },
  es(text, tempo) {
    const wav = file('word.wav')
    execFileSync('espeak-ng', [
      '-v',
      'es-419',
      '-s',
      String(Math.round(180 * tempo)),
      '-p',
      '40',
      '-w',
      wav,
      text,
    ])
    const there = file('there.wav')
    execFileSync('ffmpeg', ['-v', 'error', '-y', '-i', wav, '-ar', String(RATE), there])
    return readWav(readFileSync(there))
  },
}

/** The slowest saying of a word that is short enough. */
export function sayWord(language, key, text) {
  const longestS = /^\d+$/.test(key) ? LONGEST_S.number : LONGEST_S.call
  for (const tempo of TEMPOS) {
    const clip = makeClip(SPEAKERS[language](text, tempo), key)
    if (clip.samples.length <= longestS * RATE) return { ...clip, tempo }
  }
  throw new Error(`${language}: ${JSON.stringify(text)} takes longer than ${longestS} s`)
}

/** A word cut to its sound, at the common level; `beatS` counts from the start of the cut. */
function makeClip(spoken, key) {
  if (spoken.rate !== RATE) throw new Error(`${key}: ${spoken.rate} Hz`)
  const clear = highShelf(highPass(spoken.samples, RATE, 120), RATE, 1500, 5)
  const level = toLevel(clear, RATE, LEVEL)
  const edge = peakOf(level) * EDGE
  const isLoud = (x) => Math.abs(x) > edge
  const from = Math.max(0, level.findIndex(isLoud) - Math.round(BEFORE_S * RATE))
  const samples = level.slice(from, level.findLastIndex(isLoud) + Math.round(AFTER_S * RATE))
  fade(samples)
  const heardS = vowelOnset(samples, RATE)
  const toldS = spoken.vowelS === undefined ? undefined : spoken.vowelS - from / RATE
  return { key, samples, beatS: Math.max(BEFORE_S, toldS ?? heardS), heardS, toldS }
}

function fade(samples) {
  const inLength = BEFORE_S * RATE
  const outLength = AFTER_S * RATE
  for (let i = 0; i < inLength; i++) samples[i] *= i / inLength
  for (let i = 0; i < outLength; i++) samples[samples.length - 1 - i] *= i / outLength
}

/** Encodes 16 kHz samples to a file of the project with a constant rate and no header frame. */
export function encode(samples, name, ...options) {
  const wav = file('sprite.wav')
  writeFileSync(wav, writeWav(samples, RATE))
  execFileSync('lame', ['--quiet', '-m', 'm', '--cbr', '-t', '--noreplaygain', ...options, wav, at(name)])
  return readFileSync(at(name)).length
}
