import { cards } from './en/cards.ts'
import { waits } from './en/waits.ts'
import { byLanguage } from './languages.ts'

/** Words of a step that hands do on one pot with one hit. */
export interface HandWords {
  readonly bar: string
  readonly title: string
  /** Of a lid, whose edge is what a foot is to a pot: left out where the step knows no difference. */
  readonly lidTitle?: string
  readonly text: string
  /** How many are left, this one among them. */
  readonly more: (n: number) => string
  /** At the step; by the kind of wax where that matters. */
  readonly caution?: string | { readonly hot: string; readonly water: string }
}

/** All words of the bench. */
export type Words = typeof cards & { readonly bench: typeof waits }

/** By language. A new language is a new folder of the same shapes. */
export const WORDS = byLanguage<Words>({ ...cards, bench: { ...cards.bench, ...waits } }, (all) => all.bench)
