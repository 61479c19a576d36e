import { useEffect, useState } from 'preact/hooks'
import { type Route, useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'

/** A card that is just drawn may be hit: what is asked is looked up after that, ms. */
const LATER_MS = 1000

/** As found since the bench was opened, by how far its hits are taken back: nothing else that is done on it brings or settles any. */
const found = new WeakMap<Route, { readonly back: string; readonly count: number }>()

/** How much phones that met have in two ways, in words; undefined where nothing. */
export function useUnsettled(): string | undefined {
  const { asks, route, table } = useApp()
  const late = useLateWords().other
  const at = route.value
  const back = table.value.takenBack?.hit ?? ''
  const [count, setCount] = useState(found.get(at)?.count ?? 0)
  useEffect(() => {
    if (found.get(at)?.back === back) return
    let isOld = false
    const timer = setTimeout(() => {
      asks().then(
        (open) => {
          if (isOld) return
          found.set(at, { back, count: open.length })
          setCount(open.length)
        },
        () => {},
      )
    }, LATER_MS)
    return () => {
      isOld = true
      clearTimeout(timer)
    }
  }, [at, back])
  return count === 0 ? undefined : late.toSettle(count)
}
