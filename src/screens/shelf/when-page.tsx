import { useState } from 'preact/hooks'
import type { LoadState } from '../../table/model/load-state.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KILN_PAGE_WORDS } from '../../words/kiln-pages.ts'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { AgoKeys } from './ago-keys.tsx'
import { kilnRefusalText, useLoad } from './load-app.ts'

/** What can be said here to have been a while ago. */
export type LateDeed = 'on' | 'off' | 'bung'
/** The kiln was put on before the page was asked for. */
const ON_BEFORE_MIN = 5

interface WhenProps {
  readonly load: LoadState
  readonly deed: LateDeed
  readonly close: () => void
}

/** When the kiln went on or off, or the bung out. */
export function WhenPage({ load, deed, close }: WhenProps) {
  const { table, words, formats, act } = useLoad()
  const w = words.value.desk.shelf
  const pages = KILN_PAGE_WORDS[table.value.settings.language]
  const [agoMin, setAgo] = useState(deed === 'on' ? ON_BEFORE_MIN : 0)
  const [said, setSaid] = useState<string>()
  const { loadId } = load
  useBar((atMs) => {
    const late = agoMin === 0 ? {} : { agoMin }
    const refusal = act(
      deed === 'on'
        ? // What has been on for a while is not asked about any more.
          { do: 'light', loadId, sure: agoMin > 0, ...late }
        : { do: deed === 'off' ? 'switch-off' : 'pull-bung', loadId, ...late },
      atMs,
    )
    if (refusal) setSaid(kilnRefusalText(words.value, formats.value, table.peek(), refusal))
    else close()
  })
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        <p class="caution">{deed === 'on' ? w.care.light : w.care.cool}</p>
        <AgoKeys agoMin={agoMin} choose={setAgo} />
      </KilnMain>
      <KnuckleBar label={pages.late[deed]} />
    </>
  )
}
