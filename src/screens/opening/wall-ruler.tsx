import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { PotState } from '../../table/model/state.ts'
import { outsideWall } from '../../table/opening/wall.ts'
import { RunRuler } from '../../ui/run-ruler.tsx'
import { useOpening } from './opening-app.ts'
import { FiredPotDrawing } from './pot-face.tsx'

interface WallProps {
  readonly pot: PotState
  readonly front: number | 'shelf' | undefined
  readonly drip?: number | 'shelf' | undefined
  /** The one of both that is told now, in large figures. */
  readonly told: string
  readonly onTap: (at: number | 'shelf') => void
  /** A millimetre farther, or less far. */
  readonly onStep: (by: 1 | -1) => void
}

/** The whole pot to scale, its bare wall enlarged beside it with a ruler to tap on, and keys for a millimetre. */
export function WallRuler({ pot, front, drip, told, onTap, onStep }: WallProps) {
  const { table, words } = useOpening()
  const w = words.value.opening.run
  const box = useRef<HTMLDivElement>(null)
  const [size, setSize] = useState<readonly [number, number]>()
  useLayoutEffect(() => {
    const element = box.current
    if (!element) return undefined
    const measure = () => setSize([element.clientWidth, element.clientHeight])
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  const { roomMm, footMm, pattern } = outsideWall(table.value, pot)
  return (
    <div class="open-wall">
      <div class="open-wall-side">
        <div class="open-wall-pot">
          <FiredPotDrawing pot={pot} front={front} width={112} height={112} />
        </div>
        <p class="open-told figures" role="status">
          {told}
        </p>
        <button type="button" class="key open-step" aria-label={w.less} onClick={() => onStep(-1)}>
          −
        </button>
        <button type="button" class="key open-step" aria-label={w.more} onClick={() => onStep(1)}>
          +
        </button>
      </div>
      <div class="open-wall-ruler" ref={box}>
        {size ? (
          <RunRuler
            roomMm={roomMm}
            footMm={footMm}
            pattern={pattern}
            front={front}
            drip={drip}
            width={size[0]}
            height={size[1]}
            words={{ foot: w.foot, shelf: w.shelf, label: told === '' ? w.edge : told }}
            onTap={onTap}
          />
        ) : null}
      </div>
    </div>
  )
}

/** A millimetre more or less on a wall with so much room: beyond its last whole one is the shelf. */
export function stepped(at: number | 'shelf' | undefined, by: 1 | -1, roomMm: number): number | 'shelf' {
  const most = Math.floor(roomMm)
  if (at === 'shelf') return by > 0 ? 'shelf' : most
  const to = at === undefined ? Math.max(0, by) : at + by
  return to > most ? 'shelf' : Math.max(0, to)
}
