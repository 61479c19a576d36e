import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import { unitLabel } from '../../table/entry/entry.ts'
import type { Action, Refusal } from '../../table/model/action.ts'
import { LIMITS } from '../../table/model/limits.ts'
import { thingOf } from '../../table/model/load-things.ts'
import type { Table } from '../../table/model/state.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { Formats } from '../../words/format.ts'
import { refusalText, useApp } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { amount } from '../text/amounts.ts'
import { nameOf } from '../text/pot-text.ts'

const MIN_MS = 60_000

type Act = (action: Action, atMs?: number) => Refusal | undefined

const ActContext = createContext<Act | undefined>(undefined)
/** Lends what decides on deeds at the kiln to its pages: they are fetched without it. */
export const ActProvider = ActContext.Provider

/** The program as the kiln's screen sees it: what is done there is decided here. */
export function useLoad() {
  const app = useApp()
  const { words } = useDesk()
  const act = useContext(ActContext)
  if (!act) throw new Error('a page of the kiln outside its screen')
  return { ...app, words, act }
}

/** What a thing in the kiln is called: a pot by its number. */
export function thingName(words: DeskWords, table: Table, key: string): string {
  const { what, potId } = thingOf(key)
  const w = words.desk.shelf
  return what === 'tile'
    ? w.tile
    : what === 'cones'
      ? w.cones
      : String(nameOf(words, table.pots[potId ?? '']))
}

/** Why something was refused at the kiln: field, value and range where there are such. */
export function kilnRefusalText(words: DeskWords, formats: Formats, table: Table, refusal: Refusal): string {
  const w = words.desk.shelf
  const { field = '', facts = {} } = refusal
  const { units } = table.settings
  const number = String(facts.number ?? '')
  const mm = (fact: string | number | undefined) => formats.mm(Number(fact ?? 0))
  if (refusal.code === 'at-kiln') {
    if (field === 'too-tall') return w.tooTall(number, mm(facts.value), mm(facts.most))
    if (field === 'too-wide') return w.tooWide(number, mm(facts.value), mm(facts.most))
    const { temp } = formats
    if (field === 'rose') return w.rose(temp(Number(facts.value)))
    if (field === 'unfired')
      return facts.value === undefined
        ? w.unread(number, formats.span(Number(facts.onMin) * MIN_MS))
        : w.unfired(number, temp(Number(facts.value)))
    if (field === 'leap') return w.leap(temp(Number(facts.value)))
    if (field === 'fahrenheit' || field === 'hot-lid') {
      const [value, asC] = [Number(facts.value), Number(facts.asC)]
      // The number as typed, in the unit it was not typed in.
      const [number, unit] = units === 'us' ? [asC, 'metric' as const] : [value, 'us' as const]
      const typed = `${Math.round(number)} ${unitLabel('readC', unit)}`
      return w[field === 'hot-lid' ? 'hotUnit' : 'otherUnit'](temp(value), typed, temp(asC))
    }
    const text = w.refusal[field]
    return typeof text === 'function' ? text(number) : (text ?? refusalText(words, refusal))
  }
  if (refusal.code === 'not-a-cone')
    return w.notACone(String(facts.value), words.desk.range(String(facts.least), String(facts.most)))
  if (refusal.code === 'out-of-range' && field === 'agoMin') {
    const most = Number(facts.most)
    return most < LIMITS.agoMin.most ? w.agoMost(formats.span(most * MIN_MS)) : w.agoDay
  }
  if (refusal.code === 'out-of-range' && field === 'readC') {
    const temp = (value: string | number | undefined) => amount('readC', Number(value), units)
    return w.outOf(w.bar.reading, temp(facts.value), words.desk.range(temp(facts.least), temp(facts.most)))
  }
  return refusalText(words, refusal)
}
