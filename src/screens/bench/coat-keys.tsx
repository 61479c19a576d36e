import { planOf } from '../../table/plan.ts'
import { useWhole } from '../whole.ts'
import { PressButton } from './press.tsx'

/** Plans with more coats are answered in Other: these keys would be too small for a knuckle. */
const MOST_COATS = 5

/** How many coats are on a pot, answered where the bar rests. */
export function CoatKeys({ potId }: { readonly potId: string }) {
  const { table, act } = useWhole()
  const pot = table.value.pots[potId]
  const coats = pot ? planOf(table.value, pot).length : 0
  if (coats > MOST_COATS) return <div class="bar bar-rest" />
  return (
    <div class="bar bar-rest coat-keys">
      {Array.from({ length: coats + 1 }, (_, n) => (
        <PressButton
          key={n}
          class="coat-key figures"
          onPress={(atMs) => void act({ do: 'count-coats', potId, coats: n }, atMs)}
        >
          {n}
        </PressButton>
      ))}
    </div>
  )
}
