import { isLoud } from '../../table/advice/warning.ts'
import type { Armed } from '../../table/card/card.ts'
import type { PotState } from '../../table/model/state.ts'
import { PressButton } from '../../ui/press.tsx'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import { warningText } from '../parts/warning-line.tsx'
import { offersOf } from './offers.ts'
import type { Acting, Page } from './other-pages.tsx'

interface WarningsProps {
  readonly pot: PotState
  readonly armed: Armed
  readonly act: Acting
  readonly open: (page: Page) => () => void
}

/** Everything that is known against the armed coat, worst first, and what a hit can do about it. */
export function WarningsPage({ pot, armed, act, open }: WarningsProps) {
  const { table, formats } = useApp()
  const offers = offersOf(table.value, useLateWords(), pot, armed, act, open)
  return (
    <div class="other-more">
      <ul class="warnings">
        {armed.warnings.map((warning, i) => (
          <li key={i} class={isLoud(warning) ? 'warnings-loud' : undefined}>
            {warningText(formats.value, table.value, warning)}
          </li>
        ))}
      </ul>
      <div class="other-grid">
        {offers.map(({ text, on }) => (
          <PressButton key={text} class="other-tile other-offer other-wide" onPress={on}>
            {text}
          </PressButton>
        ))}
      </div>
    </div>
  )
}
