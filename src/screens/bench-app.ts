import { computed, type ReadonlySignal } from '@preact/signals'
import { BENCH_WORDS, type BenchWords } from '../words/bench.ts'
import { type App, useApp } from './app.ts'

/** The program as all that comes after the first cards sees it: with every word of the bench. */
export interface BenchApp extends App {
  readonly words: ReadonlySignal<BenchWords>
}

const benches = new WeakMap<App, BenchApp>()

/** The program for what comes after the first cards. */
export function useBench(): BenchApp {
  const app = useApp()
  const bench = benches.get(app) ?? {
    ...app,
    words: computed(() => BENCH_WORDS[app.table.value.settings.language]),
  }
  benches.set(app, bench)
  return bench
}
