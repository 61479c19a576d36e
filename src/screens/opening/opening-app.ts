import { useComputed } from '@preact/signals'
import type { RunFacts } from '../../../shared/opening.ts'
import { decideOpening } from '../../table/decide/decide-opening.ts'
import { decideSetup } from '../../table/decide/decide-setup.ts'
import type { More } from '../../table/decide/decision.ts'
import { type FiredPot, firedOf } from '../../table/fired/fired-pot.ts'
import type { Action, Refusal } from '../../table/model/action.ts'
import type { PotState } from '../../table/model/state.ts'
import type { Formats } from '../../words/format.ts'
import { decimal } from '../../words/number.ts'
import { OPENING_WORDS, type OpeningWords } from '../../words/opening.ts'
import { refusalText, useApp } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'

const more: More = (table, action, stamp) => decideOpening(table, action) ?? decideSetup(table, action, stamp)

/** The program as the opening sees it: what is guessed and judged there is decided here. */
export function useOpening() {
  const app = useApp()
  const { words: desk } = useDesk()
  const words = useComputed<OpeningWords>(() => ({
    ...desk.value,
    opening: OPENING_WORDS[app.table.value.settings.language],
  }))
  const act = (action: Action, atMs?: number) => app.act(action, atMs, more)
  return { ...app, words, act }
}

/** Why something was refused: field, value and range where there are such. */
export function openingRefusal(words: OpeningWords, formats: Formats, refusal: Refusal): string {
  const w = words.opening
  const { code, field = '', facts = {} } = refusal
  if (code === 'at-kiln') return w.refusal[field]?.(String(facts.number ?? '')) ?? refusalText(words, refusal)
  const name = w.field[field]
  if (code !== 'out-of-range' || name === undefined) return refusalText(words, refusal)
  const mm = (value: string | number | undefined) => formats.mm(Number(value))
  return w.outOf(name, mm(facts.value), words.desk.range(mm(facts.least), mm(facts.most)))
}

/** How far the mean front came, mm or the shelf; undefined where that was not measured. */
export const reachOf = (run: RunFacts | undefined): number | 'shelf' | undefined =>
  run?.is === 'measured' ? run.mm : run?.is === 'shelf' ? 'shelf' : undefined

/** Whether any of it came down to the shelf. */
export const onShelf = (run: RunFacts): boolean =>
  run.is === 'shelf' || (run.is === 'measured' && run.longestMm === 'shelf')

/** How far a melt came, in a few letters. */
export function runText(words: OpeningWords, formats: Formats, run: RunFacts): string {
  const w = words.opening.run
  switch (run.is) {
    case 'none':
      return w.none
    case 'shelf':
      return w.onShelf
    case 'some':
      return w.some
    case 'measured': {
      // A number and its unit stay on one line.
      const mm = (length: number) => formats.mm(length).replaceAll(' ', '\u00a0')
      const { longestMm } = run
      if (longestMm === undefined || longestMm === run.mm) return run.mm === 0 ? w.none : mm(run.mm)
      return w.dripTo(mm(run.mm), longestMm === 'shelf' ? w.onShelf : mm(longestMm))
    }
  }
}

/** A place on the wall as it is said: none, mm, or the shelf. */
export function reachText(words: OpeningWords, formats: Formats, mm: number | 'shelf'): string {
  const w = words.opening.run
  return mm === 'shelf' ? w.onShelf : mm === 0 ? w.none : formats.mm(mm)
}

/** Whether it ran at all, by what was said of it. */
export const didRun = (run: RunFacts | undefined): boolean =>
  run !== undefined && run.is !== 'none' && !(run.is === 'measured' && run.mm === 0 && !run.longestMm)

/** Nearer to one a factor is no other number, logarithm. */
const SAME_LN = 0.05
/** So many times what tiles tell, in figures. */
export const figure = (factor: number): string => decimal(factor, factor < 0.1 ? 2 : 1)

/** A factor as it is said: as the tiles say, or so many times it. */
export function timesText(words: OpeningWords, factor: number): string {
  const w = words.opening.taught
  return Math.abs(Math.log(factor)) < SAME_LN ? w.asTold : w.ofTiles(figure(factor), factor >= 1)
}

/** Nothing wrong with it: no run past the foot line, not stuck, no fault. */
export const isGood = ({ run, stuck, faults }: Found): boolean =>
  !didRun(run) && !stuck && faults.length === 0

type Found = Pick<NonNullable<FiredPot['found']>, 'run' | 'stuck' | 'faults'>

/** What was found, fault by fault; good where there is nothing. */
export function foundText(words: OpeningWords, formats: Formats, { run, stuck, faults }: Found): string {
  const w = words.opening
  const ran = run && didRun(run) ? runText(words, formats, run) : undefined
  const all = [
    ran === undefined || run?.is === 'some' || run?.is === 'shelf' ? ran : `${w.run.some} ${ran}`,
    stuck && w.stuckIs[stuck],
    ...faults.map((fault) => w.fault[fault]),
  ].filter((part) => part !== undefined)
  return all.length > 0 ? all.join(', ') : w.is.good
}

/** The same of a pot, with what was seen since. */
export function lookedText(words: OpeningWords, formats: Formats, pot: PotState): string {
  const { found, looks } = firedOf(pot)
  const since = [...new Set(looks.flatMap(({ faults }) => faults))].map((fault) => words.opening.fault[fault])
  if (!found) return words.opening.is.open
  const first = foundText(words, formats, found)
  return since.length > 0 ? `${first}; ${words.opening.again.found(since.join(', '))}` : first
}

/** How many of these pots came out good, ran, stuck, or have a fault; a pot may be in several. Empty where none was judged. */
export function tallyText(words: OpeningWords, pots: readonly PotState[]): string {
  const found = pots.flatMap((pot) => firedOf(pot).found ?? [])
  const tally = {
    good: found.filter(isGood).length,
    ran: found.filter(({ run }) => didRun(run)).length,
    stuck: found.filter(({ stuck }) => stuck).length,
    faults: found.filter(({ faults }) => faults.length > 0).length,
  }
  return (['good', 'ran', 'stuck', 'faults'] as const)
    .filter((what) => tally[what] > 0)
    .map((what) => words.opening.tally[what](tally[what]))
    .join(', ')
}
