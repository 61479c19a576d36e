/**
 * Makes public/voice/ and public/tape/ from Debian's flite (voice rms) and espeak-ng (es-419), with lame.
 * Run by hand when words or tones change; the results are committed, so that nobody else needs them:
 *   apt-get install flite espeak-ng lame ffmpeg && node tests/tools/voice/make.mjs
 */
import { execFileSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { at } from '../project.mjs'
import { BEFORE_S, EDGE, encode, file, RATE, sayWord } from './clips.mjs'
import { peakOf, readWav, spokenLevel } from './signal.mjs'
import { makeTape } from './tape.mjs'
import { WORDS } from './words.mjs'

const BETWEEN_S = 0.05
const CLICK_S = 0.2
const FIRST_S = 0.4
const KBPS = 24

/** A click by which a decoder's delay is found: its greatest sample lies exactly at CLICK_S. */
function addClick(sprite) {
  const centre = Math.round(CLICK_S * RATE)
  for (let i = -200; i <= 200; i++) {
    const s = i / RATE
    sprite[centre + i] += 0.9 * Math.exp(-((s / 0.0012) ** 2)) * Math.cos(2 * Math.PI * 1500 * s)
  }
}

/** Samples of an encoded file, moved so that its click is where it was put. */
function decode(name) {
  const wav = file('decoded.wav')
  execFileSync('ffmpeg', ['-v', 'error', '-y', '-i', at(name), '-ar', String(RATE), wav])
  const { samples } = readWav(readFileSync(wav))
  const head = Array.from(samples.subarray(0, FIRST_S * RATE), Math.abs)
  return samples.subarray(head.indexOf(Math.max(...head)) - Math.round(CLICK_S * RATE))
}

/** Where a word begins, its length and its stress in the encoded file: coding blurs a soft start. */
function cueOf(clip, place, coded) {
  const early = Math.round((BETWEEN_S / 2) * RATE)
  const around = coded.subarray(place - early, place + clip.samples.length)
  const edge = peakOf(around) * EDGE
  const from = place - early + around.findIndex((x) => Math.abs(x) > edge) - Math.round(BEFORE_S * RATE)
  const lastsS = (place + clip.samples.length - from) / RATE
  const beatS = Math.max(BEFORE_S, clip.beatS + (place - from) / RATE)
  return [from / RATE, lastsS, beatS].map(round4)
}

const round4 = (x) => Math.round(x * 1e4) / 1e4

function makeSprite(language) {
  const clips = Object.entries(WORDS[language]).map(([key, text]) => sayWord(language, key, text))
  const lengthS = clips.reduce((sum, clip) => sum + clip.samples.length / RATE + BETWEEN_S, FIRST_S)
  const sprite = new Float32Array(Math.ceil(lengthS * RATE))
  addClick(sprite)
  let next = Math.round(FIRST_S * RATE)
  const places = clips.map((clip) => {
    sprite.set(clip.samples, next)
    const from = next
    next += clip.samples.length + Math.round(BETWEEN_S * RATE)
    return from
  })
  const bytes = encode(sprite, `public/voice/${language}.mp3`, '-b', String(KBPS), '--resample', '16')
  const coded = decode(`public/voice/${language}.mp3`)
  const words = Object.fromEntries(clips.map((clip, i) => [clip.key, cueOf(clip, places[i], coded)]))
  writeFileSync(at(`public/voice/${language}.json`), `${JSON.stringify({ clickS: CLICK_S, words })}\n`)
  report(language, clips, bytes, lengthS)
  return clips
}

function report(language, clips, bytes, lengthS) {
  const levels = clips.map((clip) => 20 * Math.log10(spokenLevel(clip.samples, RATE)))
  const off = clips.filter((clip) => clip.toldS !== undefined).map((clip) => clip.heardS - clip.toldS)
  const longest = clips.reduce((a, b) => (a.samples.length > b.samples.length ? a : b))
  const worst = off.map(Math.abs).sort((a, b) => a - b)
  console.log(
    `${language}: ${clips.length} words, ${lengthS.toFixed(1)} s, ${bytes} bytes, level ${Math.min(...levels).toFixed(1)} to ${Math.max(...levels).toFixed(1)} dB, peak ${Math.max(...clips.map((c) => peakOf(c.samples))).toFixed(2)}, longest "${longest.key}" ${(longest.samples.length / RATE).toFixed(2)} s`,
  )
  if (off.length > 0) {
    const ms = (x) => (1000 * x).toFixed(0)
    console.log(
      `  vowel onset, heard less told: median ${ms(worst[worst.length >> 1])} ms, 95 % within ${ms(worst[Math.floor(worst.length * 0.95)])} ms, worst ${ms(worst.at(-1))} ms`,
    )
    for (const clip of clips) {
      if (Math.abs(clip.heardS - clip.toldS) > 0.03)
        console.log(`  ${clip.key}: heard ${ms(clip.heardS)} told ${ms(clip.toldS)}`)
    }
  }
}

const said = Object.fromEntries(Object.keys(WORDS).map((language) => [language, makeSprite(language)]))
await makeTape(said)
