import { useMemo } from 'preact/hooks'
import { drawingOf } from '../../table/forecast/drawing.ts'
import type { PotState } from '../../table/model/state.ts'
import { PotMark } from '../../ui/pot-mark.tsx'
import { useApp } from '../app.ts'

interface MarkOfProps {
  readonly pot: PotState
  /** Box to stand in, px. */
  readonly width: number
  readonly height: number
}

/** The mark of a pot with the coats that are on it. Drawn anew with the pot or a pattern alone: there are many of them. */
export function PotMarkOf({ pot, width, height }: MarkOfProps) {
  const { table } = useApp()
  const { buckets, stacks } = table.value
  return useMemo(() => {
    const { outer, bands } = drawingOf(table.peek(), pot, 'as-is')
    return <PotMark outer={outer} bands={bands} width={width} height={height} />
  }, [pot, buckets, stacks, width, height])
}
