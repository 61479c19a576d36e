/**
 * Everything heard through the audio context. A count is scheduled as a whole inside the tap, so a busy
 * page cannot shift a beat; a call that comes during a count waits for its end.
 */
import { audioVerdict, LOOK_S, openContext, roundedInto, startTime, unlockContext } from './audio.ts'
import type { Sound, SoundHealth, SoundMode } from './ports.ts'
import type { CuePlan, ToneName, WordId } from './sound-plan.ts'
import { planCall, planDrip, planTone, planWords, TONE_S } from './sound-plan.ts'
import type { ClipSource, Run } from './sound-schedule.ts'
import { renderAhead, schedule } from './sound-schedule.ts'

/** What the sound asks of the voice: clips for this context, null while there are none. */
export interface VoiceClips {
  clips(context: BaseAudioContext): ClipSource
  /** What is said beside a count, as the language of the clips says it. */
  asSaid(plan: CuePlan): CuePlan
  /** The phone's own speech where clips cannot be had; says nothing otherwise. */
  instead(words: readonly WordId[], afterMs: number): void
  /** A sentence by the phone's own speech, instead of the one before; an empty one breaks it off. */
  aloud(text: string, language: string): void
  /** Such a sentence is being said. */
  talks(): boolean
}

/** Something said outside a count. */
interface Saying {
  readonly plan: CuePlan
  readonly run: Run
}

const LOOK_EVERY_MS = 2000
/** Between the end of a count and a call that waited for it. */
const AFTER_COUNT_S = 0.3
/** Between two things said one after the other. */
const AFTER_CALL_S = 0.25
/** Between a sign and its words. */
const GAP_S = 0.15
/** A loudspeaker and a room ring on this long. */
const RINGS_ON_S = 0.25
/** A sound for now starts this much later, so that its first sample is not lost. */
const SOON_S = 0.005
/** A sound that waited longer than this for a locked audio is not made up for. */
const STALE_MS = 1500
/** What a card says of itself is heard first: by then it was asked for. */
const HINT_AFTER_MS = 600
const noClips: ClipSource = () => null

/** Opens the audio and renders its tones; browsers let it run in a tap only, see `unlock`. */
export function openSound(voice: VoiceClips): Sound & { close(): void } {
  let context: AudioContext | null = null
  let master: GainNode | null = null
  let mode: SoundMode = 'voice'
  let health: SoundHealth = 'locked'
  let dead = false
  let looked = { contextS: 0, pageMs: 0 }
  let counting: Run | null = null
  let calling: Saying | null = null
  let saying: Saying | null = null
  const listeners = new Set<(health: SoundHealth) => void>()

  function setHealth(next: SoundHealth): void {
    if (next === health) return
    health = next
    for (const listener of listeners) listener(next)
  }

  function build(): void {
    context?.close().catch(() => undefined)
    context = openContext()
    counting = calling = saying = null
    master = null
    dead = false
    if (!context) {
      setHealth('off')
      return
    }
    context.addEventListener('statechange', look)
    master = context.createGain()
    master.connect(roundedInto(context, context.destination))
    looked = { contextS: context.currentTime, pageMs: performance.now() }
    renderAhead(context, Object.keys(TONE_S) as ToneName[])
  }

  function look(): void {
    if (!context) return
    const now = { contextS: context.currentTime, pageMs: performance.now() }
    const elapsedS = (now.pageMs - looked.pageMs) / 1000
    const verdict = audioVerdict(context.state, now.contextS - looked.contextS, elapsedS)
    if (elapsedS >= LOOK_S.least || verdict === 'resume') looked = now
    if (verdict) dead = verdict === 'rebuild'
    setHealth(verdict === 'resume' ? 'locked' : dead ? 'dead' : 'ok')
  }

  async function unlock(): Promise<SoundHealth> {
    look()
    if (!context || dead) build()
    if (context && context.state !== 'running') {
      await unlockContext(context).catch(() => undefined)
      if (context) looked = { contextS: context.currentTime, pageMs: performance.now() }
    }
    look()
    return health
  }

  /** Runs `job` with an open context; nothing happens where there is none. */
  function sounding(job: (context: AudioContext, output: AudioNode) => void): void {
    if (mode === 'numerals') return
    look()
    if (context?.state === 'running' && health === 'ok' && master) {
      job(context, master)
      return
    }
    const askedMs = performance.now()
    void unlock().then(() => {
      const stale = performance.now() - askedMs > STALE_MS
      if (context?.state === 'running' && master && !stale) job(context, master)
    })
  }

  const clipsOf = (of: AudioContext): ClipSource => (mode === 'voice' ? voice.clips(of) : noClips)

  /** Said when nothing of more weight is heard: counts come first, calls next, what a card says last. */
  function speak(asked: CuePlan, as: 'call' | 'say'): void {
    const plan = voice.asSaid(asked)
    sounding((on, output) => {
      const now = on.currentTime
      saying?.run.cut(now, 'all')
      saying = null
      voice.aloud('', 'en')
      const countS = counting && countEndS > now ? countEndS + AFTER_COUNT_S : 0
      const callS = calling && calling.run.endS > now ? calling.run.endS + AFTER_CALL_S : 0
      const fromS = Math.max(now + SOON_S, countS, callS)
      const run = schedule(on, output, plan, fromS, clipsOf(on))
      if (as === 'call') calling = { plan: asked, run }
      else saying = { plan: asked, run }
      const words = plan.cues.flatMap((cue) => ('word' in cue ? [cue.word] : []))
      if (mode === 'voice') voice.instead(words, 1000 * (Math.max(fromS, run.endS) - now))
    })
  }

  let hinting: ReturnType<typeof setTimeout> | undefined
  function hint(text: string, language: string, waitMs: number): void {
    clearTimeout(hinting)
    hinting = setTimeout(() => {
      const now = context?.currentTime ?? 0
      const endS = Math.max(counting ? countEndS : 0, calling?.run.endS ?? 0, saying?.run.endS ?? 0)
      if (mode !== 'voice') return
      if (endS > now) hint(text, language, 1000 * (endS - now + AFTER_CALL_S))
      else voice.aloud(text, language)
    }, waitMs)
  }

  function cutSpoken(atS: number): void {
    clearTimeout(hinting)
    voice.aloud('', 'en')
    calling?.run.cut(atS, 'all')
    saying?.run.cut(atS, 'all')
    calling = saying = null
  }

  let countEndS = 0
  function startCount(plan: CuePlan, tapMs: number, untilS: number): void {
    sounding((on, output) => {
      counting?.cut(on.currentTime, 'all')
      cutSpoken(on.currentTime)
      const fromS = startTime(on, tapMs)
      counting = schedule(on, output, plan, fromS, clipsOf(on))
      countEndS = fromS + untilS
    })
  }

  const now = (plan: CuePlan): void =>
    sounding((on, output) => schedule(on, output, plan, on.currentTime + SOON_S, clipsOf(on)))

  build()
  const timer = setInterval(look, LOOK_EVERY_MS)
  return {
    health: () => health,
    onHealth(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    unlock,
    setMode(next) {
      mode = next
      if (next !== 'voice') clearTimeout(hinting)
      if (next !== 'voice') voice.aloud('', 'en')
      if (next === 'numerals' && context) {
        counting?.cut(context.currentTime, 'all')
        cutSpoken(context.currentTime)
      }
    },
    count: (plan, tapMs) => startCount(plan, tapMs, plan.totals.outUntilS),
    drip: (afterS, tapMs, poured) => startCount(planDrip(afterS, poured), tapMs, 0),
    stop() {
      if (!context) return
      const now = context.currentTime
      const waits = calling && calling.run.fromS > now ? calling.plan : null
      counting?.cut(now, 'all')
      cutSpoken(now)
      counting = null
      if (waits) speak(waits, 'call')
    },
    hush() {
      if (!context) return
      counting?.cut(context.currentTime, 'out')
      countEndS = 0
    },
    call: (...called) => speak(planCall(...called), 'call'),
    say(words) {
      if (words.length === 0) {
        saying?.run.cut(context?.currentTime ?? 0, 'all')
        saying = null
      } else if (mode === 'voice') speak(planWords(words), 'say')
    },
    hint(text, language) {
      clearTimeout(hinting)
      voice.aloud('', language)
      if (text !== '') hint(text, language, HINT_AFTER_MS)
    },
    quiet: () => cutSpoken(context?.currentTime ?? 0),
    saying() {
      const now = context?.currentTime ?? 0
      return health === 'ok' && [calling, saying].some((each) => each !== null && each.run.endS > now)
    },
    warn(words) {
      now(planTone('refused'))
      if (mode === 'voice') speak(planWords(words, TONE_S.refused + GAP_S), 'call')
    },
    heard() {
      const now = context?.currentTime ?? 0
      if (voice.talks()) return true
      return [counting, calling?.run, saying?.run].some((run) => run?.sounds(now, RINGS_ON_S))
    },
    refused: () => now(planTone('refused')),
    saved: () => now(planTone('saved')),
    holding() {
      let run: Run | null = null
      let released = false
      sounding((on, output) => {
        if (!released) run = schedule(on, output, planTone('hold'), on.currentTime + SOON_S, noClips)
      })
      return () => {
        released = true
        if (context) run?.cut(context.currentTime, 'all')
      }
    },
    play: (plan, tapMs) => (tapMs === undefined ? now(plan) : startCount(plan, tapMs, lastS(plan))),
    close() {
      clearInterval(timer)
      clearTimeout(hinting)
      context?.close().catch(() => undefined)
      context = null
    },
  }
}

const lastS = (plan: CuePlan): number =>
  Math.max(0, ...plan.cues.map((cue) => cue.atS + ('tone' in cue ? cue.lastsS : TONE_S.in)))
