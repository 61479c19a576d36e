/** The ringing track on a bare page: built by the app's modules, decoded by the browser, heard by numbers. */
import { openClock } from '../../../src/device/clock.ts'
import { openLifecycle } from '../../../src/device/lifecycle.ts'
import type { SleepReason, TapeCall, Wake } from '../../../src/device/ports.ts'
import { openTape } from '../../../src/device/tape.ts'
import type { TapeParts, TrackCall } from '../../../src/device/tape-track.ts'
import { buildTrack, cutParts } from '../../../src/device/tape-track.ts'
import type { Onset } from './onsets.ts'
import { onsets } from './onsets.ts'

const bytesOf = async (name: string): Promise<Uint8Array<ArrayBuffer>> =>
  new Uint8Array(await (await fetch(`/tape/${name}.mp3`)).arrayBuffer())

async function loadParts(): Promise<TapeParts> {
  const table = (await (await fetch('/tape/parts.json')).json()) as Record<string, unknown>
  const calls = cutParts(await bytesOf('calls'), table.calls)
  const words = cutParts(await bytesOf('en'), table.en)
  return { hum: await bytesOf('hum'), parts: new Map([...calls, ...words]) }
}

const blobOf = (pieces: readonly Uint8Array<ArrayBuffer>[]): Blob =>
  new Blob([...pieces], { type: 'audio/mpeg' })

/** Sounds of a decoded track, the loudest sample of its hum, and the lengths planned and decoded. */
async function heard(
  calls: readonly TrackCall[],
  spoken: boolean,
): Promise<{ sounds: Onset[]; humPeak: number; lengthS: number; decodedS: number }> {
  const track = buildTrack(await loadParts(), calls, spoken)
  const decoder = new OfflineAudioContext(1, 1, 8000)
  const buffer = await decoder.decodeAudioData(await blobOf(track.pieces).arrayBuffer())
  const samples = buffer.getChannelData(0)
  const hum = samples.subarray(8000, 16_000).reduce((max, x) => Math.max(max, Math.abs(x)), 0)
  // Pauses inside a call stay under half a second.
  return {
    sounds: onsets(samples, buffer.sampleRate, 0.02, 0.5),
    humPeak: hum,
    lengthS: track.lengthS,
    decodedS: buffer.duration,
  }
}

/** Time to build a track of `hours` with a call each ten minutes, ms, and what a media element makes of it. */
async function longTrack(
  hours: number,
): Promise<{ buildMs: number; bytes: number; plannedS: number; durationS: number }> {
  const tape = await loadParts()
  const calls = Array.from({ length: hours * 6 }, (_, i) => ({
    dueS: 600 * (i + 1) - 420,
    bucketLetter: 'G',
    places: [{ board: 'A', place: 1 + (i % 9) }],
  }))
  const from = performance.now()
  const track = buildTrack(tape, calls, true)
  const blob = blobOf(track.pieces)
  const buildMs = performance.now() - from
  const element = new Audio(URL.createObjectURL(blob))
  await new Promise((resolve) => element.addEventListener('loadedmetadata', resolve, { once: true }))
  return { buildMs, bytes: blob.size, plannedS: track.lengthS, durationS: element.duration }
}

/** The one element the track plays in. */
let element: HTMLMediaElement | undefined
const play = HTMLMediaElement.prototype.play
HTMLMediaElement.prototype.play = function () {
  element = this
  return play.call(this)
}
const tape = openTape()
const lifecycle = openLifecycle(openClock())
const wakes: Wake[] = []
const sleeps: SleepReason[] = []
lifecycle.onWake((wake) => wakes.push(wake))
lifecycle.onSleep((reason) => sleeps.push(reason))

let ticks = 0
setInterval(() => ticks++, 100)

const harness = {
  heard,
  longTrack,
  load: () => tape.load('en', '/tape/', true),
  state: () => tape.state(),
  title: () => navigator.mediaSession.metadata?.title,
  off: () => tape.off(),
  answered: () => tape.answered(),
  muted: () => element?.muted,
  resume: () => tape.resume(),
  ticks: () => ticks,
  woken: () => wakes.map(({ reason }) => reason),
  life: () => ({ wakes: wakes.splice(0), sleeps: sleeps.splice(0) }),
  /** Arms the tape inside the next click. */
  armFromClick(afterS: number) {
    document.addEventListener(
      'click',
      () => {
        const calls: TapeCall[] = [
          { dueMs: Date.now() + 1000 * afterS, bucketLetter: 'G', places: [{ board: 'A', place: 3 }] },
        ]
        void tape.arm(calls, 'Next 14:32, A 3')
      },
      { once: true },
    )
  },
}
export type TapeHarness = typeof harness

declare global {
  interface Window {
    tapeHarness: TapeHarness
  }
}
window.tapeHarness = harness
