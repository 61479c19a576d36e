import { front } from './en/front.ts'

export type FrontWords = typeof front

/** The first screen's words by language. */
export const FRONT_WORDS = { en: front }
