import { useEffect, useRef } from 'preact/hooks'
import type { KilnLine } from '../../table/load/kiln-spoken.ts'
import { useApp } from '../app.ts'

/** Has a line said once it is another than before; what was so when the screen opened is not said. */
export function useSpoken(line: KilnLine | undefined): void {
  const { extras } = useApp()
  const before = useRef(line?.key)
  useEffect(() => {
    if (line && line.key !== before.current) extras.peek()?.say(line.words)
    before.current = line?.key
  }, [line?.key])
}
