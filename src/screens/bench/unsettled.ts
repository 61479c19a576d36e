import { useEffect, useState } from 'preact/hooks'
import { type Route, useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'

/** A card that is just drawn may be hit: what is asked is looked up after that, ms. */
const LATER_MS = 1000

/** As found since the bench was opened: nothing that is done on it brings or settles any. */
const found = new WeakMap<Route, number>()

/** How much phones that met have in two ways, in words; undefined where nothing. */
export function useUnsettled(): string | undefined {
  const { asks, route } = useApp()
  const late = useLateWords().other
  const at = route.value
  const [count, setCount] = useState(found.get(at) ?? 0)
  useEffect(() => {
    if (found.has(at)) return
    const timer = setTimeout(() => {
      asks().then(
        (open) => {
          found.set(at, open.length)
          setCount(open.length)
        },
        () => {},
      )
    }, LATER_MS)
    return () => clearTimeout(timer)
  }, [at])
  return count === 0 ? undefined : late.toSettle(count)
}
