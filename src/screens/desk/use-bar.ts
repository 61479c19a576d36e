import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import { useApp } from '../app.ts'

/** What the bar of a screen at the kiln does, for a finger, a key or a knock. */
export function useBar(press: (atMs: number) => void): void {
  const { bench } = useApp()
  const latest = useRef(press)
  useLayoutEffect(() => {
    latest.current = press
  })
  useEffect(() => {
    const mine = (atMs: number) => latest.current(atMs)
    bench.elsewhere.value = mine
    return () => {
      if (bench.elsewhere.value === mine) bench.elsewhere.value = undefined
    }
  }, [])
}
