/**
 * The phone's own speech, for words whose clips cannot be had. Late by anything up to a second and never on the
 * beat, so it says calls and cards and no counts. Voices that need a network are passed over.
 */

import type { VoiceLanguage } from '../../shared/languages.ts'
import { bucketOf, type WordId } from './sound-plan.ts'

/** Spanish of the words that are keyed by their English; in English a word's key is its text. Clips are made from it too. */
export const SPANISH: Readonly<Record<WordId, string>> = {
  in: 'dentro',
  out: 'fuera',
  ready: 'para tocar',
  'ready to touch': 'lista para tocar',
  drip: 'escurre',
  'sponge the foot': 'limpia el pie',
  'wipe the rim': 'limpia el borde',
  stir: 'remueve',
  'set down': 'déjala',
  touch: 'toca',
  dry: 'seca',
  at: 'en',
  next: 'siguiente',
  wax: 'cera',
  wipe: 'pasa la esponja',
  pour: 'vierte',
  seconds: 'segundos',
  'taken back': 'anulado',
  'one pot': 'una pieza',
  'one second': 'un segundo',
  'and a half': 'y medio',
  pots: 'piezas',
  'return it to': 'devuélvelo a',
  'check the foot': 'revisa el pie',
  'lid on': 'pon la tapa',
  tools: 'herramientas',
  'settling bucket': 'cubo de decantar',
  'wet mop': 'friega en mojado',
  coats: 'capas',
  'one coat': 'una capa',
  'wax pan is on': 'la olla está encendida',
  'are you beside it': '¿estás al lado?',
  'was it': '¿es así?',
  'already has': 'ya tiene',
  'really again': '¿otra vez?',
  'the plan says': 'el plan dice',
  dips: 'baños',
  'one dip': 'un baño',
  'you decide': 'decide tú',
  collar: 'la franja',
  'to the skirt': 'hasta la falda',
  'rim first': 'el borde primero',
  'foot first': 'el pie primero',
  'one half': 'una mitad',
  'other half': 'la otra mitad',
  shelf: 'placa',
  'on stilts': 'sobre tacos',
  'three posts of': 'tres postes de',
  'one inch': 'una pulgada',
  inches: 'pulgadas',
  'and one half': 'y media',
  'one hundred': 'cien',
  'one hundred and': 'ciento',
  'five hundred': 'quinientos',
  hundred: 'cientos',
  degrees: 'grados',
  cone: 'cono',
  'down?': '¿caído?',
  'lid from': 'tapa desde',
  below: 'por debajo de',
  'hold is over': 'meseta cumplida',
  about: 'hacia',
  past: 'y',
  to: 'menos',
  midnight: 'las doce de la noche',
  noon: 'las doce del día',
  'one o’clock': 'la una',
  'o’clock': 'las',
  tomorrow: 'mañana',
  'read it again': 'vuelve a leer',
}

/** The text of words, one after another. */
export const textOf = (words: readonly WordId[], language: VoiceLanguage): string =>
  words
    .flatMap((word) => {
      const { bucketId, letter } = bucketOf(word)
      if (bucketId !== undefined) return letter ?? []
      return language === 'es' ? (SPANISH[word] ?? word) : word
    })
    .join(', ')

// The first question only starts the search for voices.
if ('speechSynthesis' in globalThis) speechSynthesis.getVoices()

/** A voice of this phone that needs no network. */
const voiceFor = (language: string) =>
  speechSynthesis.getVoices().find((v) => v.localService && v.lang.startsWith(language))

function utter(text: string, language: string): SpeechSynthesisUtterance | undefined {
  const voice = voiceFor(language)
  if (!voice) return undefined
  const saying = new SpeechSynthesisUtterance(text)
  saying.voice = voice
  // Android passes over the voice unless the language is set as well.
  saying.lang = voice.lang
  return saying
}

let aloud: SpeechSynthesisUtterance | undefined

/** Says a sentence once what it was asked for before is said. Nothing where the phone has no such voice. */
export function sayAloud(text: string, language: string): void {
  if (!('speechSynthesis' in globalThis)) return
  const saying = utter(text, language)
  if (!saying) return
  aloud = saying
  saying.onend = saying.onerror = () => {
    if (aloud === saying) aloud = undefined
  }
  speechSynthesis.speak(saying)
}

/** Whether such a sentence is being said. */
export const saysAloud = (): boolean => aloud !== undefined

/** Breaks such a sentence off; what else is being said goes on. */
export function hushAloud(): void {
  if (!aloud) return
  aloud = undefined
  speechSynthesis.cancel()
}

let timer: ReturnType<typeof setTimeout> | undefined

/** Says words after a while, instead of whatever was being said. Nothing where the phone has no such voice. */
export function sayAfter(words: readonly WordId[], language: VoiceLanguage, afterMs: number): void {
  clearTimeout(timer)
  const text = textOf(words, language)
  if (text === '' || !('speechSynthesis' in globalThis)) return
  timer = setTimeout(() => {
    const saying = utter(text, language)
    if (!saying) return
    aloud = undefined
    speechSynthesis.cancel()
    speechSynthesis.speak(saying)
  }, afterMs)
}
