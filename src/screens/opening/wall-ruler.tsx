import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { PotState } from '../../table/model/state.ts'
import { outsideWall } from '../../table/opening/wall.ts'
import { RunRuler } from '../../ui/run-ruler.tsx'
import { reachText, useOpening } from './opening-app.ts'
import { FiredPotDrawing } from './pot-face.tsx'
import { atMark, lastMark, scaleOf, stepped } from './run-scale.ts'

interface WallProps {
  readonly pot: PotState
  readonly front: number | 'shelf' | undefined
  readonly drip?: number | 'shelf' | undefined
  /** The one of both that is set now, told in large figures. */
  readonly at: number | 'shelf' | undefined
  /** How far its longest drip came is asked, no longer its front. */
  readonly asksDrip?: boolean
  /** Left out: it is fixed. */
  readonly onSet?: ((at: number | 'shelf') => void) | undefined
  /** Above the drawing: what undoes the last hit. */
  readonly back?: ComponentChildren
}

/** The whole pot to scale, its bare wall enlarged beside it with a ruler to tap on, and keys for a mark of it. */
export function WallRuler({ pot, front, drip, at, asksDrip = false, onSet, back }: WallProps) {
  const { table, words, formats } = useOpening()
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
  const scale = scaleOf(table.value.settings.units)
  const mark = formats.value.mm(scale.markMm)
  const told = at === undefined ? '' : reachText(words.value, formats.value, at)
  const step = (by: 1 | -1, label: string, sign: string) => (
    <button
      type="button"
      class="key open-step"
      aria-label={label}
      onClick={() => onSet?.(stepped(scale, at, by, roomMm))}
    >
      {sign}
    </button>
  )
  return (
    <div class="open-wall">
      <div class="open-wall-side">
        {back}
        <div class="open-wall-pot">
          <FiredPotDrawing pot={pot} front={front} width={112} height={112} />
        </div>
        <p class="open-told figures" role="status">
          {told}
        </p>
        {onSet ? (
          <>
            {step(-1, w.less(mark), '−')}
            {step(1, w.more(mark), '+')}
          </>
        ) : null}
      </div>
      <div class="open-wall-ruler" ref={box}>
        {size ? (
          <RunRuler
            roomMm={roomMm}
            footMm={footMm}
            scale={scale}
            lastMark={lastMark(scale, roomMm)}
            pattern={pattern}
            front={front}
            drip={drip}
            width={size[0]}
            height={size[1]}
            words={{
              foot: w.foot,
              shelf: w.shelf,
              // A drip is asked of what ran.
              none: onSet && !asksDrip ? w.none : undefined,
              label: told === '' ? w.edge : told,
            }}
            onTap={onSet && ((to) => onSet(to === 'shelf' ? to : atMark(scale, to)))}
          />
        ) : null}
      </div>
    </div>
  )
}
