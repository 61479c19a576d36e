import type { ComponentChildren } from 'preact'
import { drawingOf } from '../../table/forecast/drawing.ts'
import { coatsOn } from '../../table/model/plan.ts'
import type { PotState } from '../../table/model/state.ts'
import { outsideWall, pointAt } from '../../table/opening/wall.ts'
import { PotOutline } from '../../ui/outline.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { nameOf } from '../text/pot-text.ts'

interface DrawnProps {
  readonly pot: PotState
  /** How far the melt came down; undefined: as it was glazed. */
  readonly front?: number | 'shelf' | undefined
  readonly width: number
  readonly height: number
}

/** A pot to scale as it came out: its lowest coat as far down as the melt went. */
export function FiredPotDrawing({ pot, front, width, height }: DrawnProps) {
  const { table, words } = useDesk()
  const drawing = drawingOf(table.value, pot, 'as-is')
  const wall = outsideWall(table.value, pot)
  const { edgeMm } = wall
  const downTo =
    front === undefined || edgeMm === undefined
      ? undefined
      : front === 'shelf'
        ? 0
        : pointAt(wall.line, edgeMm + front).zMm
  const lowest = Math.min(...drawing.bands.map(({ fromMm }) => fromMm))
  const bands = drawing.bands.map((band) =>
    downTo !== undefined && band.fromMm === lowest ? { ...band, fromMm: Math.min(lowest, downTo) } : band,
  )
  const alarm = downTo !== undefined && downTo < drawing.footLineMm - 1
  return (
    <PotOutline
      {...drawing}
      bands={bands}
      alarm={alarm}
      width={width}
      height={height}
      label={words.value.desk.pot.title(nameOf(words.value, pot))}
    />
  )
}

/** What is on it: its stack by name, its glazes by pattern and letter from the first coat on. */
export function Glazes({ pot }: { readonly pot: PotState }) {
  const { table } = useDesk()
  const ids = [...new Set(coatsOn(pot).map(({ bucketId }) => bucketId))]
  const known = ids.flatMap((id) => (table.value.buckets[id] ?? table.value.removed?.[id])?.facts ?? [])
  const stack = pot.ownPlan ? undefined : table.value.stacks[pot.facts.stackId]?.name
  return (
    <>
      <strong>{stack ?? known.map(({ name }) => name).join(', ')}</strong>
      <p class="open-glazes" role="img" aria-label={known.map(({ name }) => name).join(', ')}>
        {known.map(({ bucketId, pattern, letter }) => (
          <Swatch key={bucketId} pattern={pattern} letter={letter} size={30} />
        ))}
      </p>
    </>
  )
}

interface FaceProps extends Omit<DrawnProps, 'width' | 'height'> {
  /** Above the drawing: what undoes the last hit. */
  readonly back?: ComponentChildren
  /** Below what is on it; where there is little room, below the drawing, or left out. */
  readonly children?: ComponentChildren
}

/** The pot on the left, what there is to say of it beside it, as large as there is room: nothing lies over anything else. */
export function PotFace({ pot, front, back, children }: FaceProps) {
  return (
    <div class="open-face">
      <div class="open-face-parts">
        <div class="open-face-pot">
          {back}
          <FiredPotDrawing pot={pot} front={front} width={150} height={190} />
        </div>
        <div class="open-said">
          <Glazes pot={pot} />
        </div>
        <div class="open-more">{children}</div>
      </div>
    </div>
  )
}
