import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { openVoice } from '../../../src/device/voice.ts'

class Utterance {
  voice: { name: string } | null = null
  lang = ''
  constructor(readonly text: string) {}
}
const said: Utterance[] = []
const cancel = vi.fn()

/** A phone with these voices, its network gone before any clip was kept. */
function phone(...voices: { name: string; lang: string; localService: boolean }[]): void {
  // The first question only starts the search for voices (Chromium).
  let asked = 0
  vi.stubGlobal('speechSynthesis', {
    getVoices: () => (asked++ === 0 ? [] : voices),
    cancel,
    speak: (one: Utterance) => said.push(one),
  })
}

beforeEach(() => {
  vi.useFakeTimers()
  vi.resetModules()
  said.length = 0
  cancel.mockClear()
  vi.stubGlobal('SpeechSynthesisUtterance', Utterance)
  vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no network')))
})
afterEach(() => {
  vi.unstubAllGlobals()
  vi.useRealTimers()
})

const ANA = { name: 'Ana', lang: 'es-MX', localService: true }
const FAR = { name: 'Far', lang: 'es-ES', localService: false }
const EVE = { name: 'Eve', lang: 'en-GB', localService: true }

it('without clips Spanish is said by the phone, by a Spanish voice that needs no network, after what sounds', async () => {
  phone(EVE, FAR, ANA)
  const voice = openVoice()
  expect(await voice.load('es', './voice/')).toBe('failed')
  voice.instead(['stir', 'name:G:demo.gatepost', '2', 'pots'], 800)
  await vi.advanceTimersByTimeAsync(790)
  expect(said).toEqual([])
  await vi.advanceTimersByTimeAsync(20)
  expect(said).toEqual([{ text: 'remueve, G, 2, piezas', voice: ANA, lang: 'es-MX' }])
})

it('the latest words take the place of those before, and the way back to English is one setting', async () => {
  phone(EVE, ANA)
  const voice = openVoice()
  await voice.load('es', './voice/')
  voice.instead(['wax'], 0)
  voice.instead(['wax pan is on', 'are you beside it'], 0)
  await vi.advanceTimersByTimeAsync(10)
  expect(said.map(({ text }) => text)).toEqual(['la olla está encendida, ¿estás al lado?'])
  expect(cancel).toHaveBeenCalledTimes(1)
  await voice.load('en', './voice/')
  voice.instead(['wax'], 0)
  await vi.advanceTimersByTimeAsync(10)
  expect(said.at(-1)).toEqual({ text: 'wax', voice: EVE, lang: 'en-GB' })
})

it('nothing is said by a voice of another language or of a network, nor where the phone has none', async () => {
  phone(EVE, FAR)
  const voice = openVoice()
  await voice.load('es', './voice/')
  voice.instead(['wax'], 0)
  await vi.advanceTimersByTimeAsync(10)
  Reflect.deleteProperty(globalThis, 'speechSynthesis')
  voice.instead(['wax'], 0)
  await vi.advanceTimersByTimeAsync(10)
  expect(said).toEqual([])
})

it('a sentence is said by a voice of its language, after words that are being said, and is broken off alone', async () => {
  phone(EVE, ANA)
  const voice = openVoice()
  await voice.load('es', './voice/')
  voice.instead(['wax'], 0)
  await vi.advanceTimersByTimeAsync(10)
  const cancelled = cancel.mock.calls.length
  voice.aloud('¿Pie encerado?', 'es')
  await vi.advanceTimersByTimeAsync(10)
  expect(said.at(-1)).toMatchObject({ text: '¿Pie encerado?', voice: ANA, lang: 'es-MX' })
  expect(cancel).toHaveBeenCalledTimes(cancelled)
  expect(voice.talks()).toBe(true)
  voice.aloud('', 'es')
  expect(cancel).toHaveBeenCalledTimes(cancelled + 1)
  expect(voice.talks()).toBe(false)
  voice.aloud('', 'es')
  expect(cancel).toHaveBeenCalledTimes(cancelled + 1)
})
