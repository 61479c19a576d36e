import { useState } from 'preact/hooks'
import { besideCones, CONE_STANDS, type ConeStand } from '../../table/load/fire.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KILN_CARE_WORDS } from '../../words/kiln-care.ts'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { AgoKeys } from './ago-keys.tsx'
import { kilnRefusalText, useLoad } from './load-app.ts'

/** How a cone stands: the wanted one, the guide before it, the guard after it. */
export function ConePage({ load, close }: { readonly load: LoadState; readonly close: () => void }) {
  const { table, words, formats, act } = useLoad()
  const w = words.value.desk.shelf
  const care = KILN_CARE_WORDS[table.value.settings.language]
  const { firing, loadId } = load
  const [cone, setCone] = useState(firing.cone)
  const [is, setIs] = useState<ConeStand>('down')
  const [agoMin, setAgo] = useState(0)
  const [said, setSaid] = useState<string>()
  useBar((atMs) => {
    const late = agoMin === 0 ? {} : { agoMin }
    const refusal = act({ do: 'see-cone', loadId, cone, is, ...late }, atMs)
    if (refusal) setSaid(kilnRefusalText(words.value, formats.value, table.peek(), refusal))
    else close()
  })
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        <p class="caution">{load.openedAt === undefined ? care.spy : care.open}</p>
        <fieldset class="kiln-keys">
          <legend class="choice-label">{w.cone}</legend>
          {besideCones(firing).map((one) => (
            <button
              key={one}
              type="button"
              class="key"
              aria-pressed={one === cone}
              onClick={() => setCone(one)}
            >
              {one}
              {one === firing.cone ? <small> {w.wanted}</small> : null}
            </button>
          ))}
        </fieldset>
        <div class="pair">
          {CONE_STANDS.map((one) => (
            <button key={one} type="button" class="key" aria-pressed={one === is} onClick={() => setIs(one)}>
              {w.stand[one]}
            </button>
          ))}
        </div>
        <AgoKeys agoMin={agoMin} choose={setAgo} />
      </KilnMain>
      <KnuckleBar label={`${cone} ${w.stand[is]}`.toUpperCase()} />
    </>
  )
}
