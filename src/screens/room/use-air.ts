import type { AirFacts } from '../../../shared/nouns.ts'
import { DEFAULT_AIR } from '../../table/model/defaults.ts'
import { useDesk } from '../desk/desk-app.ts'

/** The air as noted last, and the way to note another. */
export function useAir() {
  const { table, act } = useDesk()
  const spell = table.value.air.at(-1)
  const air = spell?.air ?? DEFAULT_AIR
  const set = (change: Partial<AirFacts>) => act({ do: 'set-air', air: { ...air, ...change } })
  return { air, at: spell?.at, set }
}
