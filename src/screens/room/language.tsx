import { useEffect, useRef } from 'preact/hooks'
import { Choice } from '../../ui/choice.tsx'
import { LANGUAGES } from '../../words/languages.ts'
import { useDesk } from '../desk/desk-app.ts'
import { useRoomWords } from '../desk/room-words.ts'
import { languageOptions, useSet } from '../desk/settings.ts'

/** Which language is written. Its words are fetched before a page is drawn, so the page is opened anew once that is kept. */
export function LanguageChoice() {
  const { table, health } = useDesk()
  const set = useSet()
  const w = useRoomWords()
  const { language } = table.value.settings
  const drawn = useRef(language)
  const anew = language !== drawn.current && health.value.saved === 'saved'
  useEffect(() => {
    if (anew) location.reload()
  }, [anew])
  return (
    <Choice
      label={w.language}
      options={[{ value: 'phone', label: w.asPhone }, ...languageOptions(LANGUAGES)]}
      value={language}
      onChoose={(chosen) => void set('language', chosen)}
    />
  )
}
