import { afterSlip } from '../../table/advice/after-slip.ts'
import { useApp } from '../app.ts'

/** A coat was held otherwise than planned: what it came to, and the seconds of the next one, before anything else. */
export function SlipLine({ dipId }: { readonly dipId: string }) {
  const { table, now, words, formats } = useApp()
  const after = afterSlip(table.value, dipId, now.value)
  return after ? (
    <p class="said said-note figures" role="status">
      {words.value.other.logged(after.holdS, formats.value.coat(after.buildMm), after.nextS)}
    </p>
  ) : null
}
