import { useState } from 'preact/hooks'
import { laidOut } from '../../table/load/plan-events.ts'
import type { LoadPlan } from '../../table/load/proposal.ts'
import type { Refusal } from '../../table/model/action.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { useLoad } from './load-app.ts'

/** A load that changed while it was packed is packed anew, at most so many times. */
const ASKED_ANEW = 3

/** How a load is packed from the screen's pages. */
export type Packing = ReturnType<typeof usePacking>

/**
 * Packs a load and lays it out. While the answer is made better, `drawn` shows the first; nothing of that is kept. `failed`:
 * no answer came.
 */
export function usePacking() {
  const app = useLoad()
  const [asking, setAsking] = useState(false)
  const [first, setFirst] = useState<LoadPlan>()
  const propose = async (loadId: string): Promise<Refusal | 'failed' | undefined> => {
    if (asking) return undefined
    setAsking(true)
    try {
      const { loadInput } = await import('../../table/load/proposal.ts')
      for (let asked = 0; asked < ASKED_ANEW; asked++) {
        const load = app.table.peek().loads?.[loadId]
        if (!load) return undefined
        const plan = await app.proposeLoad(loadInput(app.table.peek(), load, app.now.peek()), setFirst)
        if (app.table.peek().loads?.[loadId] === load) return app.act({ do: 'lay-out', loadId, plan })
      }
      return 'failed'
    } catch {
      return 'failed'
    } finally {
      setAsking(false)
      setFirst(undefined)
    }
  }
  const drawn = (load: LoadState): LoadState => (first ? laidOut(app.table.value, load, first) : load)
  return { asking, propose, drawn }
}
