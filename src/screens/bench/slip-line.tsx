import { afterSlip } from '../../table/advice/after-slip.ts'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import { nameOf } from '../text/pot-text.ts'

/** A coat was held otherwise than planned: what it came to, and the seconds of the next one, before anything else. */
export function SlipLine({ dipId }: { readonly dipId: string }) {
  const { table, now, words, formats } = useApp()
  const w = useLateWords().other
  const after = afterSlip(table.value, dipId, now.value)
  return after ? (
    <p class="said said-note figures" role="status">
      {w.logged(
        nameOf(words.value, after.pot),
        after.holdS,
        formats.value.coat(after.buildMm),
        after.plannedS,
        after.betterS,
      )}
    </p>
  ) : null
}
