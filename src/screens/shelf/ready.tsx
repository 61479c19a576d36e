import { useMemo } from 'preact/hooks'
import type { KilnFacts } from '../../../shared/load.ts'
import { potsForLoad } from '../../table/load/to-load.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { KILN_FORM_WORDS } from '../../words/kiln-form.ts'
import { useLoad } from './load-app.ts'
import type { Over } from './shelf.tsx'

interface ReadyProps {
  readonly load: LoadState | undefined
  readonly kiln: KilnFacts
  readonly open: (over: Over) => void
}

/** What there is to load, and the kiln it goes into. */
export function Ready({ load, kiln, open }: ReadyProps) {
  const { table, words, formats, go } = useLoad()
  const w = words.value.desk.shelf
  const form = KILN_FORM_WORDS[table.value.settings.language]
  const pots = useMemo(() => potsForLoad(table.value, load?.loadId ?? ''), [table.value, load])
  const { chamber, shelves } = kiln
  const across = chamber.kind === 'round' ? chamber.diameterMm : chamber.widthMm
  const stock = shelves.map((shelf) => form.shelves[shelf.kind](shelf.count)).join(', ')
  return (
    <>
      <p class="kiln-big">{pots.length > 0 ? w.ready(pots.length) : w.none}</p>
      <p class="figures">
        {form.line(form[chamber.kind], formats.value.mm(across), formats.value.mm(chamber.heightMm), stock)}
      </p>
      <div class="kiln-keys">
        <button type="button" class="key" onClick={() => open('kiln')}>
          {form.change}
        </button>
        <button type="button" class="key" onClick={() => go({ at: 'firing' })}>
          {w.firing}
        </button>
      </div>
    </>
  )
}
