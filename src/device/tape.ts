/**
 * Rings with the screen off: one media element plays a track with the calls inside it. Built and started
 * only inside a tap; a track cannot be changed while the phone is locked. It ends the person's own music.
 */

import type { VoiceLanguage } from '../../shared/languages.ts'
import type { MediaButton, Tape, TapeState, Unsubscribe } from './ports.ts'
import type { Saying, TapeParts } from './tape-track.ts'
import { buildTrack, cutParts } from './tape-track.ts'

export interface LoadableTape extends Tape {
  /** Fetches the parts; `base` is the address of their folder, ending in a slash. False when that failed. */
  load(language: VoiceLanguage, base: string, spoken: boolean): Promise<boolean>
  close(): void
}

/** The page may seek to where the track should be by now, when it plays this much late. */
const LATE_S = 0.1

export function openTape(): LoadableTape {
  const listeners = new Set<(state: TapeState) => void>()
  const buttons = new Set<(button: MediaButton) => void>()
  const element = new Audio()
  let state: TapeState = 'off'
  let parts: TapeParts | null = null
  let loading: Promise<TapeParts | null> = Promise.resolve(null)
  let latest = 0
  let spoken = true
  let fromMs = 0
  let sayings: readonly Saying[] = []
  /** Calls due up to here in the track were heard. */
  let answeredS = Number.NEGATIVE_INFINITY

  const set = (next: TapeState): TapeState => {
    if (next !== state) {
      state = next
      for (const listener of listeners) listener(next)
    }
    return state
  }
  const shouldBeAtS = (): number => (Date.now() - fromMs) / 1000
  const catchUp = (): void => {
    const wantedS = shouldBeAtS()
    if (wantedS < element.duration && Math.abs(element.currentTime - wantedS) > LATE_S)
      element.currentTime = wantedS
  }
  const play = async (): Promise<TapeState> => {
    try {
      await element.play()
      catchUp()
      return set('playing')
    } catch {
      return set('failed')
    }
  }
  const off = (): void => {
    latest++
    const address = element.src
    set('off')
    element.pause()
    element.removeAttribute('src')
    if (address) URL.revokeObjectURL(address)
    if ('mediaSession' in navigator) navigator.mediaSession.metadata = null
  }
  element.addEventListener('pause', () => {
    if (state === 'playing' && !element.ended) set('interrupted')
  })
  element.addEventListener('ended', off)
  element.addEventListener('error', () => {
    if (state !== 'off') set('failed')
  })
  // A few seconds' silence at a time, so that a page that dies meanwhile has silenced no other call.
  const hushAnswered = (): void => {
    const atS = element.currentTime
    element.muted = sayings.some((s) => s.dueS <= answeredS && s.atS <= atS && atS < s.untilS)
  }
  element.addEventListener('timeupdate', hushAnswered)
  const pressed = (button: MediaButton) => (): void => {
    for (const listener of buttons) listener(button)
  }
  onMedia('play', pressed('play'))
  onMedia('pause', pressed('pause'))
  onMedia('nexttrack', pressed('next'))

  const subscribe = <T>(set: Set<T>, listener: T): Unsubscribe => {
    set.add(listener)
    return () => set.delete(listener)
  }
  return {
    state: () => state,
    onChange: (listener) => subscribe(listeners, listener),
    onButton: (listener) => subscribe(buttons, listener),
    answered() {
      answeredS = shouldBeAtS()
      hushAnswered()
    },
    async load(language, base, withWords) {
      spoken = withWords
      const mine = loadParts(language, base).catch(() => null)
      loading = mine
      const loaded = await mine
      if (loading === mine) parts = loaded
      return loaded !== null
    },
    async arm(calls, title, quietUntilMs = 0) {
      if (calls.length === 0) {
        off()
        return state
      }
      latest++
      const mine = latest
      // Asked for before the parts are here: browsers let a tap start a track some seconds later.
      const kit = parts ?? (await loading)
      if (mine !== latest) return state
      if (!kit) return set('failed')
      const before = element.src
      fromMs = Date.now()
      const due = calls.map((call) => ({ ...call, dueS: (call.dueMs - fromMs) / 1000 }))
      const track = buildTrack(kit, due, spoken, Math.max(0, quietUntilMs - fromMs) / 1000)
      sayings = track.sayings
      answeredS = Number.NEGATIVE_INFINITY
      element.muted = false
      element.src = URL.createObjectURL(new Blob([...track.pieces], { type: 'audio/mpeg' }))
      if (before) URL.revokeObjectURL(before)
      const playing = play()
      showOnLock(title, track.lengthS)
      return playing
    },
    async resume() {
      return state === 'interrupted' && shouldBeAtS() < element.duration ? play() : state
    },
    pause: () => element.pause(),
    off,
    close: off,
  }
}

async function loadParts(language: VoiceLanguage, base: string): Promise<TapeParts> {
  const bytesOf = async (name: string): Promise<Uint8Array<ArrayBuffer>> =>
    new Uint8Array(await (await fetch(`${base}${name}.mp3`)).arrayBuffer())
  const [table, hum, calls, words] = await Promise.all([
    fetch(`${base}parts.json`).then((response): Promise<Record<string, unknown>> => response.json()),
    bytesOf('hum'),
    bytesOf('calls'),
    bytesOf(language),
  ])
  const cut = [...cutParts(calls, table.calls), ...cutParts(words, table[language])]
  return { hum, parts: new Map(cut) }
}

function onMedia(action: MediaSessionAction, handler: () => void): void {
  try {
    navigator.mediaSession?.setActionHandler(action, handler)
  } catch {
    // An action this browser does not know.
  }
}

function showOnLock(title: string, lengthS: number): void {
  if (!('mediaSession' in navigator)) return
  navigator.mediaSession.metadata = new MediaMetadata({ title, artist: 'Bucketside' })
  navigator.mediaSession.setPositionState?.({ duration: lengthS, position: 0 })
}
