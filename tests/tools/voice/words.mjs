/**
 * What the voice can say. A word's key is the same in every language: a number, a capital letter, or its
 * English text. The values are what the synthesiser reads.
 */
import { runnerImport } from 'vite'
import { at } from '../project.mjs'

const range = (from, to) => Array.from({ length: to - from + 1 }, (_, i) => from + i)

const EN_ONES = [
  ...['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven'],
  ...['twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'],
]
const EN_TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety']
const enNumber = (n) =>
  n < 20 ? EN_ONES[n] : n % 10 === 0 ? EN_TENS[n / 10] : `${EN_TENS[Math.floor(n / 10)]} ${EN_ONES[n % 10]}`

const ES_ONES = [
  ...['cero', 'uno', 'dos', 'tres', 'cuatro', 'cinco', 'seis', 'siete', 'ocho', 'nueve', 'diez', 'once'],
  ...['doce', 'trece', 'catorce', 'quince', 'dieciséis', 'diecisiete', 'dieciocho', 'diecinueve', 'veinte'],
  ...['veintiuno', 'veintidós', 'veintitrés', 'veinticuatro', 'veinticinco', 'veintiséis', 'veintisiete'],
  ...['veintiocho', 'veintinueve'],
]
const ES_TENS = ['', '', '', 'treinta', 'cuarenta', 'cincuenta', 'sesenta', 'setenta', 'ochenta', 'noventa']
const esNumber = (n) =>
  n < 30 ? ES_ONES[n] : n % 10 === 0 ? ES_TENS[n / 10] : `${ES_TENS[Math.floor(n / 10)]} y ${ES_ONES[n % 10]}`

const LETTERS = Array.from('ABCDEFGHIJKLMNOPQRSTUVWXYZ')
const ES_LETTERS = [
  ...['a', 'be', 'ce', 'de', 'e', 'efe', 'ge', 'hache', 'i', 'jota', 'ka', 'ele', 'eme', 'ene', 'o', 'pe'],
  ...['cu', 'erre', 'ese', 'te', 'u', 'uve', 'doble uve', 'equis', 'i griega', 'zeta'],
]

/** English key and Spanish text, as the phone's own speech has them. */
const { SPANISH: CALLS } = (await runnerImport(at('src/device/speech.ts'))).module

const table = (numbers, letters, calls) => ({
  ...Object.fromEntries(range(0, 99).map((n) => [String(n), numbers(n)])),
  ...Object.fromEntries(LETTERS.map((letter, i) => [letter, letters[i]])),
  ...calls,
})

export const WORDS = {
  en: table(enNumber, LETTERS, Object.fromEntries(Object.keys(CALLS).map((key) => [key, key]))),
  es: table(esNumber, ES_LETTERS, CALLS),
}

/** Words that are said on their own in the track that rings with the screen off. */
export const TAPE_WORDS = [...range(1, 12).map(String), ...LETTERS, 'ready']
