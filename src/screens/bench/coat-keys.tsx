import { planOf } from '../../table/model/plan.ts'
import { PressButton } from '../../ui/press.tsx'
import { useApp } from '../app.ts'

/** Plans with more coats are answered in Other: these keys would be too small for a knuckle. */
const MOST_COATS = 5

interface CountsProps {
  readonly coats: number
  readonly look: string
  readonly on: (coats: number) => (atMs: number) => void
}

/** A key for each number of coats that may be on a pot. */
export const CoatCounts = ({ coats, look, on }: CountsProps) => (
  <>
    {Array.from({ length: coats + 1 }, (_, n) => (
      <PressButton key={n} class={`${look} figures`} onPress={on(n)}>
        {n}
      </PressButton>
    ))}
  </>
)

/** How many coats are on a pot, answered where the bar rests. */
export function CoatKeys({ potId }: { readonly potId: string }) {
  const { table, act } = useApp()
  const pot = table.value.pots[potId]
  const coats = pot ? planOf(table.value, pot).length : 0
  if (coats > MOST_COATS) return <div class="bar bar-rest" />
  const on = (n: number) => (atMs: number) => void act({ do: 'count-coats', potId, coats: n }, atMs)
  return (
    <div class="bar bar-rest coat-keys">
      <CoatCounts coats={coats} look="coat-key" on={on} />
    </div>
  )
}
