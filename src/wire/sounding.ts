import type { TableEvent } from '../../shared/events.ts'
import type { Sound } from '../device/ports.ts'
import { openSound } from '../device/sound.ts'
import { planCount } from '../device/sound-plan.ts'
import { openVoice } from '../device/voice.ts'
import { outputsOf } from '../table/outputs.ts'
import type { Table } from '../table/state.ts'
import type { Devices } from './devices.ts'

/** The clips are fetched when the first screen has long been drawn. */
const VOICE_AFTER_MS = 1500

/** What sounds: fetched after the first card. */
export interface Sounding {
  readonly sound: Sound
  /** Sounds what a hit means at once, before it is stored: `atMs` is the tap in page time. */
  hit(table: Table, events: readonly TableEvent[], atMs: number): void
  /** Makes the phone do what the state asks for: stay awake, call what is ready, and say it again. */
  follow(table: Table, now: number): void
  /** How counts are heard. */
  use(mode: Table['settings']['sound'], language: Table['settings']['language']): void
}

export function openSounding(devices: Devices): Sounding {
  const voice = openVoice()
  const sound = openSound(voice)
  const openedMs = performance.now()
  return {
    sound,
    hit: (table, events, atMs) => soundHit(sound, devices.haptics, table, events, atMs),
    follow: reconciler(sound, devices),
    use(mode, language) {
      sound.setMode(mode)
      const waitMs = Math.max(0, openedMs + VOICE_AFTER_MS - performance.now())
      if (mode === 'voice' && voice.state() === 'none')
        setTimeout(() => voice.state() === 'none' && void voice.load(language, './voice/'), waitMs)
    },
  }
}

function soundHit(
  sound: Sound,
  haptics: Devices['haptics'],
  table: Table,
  events: readonly TableEvent[],
  atMs: number,
): void {
  for (const event of events) {
    switch (event.kind) {
      case 'dipped':
        if (event.told) break
        sound.count(
          planCount({
            leadS: event.leadS,
            lowerS: event.lowerS,
            holdS: event.holdS,
            dripS: table.settings.dripS,
          }),
          atMs,
        )
        haptics.feel('twoShort')
        return
      case 'count-cancelled':
        sound.stop()
        haptics.feel('refused')
        return
      case 'count-stopped':
        sound.stop()
        sound.drip(table.settings.dripS, atMs)
        haptics.feel('out')
        return
    }
  }
  haptics.feel('short')
}

function reconciler(sound: Sound, devices: Devices) {
  let called = ''
  let awake: boolean | undefined
  return (table: Table, now: number): void => {
    const outputs = outputsOf(table, now)
    if (outputs.awake !== awake) {
      awake = outputs.awake
      devices.awake.want(outputs.awake)
    }
    if (!outputs.call) {
      called = ''
      return
    }
    if (outputs.call.key === called) return
    called = outputs.call.key
    sound.call(outputs.call.bucketLetter, outputs.call.places)
    devices.haptics.feel('long')
  }
}
