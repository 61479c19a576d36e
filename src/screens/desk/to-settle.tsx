import { useDesk } from './desk-app.ts'
import { useAsks } from './use-asks.ts'

/** How much phones that met have in two ways, and the way there. */
export function ToSettle() {
  const { words, go } = useDesk()
  const asks = useAsks()
  if (!asks || asks.length === 0) return null
  return (
    <button type="button" class="desk-second" onClick={() => go({ at: 'settle' })}>
      {words.value.desk.board.toSettle(asks.length)}
    </button>
  )
}
