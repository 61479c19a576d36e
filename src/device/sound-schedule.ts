/** Puts a plan on an audio clock, as a whole. Works on any context, so that tests can render it offline. */
import type { CuePlan, ToneCue, ToneName, WordCue, WordId } from './sound-plan.ts'
import { CALL_NOTES, callNotes, renderCallNote, renderTone } from './tones.ts'

/** A spoken word inside a buffer: it begins at `fromS`, its stressed onset is `beatS` later. */
export interface Clip {
  readonly buffer: AudioBuffer
  readonly fromS: number
  readonly lastsS: number
  readonly beatS: number
}

export type ClipSource = (word: WordId) => Clip | null

export interface Run {
  /** Context time of the plan's zero and of the end of its last sound. */
  readonly fromS: number
  readonly endS: number
  /** Whether something of it is heard at `atS`, or was less than `lingerS` before. */
  sounds(atS: number, lingerS: number): boolean
  /** Ends everything, or the OUT tone alone, from `atS` on. */
  cut(atS: number, what: 'all' | 'out'): void
}

/** Fast enough to be at once, slow enough not to click. */
const CUT_S = 0.01
/** A sign this late still helps; later it misleads. */
const LATE_S = 0.05
/** Between words that follow one another. */
const GAP_S = 0.06

/** Tones by name and notes of calls by index, computed once: that takes a slow phone a tenth of a second. */
const kits = new WeakMap<BaseAudioContext, Map<ToneName | number, AudioBuffer>>()

function toneBuffer(context: BaseAudioContext, name: ToneName | number): AudioBuffer {
  const kit = kits.get(context) ?? new Map<ToneName | number, AudioBuffer>()
  kits.set(context, kit)
  const known = kit.get(name)
  if (known) return known
  const { sampleRate } = context
  const samples = typeof name === 'number' ? renderCallNote(name, sampleRate) : renderTone(name, sampleRate)
  const buffer = context.createBuffer(1, samples.length, sampleRate)
  buffer.copyToChannel(samples, 0)
  kit.set(name, buffer)
  return buffer
}

/** Renders tones, and the notes of calls, before they are wanted, one a turn, so that nothing has to wait for them. */
export function renderAhead(context: BaseAudioContext, names: readonly ToneName[]): void {
  const wanted = [...names, ...Array(CALL_NOTES).keys()]
  const next = (): void => {
    const name = wanted.shift()
    if (name === undefined) return
    toneBuffer(context, name)
    setTimeout(next)
  }
  // The context by itself is work enough for one turn.
  setTimeout(next)
}

/** Schedules `plan` with its zero at `fromS` of the context's clock. What is late by more than 50 ms is left out. */
export function schedule(
  context: BaseAudioContext,
  output: AudioNode,
  plan: CuePlan,
  fromS: number,
  clips: ClipSource,
): Run {
  const all = context.createGain()
  const out = context.createGain()
  const sources: AudioBufferSourceNode[] = []
  const spans: [fromS: number, untilS: number][] = []
  let cutS = Number.POSITIVE_INFINITY
  all.connect(output)
  out.connect(all)
  let endS = fromS
  let spokenUntilS = 0

  const start = (buffer: AudioBuffer, to: AudioNode, atS: number, skipS: number, lastsS: number): void => {
    const source = context.createBufferSource()
    source.buffer = buffer
    source.connect(to)
    source.start(atS, skipS, lastsS)
    sources.push(source)
    spans.push([atS, atS + lastsS])
    endS = Math.max(endS, atS + lastsS)
  }
  const startTone = (cue: ToneCue): void => {
    const lateS = Math.max(0, context.currentTime - (fromS + cue.atS))
    const mayJoin = cue.tone === 'heard' || cue.tone === 'out'
    if (lateS > LATE_S && !mayJoin) return
    const skipS = cue.tone === 'out' ? lateS : 0
    if (skipS >= cue.lastsS) return
    if (cue.tone.startsWith('call-')) {
      for (const { index, fromS: noteS } of callNotes(cue.tone.slice('call-'.length))) {
        const buffer = toneBuffer(context, index)
        start(buffer, all, fromS + cue.atS + lateS + noteS, 0, buffer.duration)
      }
      return
    }
    const buffer = toneBuffer(context, cue.tone)
    start(buffer, cue.tone === 'out' ? out : all, fromS + cue.atS + lateS, skipS, cue.lastsS - skipS)
  }
  const startWord = (cue: WordCue): void => {
    const clip = clips(cue.word)
    if (!clip) return
    const wantedS = fromS + cue.atS - (cue.onBeat ? clip.beatS : 0)
    const lateS = context.currentTime - wantedS
    if (cue.onBeat && lateS > LATE_S) return
    const atS = cue.onBeat ? wantedS : Math.max(wantedS, spokenUntilS + GAP_S)
    start(clip.buffer, all, Math.max(atS, context.currentTime), clip.fromS, clip.lastsS)
    spokenUntilS = atS + clip.lastsS
  }
  for (const cue of plan.cues) 'tone' in cue ? startTone(cue) : startWord(cue)

  return {
    fromS,
    endS,
    sounds: (atS, lingerS) =>
      atS < cutS + lingerS && spans.some(([from, until]) => from <= atS && atS < until + lingerS),
    cut(atS, what) {
      if (what === 'all') cutS = Math.min(cutS, atS)
      const gain = (what === 'all' ? all : out).gain
      gain.setValueAtTime(1, atS)
      gain.linearRampToValueAtTime(0, atS + CUT_S)
      if (what === 'out') return
      for (const source of sources) source.stop(atS + CUT_S)
    },
  }
}
