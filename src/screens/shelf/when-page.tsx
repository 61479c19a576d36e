import { useState } from 'preact/hooks'
import { stageOf } from '../../table/load/loads.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KILN_CARE_WORDS } from '../../words/kiln-care.ts'
import { KILN_PAGE_WORDS } from '../../words/kiln-pages.ts'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { AgoKeys } from './ago-keys.tsx'
import { kilnRefusalText, useLoad } from './load-app.ts'

/** What can be said here to have been a while ago. */
export type LateDeed = 'on' | 'off' | 'bung'
/** What the bar would have said now was before the page was asked for. */
const BEFORE_MIN = 5

interface WhenProps {
  readonly load: LoadState
  readonly deed: LateDeed
  readonly close: () => void
}

/** When the kiln went on or off, or the bung out. */
export function WhenPage({ load, deed, close }: WhenProps) {
  const { table, now, words, formats, act } = useLoad()
  const w = words.value.desk.shelf
  const care = KILN_CARE_WORDS[table.value.settings.language]
  const pages = KILN_PAGE_WORDS[table.value.settings.language]
  const isBar = deed === 'on' || (deed === 'off' && stageOf(table.peek(), load, now.peek()).is === 'off')
  const [agoMin, setAgo] = useState(isBar ? BEFORE_MIN : 0)
  const [said, setSaid] = useState<string>()
  const [asked, setAsked] = useState<'rose' | 'unfired'>()
  const { loadId } = load
  const keep = (sure: boolean, atMs?: number) => {
    const late = agoMin === 0 ? {} : { agoMin }
    const refusal = act(
      deed === 'on'
        ? // What has been on for a while is not asked about any more.
          { do: 'light', loadId, sure: agoMin > 0, ...late }
        : deed === 'off'
          ? { do: 'switch-off', loadId, sure, ...late }
          : { do: 'pull-bung', loadId, ...late },
      atMs,
    )
    const field = refusal?.field
    setAsked(field === 'rose' || field === 'unfired' ? field : undefined)
    if (refusal) setSaid(kilnRefusalText(words.value, formats.value, table.peek(), refusal))
    else close()
  }
  useBar((atMs) => keep(false, atMs))
  const choose = (min: number) => {
    setAgo(min)
    setAsked(undefined)
    setSaid(undefined)
  }
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        {asked ? (
          <button type="button" class="key" onClick={() => keep(true)}>
            {asked === 'rose' ? w.wasOff : w.isOff}
          </button>
        ) : null}
        <p class="caution">{deed === 'on' ? care.light : deed === 'off' ? care.off : care.cool}</p>
        <AgoKeys agoMin={agoMin} choose={choose} />
      </KilnMain>
      <KnuckleBar label={pages.late[deed]} />
    </>
  )
}
