import { useEffect, useState } from 'preact/hooks'
import type { Ask } from '../../table/model/ask.ts'
import { useApp } from '../app.ts'

/**
 * What is to be settled as the table is now; undefined until it is known. `answered`: how many were, as some answers leave
 * the table as it is.
 */
export function useAsks(answered = 0): readonly Ask[] | undefined {
  const { table, asks } = useApp()
  const [found, setFound] = useState<readonly Ask[]>()
  const now = table.value
  useEffect(() => {
    let isOld = false
    asks().then(
      (open) => {
        if (!isOld) setFound(open)
      },
      () => {},
    )
    return () => {
      isOld = true
    }
  }, [now, answered])
  return found
}
