/**
 * The spoken words: one sprite a language, with a table that says where each word begins and where its
 * stressed vowel falls. Loaded after first paint; until then tones count alone.
 */

import type { VoiceLanguage } from '../../shared/languages.ts'
import type { VoiceClips } from './sound.ts'
import { bucketOf, type WordId } from './sound-plan.ts'
import type { Clip, ClipSource } from './sound-schedule.ts'

export type VoiceState = 'none' | 'loading' | 'ready' | 'failed'

/** Seconds in the sprite. `clickS`: a click ahead of the words, by which a decoder's delay is found. */
export interface CueTable {
  readonly clickS: number
  readonly words: Readonly<Record<WordId, readonly [fromS: number, lastsS: number, beatS: number]>>
}

/** The click stands alone in silence this far on either side. */
const CLICK_SEARCH_S = 0.12
/** The click's peak is near 0.9; a decoder's ripple ahead of it stays far below half. */
const CLICK_LEVEL = 0.45

/** Delay that this browser's decoder added, s: mp3 comes up to 50 ms late (measured in WebKitGTK). */
export function decoderDelayS(samples: Float32Array, sampleRate: number, clickS: number): number {
  const from = Math.max(0, Math.floor((clickS - CLICK_SEARCH_S) * sampleRate))
  const to = Math.min(samples.length, Math.ceil((clickS + CLICK_SEARCH_S) * sampleRate))
  let peakAt = -1
  let peak = CLICK_LEVEL
  for (let i = from; i < to; i++) {
    const level = Math.abs(samples[i] ?? 0)
    if (level <= peak) continue
    peak = level
    peakAt = i
  }
  return peakAt < 0 ? 0 : peakAt / sampleRate - clickS
}

export interface Voice extends VoiceClips {
  state(): VoiceState
  /** Fetches and decodes a language; `base` is the address of the folder of clips, ending in a slash. */
  load(language: VoiceLanguage, base: string): Promise<VoiceState>
  /** A bucket's recorded name, or null to call it by its letter again. */
  setName(bucketId: string, clip: Clip | null): void
}

interface Sprite {
  readonly buffer: AudioBuffer
  readonly table: CueTable
  readonly delayS: number
}

/** The clips hold nothing above 8 kHz; decoding finer would only cost memory. */
const DECODE_HZ = 24_000

export function openVoice(): Voice {
  let state: VoiceState = 'none'
  let sprite: Sprite | null = null
  let latest = 0
  let speech: typeof import('./speech.ts') | null = null
  let saying: typeof import('./saying.ts') | null = null
  let asked = 0
  let spoken: VoiceLanguage = 'en'
  const names = new Map<string, Clip>()

  const clips: ClipSource = (word): Clip | null => {
    const { bucketId, letter } = bucketOf(word)
    if (bucketId !== undefined) return names.get(bucketId) ?? (letter ? clips(letter) : null)
    const cue = sprite?.table.words[word]
    if (!sprite || !cue) return null
    const [fromS, lastsS, beatS] = cue
    return { buffer: sprite.buffer, fromS: fromS + sprite.delayS, lastsS, beatS }
  }
  return {
    state: () => state,
    async load(language, base) {
      latest++
      const mine = latest
      state = 'loading'
      saying ??= await import('./saying.ts').catch(() => null)
      const loaded = await loadSprite(`${base}${language}`).catch(() => null)
      if (mine !== latest) return state
      sprite = loaded
      spoken = language
      state = loaded ? 'ready' : 'failed'
      if (!loaded) speech = await import('./speech.ts').catch(() => null)
      return state
    },
    setName(bucketId, clip) {
      if (clip) names.set(bucketId, clip)
      else names.delete(bucketId)
    },
    clips: () => clips,
    asSaid: (plan) => saying?.planAsSaid(plan, spoken) ?? plan,
    async aloud(text, language) {
      asked++
      const mine = asked
      speech?.hushAloud()
      if (text === '') return
      speech ??= await import('./speech.ts').catch(() => null)
      if (mine === asked) speech?.sayAloud(text, language)
    },
    talks: () => speech?.saysAloud() === true,
    instead(words, afterMs) {
      if (state === 'failed') speech?.sayAfter(words, spoken, afterMs)
    },
  }
}

async function loadSprite(address: string): Promise<Sprite> {
  const [json, sound] = await Promise.all([fetch(`${address}.json`), fetch(`${address}.mp3`)])
  const table = readCueTable(await json.json())
  const decoder = new OfflineAudioContext(1, 1, DECODE_HZ)
  const buffer = await decoder.decodeAudioData(await sound.arrayBuffer())
  const delayS = decoderDelayS(buffer.getChannelData(0), buffer.sampleRate, table.clickS)
  return { buffer, table, delayS }
}

/** Throws TypeError when `value` is no cue table: better no voice than a wrong one. */
export function readCueTable(value: unknown): CueTable {
  const table = value as Partial<CueTable> | null
  const cues = Object.values(table?.words ?? {})
  const isCue = (cue: unknown): boolean =>
    Array.isArray(cue) && cue.length === 3 && cue.every((x) => typeof x === 'number' && x >= 0)
  if (typeof table?.clickS !== 'number' || cues.length === 0 || !cues.every(isCue)) {
    throw new TypeError('not a table of spoken words')
  }
  return table as CueTable
}
