import { useEffect } from 'preact/hooks'
import type { KilnLine } from '../../table/load/kiln-spoken.ts'
import { lastHit } from '../../table/model/potters.ts'
import { useApp } from '../app.ts'

/** A hit longer ago than this brought nothing that is said now, ms. */
const BROUGHT_MS = 5000

let said: string | undefined

/** Has a line said once a hit has brought it; what was so when the screen opened is not said. */
export function useSpoken(line: KilnLine | undefined): void {
  const { table, now, extras } = useApp()
  useEffect(() => {
    if (!line || line.key === said) return
    said = line.key
    const hit = lastHit(table.peek())
    if (hit && now.peek() - hit.at < BROUGHT_MS) extras.peek()?.say(line.words)
  }, [line?.key])
}
