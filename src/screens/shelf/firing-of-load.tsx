import { useState } from 'preact/hooks'
import type { LoadState } from '../../table/model/load-state.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { FiringFields, useFiring } from '../desk/firing-fields.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { kilnRefusalText, useLoad } from './load-app.ts'

interface FiringProps {
  readonly load: LoadState
  readonly close: () => void
}

/** How a load whose kiln is on is fired, put right for this load alone. */
export function FiringOfLoad({ load, close }: FiringProps) {
  const { table, words, formats, act } = useLoad()
  const w = words.value.desk.shelf
  const entry = useFiring(load.firing)
  const [said, setSaid] = useState<string>()
  useBar((atMs) => {
    const firing = entry.read()
    if (!firing) return
    const refusal = act({ do: 'change-firing', loadId: load.loadId, firing }, atMs)
    if (refusal) setSaid(kilnRefusalText(words.value, formats.value, table.peek(), refusal))
    else close()
  })
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        <FiringFields entry={entry} />
      </KilnMain>
      <KnuckleBar label={w.bar.save} />
    </>
  )
}
