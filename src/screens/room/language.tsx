import { useEffect, useRef } from 'preact/hooks'
import { Choice } from '../../ui/choice.tsx'
import { LANGUAGES } from '../../words/languages.ts'
import { useDesk } from '../desk/desk-app.ts'
import { useRoomWords } from '../desk/room-words.ts'
import { languageOptions, useSet } from '../desk/settings.ts'

/** The words of a language are fetched before a page is drawn: it is opened anew once another is kept. */
export function useLanguageAnew(may = true): void {
  const { table, health } = useDesk()
  const { language } = table.value.settings
  const drawn = useRef(language)
  const anew = may && language !== drawn.current && health.value.saved === 'saved'
  useEffect(() => {
    if (anew) location.reload()
  }, [anew])
}

/** Which language is written. */
export function LanguageChoice() {
  const { table } = useDesk()
  const set = useSet()
  const w = useRoomWords()
  const { language } = table.value.settings
  useLanguageAnew()
  return (
    <Choice
      label={w.language}
      options={[{ value: 'phone', label: w.asPhone }, ...languageOptions(LANGUAGES)]}
      value={language}
      onChoose={(chosen) => void set('language', chosen)}
    />
  )
}
