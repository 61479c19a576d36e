/** The app's own sound modules on a bare page, with a recorder in place of ears. */

import type { VoiceLanguage } from '../../../shared/languages.ts'
import { openSound } from '../../../src/device/sound.ts'
import type { CountAsk, Cue, CuePlan } from '../../../src/device/sound-plan.ts'
import { planCall, planCount } from '../../../src/device/sound-plan.ts'
import type { Clip } from '../../../src/device/sound-schedule.ts'
import { schedule } from '../../../src/device/sound-schedule.ts'
import { openVoice } from '../../../src/device/voice.ts'
import type { Onset } from './onsets.ts'
import { onsets } from './onsets.ts'

const RATE = 48_000
/** Room ahead of the plan's zero for words whose stress falls late. */
const AHEAD_S = 0.5

const voice = openVoice()
const noClip = (): Clip | null => null
const isTone = (cue: Cue): boolean => 'tone' in cue

async function render(plan: CuePlan, lengthS: number, spoken: boolean): Promise<Float32Array> {
  const context = new OfflineAudioContext(1, Math.ceil((lengthS + AHEAD_S) * RATE), RATE)
  const clips = spoken ? voice.clips(context) : noClip
  schedule(context, context.destination, plan, AHEAD_S, clips)
  return (await context.startRendering()).getChannelData(0)
}

const fromZero = (found: Onset[]): Onset[] =>
  found.map(({ atS, untilS }) => ({ atS: atS - AHEAD_S, untilS: untilS - AHEAD_S }))

/** Asked and heard times of the tones of a count, s after the tap. */
async function countTones(ask: CountAsk): Promise<{ asked: number[]; heard: Onset[] }> {
  const plan = planCount(ask)
  const samples = await render(plan, plan.totals.dripS + 1, false)
  const asked = plan.cues.filter(isTone).map((cue) => cue.atS)
  return { asked, heard: fromZero(onsets(samples, RATE)) }
}

/** Words of a count or call alone: where each shall be stressed, and where sound is heard to begin. */
async function spokenWords(plan: CuePlan, lengthS: number): Promise<{ words: Cue[]; heard: Onset[] }> {
  const words = plan.cues.filter((cue) => !isTone(cue))
  const samples = await render({ cues: words }, lengthS, true)
  return { words, heard: fromZero(onsets(samples, RATE, 0.01, 0.045)) }
}

/** Where each word of the sprite is heard to begin after decoding, corrected by the click, and its loudness. */
async function spriteWords(): Promise<{ word: string; offS: number; level: number; lastsS: number }[]> {
  const context = new OfflineAudioContext(1, RATE, RATE)
  const clips = voice.clips(context)
  const response = await fetch(`/voice/${language}.json`)
  const table = (await response.json()) as { words: Record<string, [number, number, number]> }
  return Object.keys(table.words).map((word) => {
    const clip = clips(word)!
    const rate = clip.buffer.sampleRate
    const from = Math.round((clip.fromS - 0.025) * rate)
    const samples = clip.buffer
      .getChannelData(0)
      .subarray(from, Math.round((clip.fromS + clip.lastsS) * rate))
    const peak = samples.reduce((max, x) => Math.max(max, Math.abs(x)), 0)
    const first = samples.findIndex((x) => Math.abs(x) > peak * 10 ** (-30 / 20))
    return { word, offS: first / rate - 0.025, level: spokenLevel(samples, rate), lastsS: clip.lastsS }
  })
}

/** RMS of the 20 ms frames within 30 dB of the loudest. */
function spokenLevel(samples: Float32Array, rate: number): number {
  const size = Math.round(0.02 * rate)
  const powers: number[] = []
  for (let i = 0; i + size <= samples.length; i += size) {
    powers.push(samples.subarray(i, i + size).reduce((sum, x) => sum + x * x, 0) / size)
  }
  const loud = powers.filter((p) => p > Math.max(...powers) / 1000)
  return Math.sqrt(loud.reduce((sum, p) => sum + p, 0) / loud.length)
}

let language: VoiceLanguage = 'en'

async function loadVoice(next: VoiceLanguage): Promise<string> {
  language = next
  return voice.load(next, '/voice/')
}

interface Recording {
  readonly rate: number
  readonly firstFrame: number
  readonly samples: Float32Array
}

const RECORDER = `registerProcessor('recorder', class extends AudioWorkletProcessor {
  process([input]) {
    if (input[0]) this.port.postMessage([currentFrame, input[0].slice()])
    return true
  }
})`

/** Records whatever any context of this page sends to its loudspeaker, on the audio's own thread. */
function recordOutput(): { context(): AudioContext; stop(): Recording } {
  const chunks: [number, Float32Array][] = []
  let live: AudioContext | null = null
  const plain = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode) => AudioNode
  AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode) {
    const context = this.context
    if (to instanceof AudioDestinationNode && context instanceof AudioContext) {
      live = context
      const address = URL.createObjectURL(new Blob([RECORDER], { type: 'text/javascript' }))
      void context.audioWorklet.addModule(address).then(() => {
        const recorder = new AudioWorkletNode(context, 'recorder', {
          channelCount: 1,
          channelCountMode: 'explicit',
        })
        recorder.port.onmessage = (event: MessageEvent<[number, Float32Array]>) => chunks.push(event.data)
        plain.call(this, recorder)
      })
    }
    return plain.call(this, to)
  } as typeof AudioNode.prototype.connect
  return {
    context: () => live!,
    stop() {
      if (chunks.length === 0) return { rate: live!.sampleRate, firstFrame: 0, samples: new Float32Array(0) }
      const firstFrame = chunks[0]![0]
      const last = chunks.at(-1)!
      const samples = new Float32Array(last[0] + last[1].length - firstFrame)
      for (const [frame, part] of chunks) samples.set(part, frame - firstFrame)
      return { rate: live!.sampleRate, firstFrame, samples }
    },
  }
}

const record = recordOutput()
const sound = openSound(voice)

/** Counts from the next click on the page, with the main thread stuck for `stallMs` right after it. */
function countFromClick(ask: CountAsk, stallMs: number): void {
  sound.setMode('tones')
  document.addEventListener(
    'click',
    (event) => {
      tapMs = event.timeStamp
      sound.count(planCount(ask), tapMs)
      handled = { pageMs: performance.now(), contextS: record.context().currentTime }
      setTimeout(() => stall(stallMs), 700)
    },
    { once: true },
  )
}
let tapMs = 0
/** Both clocks when the count had been scheduled. */
let handled = { pageMs: 0, contextS: 0 }

function stall(ms: number): void {
  const until = performance.now() + ms
  while (performance.now() < until);
}

/**
 * Asked times of the tones and those at which they left the loudspeaker, both s after the tap, by the page's clock; when
 * the tap was handled, and what the audio's own clock has lost since: a machine that stalls as a whole proves nothing.
 */
function heardInRealTime(ask: CountAsk): {
  asked: number[]
  heard: number[]
  handledS: number
  lostS: number
} {
  const onS = record.context().currentTime - handled.contextS
  const { rate, firstFrame, samples } = record.stop()
  const point = record.context().getOutputTimestamp()
  const pageMsOf = (contextS: number): number =>
    point.performanceTime! + (contextS - point.contextTime!) * 1000
  const heard = onsets(samples, rate).map((o) => (pageMsOf(firstFrame / rate + o.atS) - tapMs) / 1000)
  return {
    asked: planCount(ask)
      .cues.filter(isTone)
      .map((cue) => cue.atS),
    heard,
    handledS: (handled.pageMs - tapMs) / 1000,
    lostS: (performance.now() - handled.pageMs) / 1000 - onS,
  }
}

const harness = {
  countTones,
  spokenCount: (ask: CountAsk) => spokenWords(planCount(ask), planCount(ask).totals.dripS + 3),
  spokenCall: () => spokenWords(planCall('G', [{ board: 'B', place: 1 }]), 6),
  spriteWords,
  loadVoice,
  countFromClick,
  heardInRealTime,
  unlock: () => document.addEventListener('pointerup', () => void sound.unlock()),
  sound,
  recording: () => record.stop().samples.length,
  /** Softest tenth of a second of the recording's last so many: what goes on without a pause. */
  softestOfLast(tenths: number): number {
    const { rate, samples } = record.stop()
    const size = Math.round(rate / 10)
    return Math.min(
      ...Array.from({ length: tenths }, (_, i) =>
        samples
          .subarray(samples.length - (i + 1) * size, samples.length - i * size)
          .reduce((max, x) => Math.max(max, Math.abs(x)), 0),
      ),
    )
  },
  /** Loudest sample from `fromS` of the recording's end on. */
  loudestOfLast(seconds: number): number {
    const { rate, samples } = record.stop()
    return samples.subarray(-Math.round(seconds * rate)).reduce((max, x) => Math.max(max, Math.abs(x)), 0)
  },
}
export type Harness = typeof harness

declare global {
  interface Window {
    harness: Harness
  }
}
window.harness = harness
