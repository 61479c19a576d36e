import { useMemo } from 'preact/hooks'
import { mended, type Remedy, remediesFor } from '../../table/advice/remedies.ts'
import type { Warning } from '../../table/advice/warning.ts'
import { dipNow } from '../../table/forecast/hypothetical-dip.ts'
import type { Action } from '../../table/model/action.ts'
import { planOf } from '../../table/model/plan.ts'
import type { PotState, Table } from '../../table/model/state.ts'
import { PressButton } from '../../ui/press.tsx'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import { remedyText } from '../text/remedy-text.ts'
import type { Acting } from './other-pages.tsx'
import { Caution } from './with-pot.tsx'

/** Whether there is something to keep off the shelf. */
export const mayRun = (warning: Warning): boolean =>
  warning.kind === 'run' && warning.grade !== 'unknown' && !warning.slab

interface OffShelfProps {
  readonly pot: PotState
  readonly bucketId: string
  readonly act: Acting
}

/** What would keep the melt of the armed dip off the shelf: a hit does it. */
export function OffShelfPage({ pot, bucketId, act }: OffShelfProps) {
  const { table, formats, now } = useApp()
  const late = useLateWords()
  const remedies = useMemo(() => {
    const dip = dipNow(table.peek(), pot, bucketId, now.peek())
    return dip ? remediesFor(table.peek(), pot, dip) : []
  }, [pot, bucketId])
  const glaze = table.value.buckets[bucketId]?.facts.name ?? ''
  return (
    <div class="other-more">
      <div class="other-grid">
        {remedies.map((remedy, i) => {
          const { what, to } = remedyText(late, formats.value, table.value, glaze, remedy)
          return (
            <PressButton key={i} class="other-tile figures" onPress={act(applied(table.value, pot, remedy))}>
              {what}
              <small>{to}</small>
            </PressButton>
          )
        })}
      </div>
      {remedies.some(({ is }) => is === 'slab') ? <Caution>{late.remedy.slabCare}</Caution> : null}
    </div>
  )
}

function applied(table: Table, pot: PotState, remedy: Remedy): Action {
  const { potId } = pot.facts
  if (remedy.is === 'slab') return { do: 'set-slab', potId, slab: true }
  const coats = remedy.is === 'stack' ? remedy.coats : mended(planOf(table, pot), remedy)
  return { do: 'set-plan', potId, coats }
}
