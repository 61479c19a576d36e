import { useState } from 'preact/hooks'
import { type LoadPlan, loadInput } from '../../table/load/proposal.ts'
import type { Refusal } from '../../table/model/action.ts'
import { useLoad } from './load-app.ts'

/** Begins a load where none is in hand, and lays out what is proposed for it. `said` tells of no answer. */
export function usePropose() {
  const app = useLoad()
  const [asking, setAsking] = useState(false)
  const propose = async (loadId: string): Promise<Refusal | 'failed' | undefined> => {
    const load = app.table.peek().loads?.[loadId]
    if (!load || asking) return undefined
    setAsking(true)
    try {
      const plan = await app.proposeLoad(loadInput(app.table.peek(), load, app.now.peek()))
      leftOut.set(loadId, plan)
      return app.act({ do: 'lay-out', loadId, plan })
    } catch {
      return 'failed'
    } finally {
      setAsking(false)
    }
  }
  return { asking, propose }
}

/** The latest proposal of each load since the page was opened: why something is left out is said of it. */
export const leftOut = new Map<string, LoadPlan>()
