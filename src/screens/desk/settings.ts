import type { Settings } from '../../../shared/nouns.ts'
import { useDesk } from './desk-app.ts'

/** Options of a setting from its words, in the order they are written. */
export const optionsOf = <T extends string>(texts: Readonly<Record<T, string>>) =>
  (Object.keys(texts) as T[]).map((value) => ({ value, label: texts[value] }))

/** Languages to choose from, each by its own name. */
export const languageOptions = <T extends string>(codes: readonly T[]) =>
  codes.map((value) => ({
    value,
    label: new Intl.DisplayNames(value, { type: 'language' }).of(value) ?? value,
  }))

/** Stores one setting. */
export function useSet() {
  const { act } = useDesk()
  return <K extends keyof Settings>(key: K, value: Settings[K]) =>
    act({ do: 'set-settings', settings: { [key]: value } })
}
