import { computed, type ReadonlySignal } from '@preact/signals'
import { WHOLE_WORDS, type WholeWords } from '../words/whole-index.ts'
import { type App, useApp } from './app.ts'

/** The program as all that comes after the first cards sees it: with every word of the bench. */
export interface Whole extends App {
  readonly words: ReadonlySignal<WholeWords>
}

const wholes = new WeakMap<App, Whole>()

/** The program for what comes after the first cards. */
export function useWhole(): Whole {
  const app = useApp()
  const whole = wholes.get(app) ?? {
    ...app,
    words: computed(() => WHOLE_WORDS[app.table.value.settings.language]),
  }
  wholes.set(app, whole)
  return whole
}
