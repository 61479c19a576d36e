/**
 * The spoken words: one sprite a language, with a table that says where each word begins and where its
 * stressed vowel falls. Loaded after first paint; until then tones count alone.
 */
import type { ClipSource } from './schedule.ts'
import type { WordId } from './sound-plan.ts'

export type VoiceLanguage = 'en' | 'es'
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
  for (let i = from; i < to; i++) {
    const level = Math.abs(samples[i]!)
    if (level > CLICK_LEVEL && (peakAt < 0 || level > Math.abs(samples[peakAt]!))) peakAt = i
  }
  return peakAt < 0 ? 0 : peakAt / sampleRate - clickS
}

export interface Voice {
  state(): VoiceState
  /** Fetches and decodes a language; `base` is the folder of the clips, ending in a slash. */
  load(language: VoiceLanguage, base: string): Promise<VoiceState>
  clips(context: BaseAudioContext): ClipSource
}
