import { computed, type ReadonlySignal } from '@preact/signals'
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import { decideSetup } from '../../table/decide/decide-setup.ts'
import { DESK_WORDS, type DeskWords } from '../../words/desk.ts'
import type { App } from '../app.ts'

/** The program as screens for clean hands see it: with their words, and with what decides on setting up. */
export interface DeskApp extends App {
  readonly words: ReadonlySignal<DeskWords>
}

export const asDesk = (app: App): DeskApp => ({
  ...app,
  act: (action, atMs) => app.act(action, atMs, decideSetup),
  words: computed(() => DESK_WORDS[app.table.value.settings.language]),
})

const DeskContext = createContext<DeskApp | undefined>(undefined)
export const DeskProvider = DeskContext.Provider

export function useDesk(): DeskApp {
  const app = useContext(DeskContext)
  if (!app) throw new Error('a screen for clean hands outside the desk')
  return app
}
