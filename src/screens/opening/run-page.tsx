import { useState } from 'preact/hooks'
import type { RunFacts } from '../../../shared/opening.ts'
import type { PotState } from '../../table/model/state.ts'
import { outsideWall } from '../../table/opening/wall.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useBar } from '../desk/use-bar.ts'
import { reachOf, reachText, useOpening } from './opening-app.ts'
import { stepped, WallRuler } from './wall-ruler.tsx'

interface RunProps {
  readonly pot: PotState
  readonly run: RunFacts
  readonly done: (run: RunFacts) => void
}

type Reach = number | 'shelf'

/** How far it ran: tapped on the wall, the mean front, then the longest drip; or seen and not measured. */
export function RunPage({ pot, run, done }: RunProps) {
  const { table, words, formats } = useOpening()
  const w = words.value.opening.run
  const { roomMm } = outsideWall(table.value, pot)
  const [front, setFront] = useState(reachOf(run))
  const [drip, setDrip] = useState<Reach | undefined>(run.is === 'measured' ? run.longestMm : undefined)
  const [asks, setAsks] = useState<'front' | 'drip'>('front')
  const set = (to: Reach) => {
    if (asks === 'front') setFront(to)
    else if (typeof front === 'number') setDrip(to === 'shelf' ? 'shelf' : Math.max(front, to))
  }
  const shown = asks === 'front' ? front : (drip ?? front)
  const text = (at: Reach) => reachText(words.value, formats.value, at)
  const label =
    asks === 'front'
      ? front === undefined
        ? w.notMeasured
        : front === 'shelf'
          ? w.barShelf
          : front === 0
            ? w.barNone
            : w.barFront(text(front))
      : drip === undefined || drip === front
        ? w.noDrip
        : w.barDrip(text(drip))
  useBar(() => {
    if (front === undefined) done({ is: 'some' })
    else if (front === 'shelf' || drip === 'shelf') done({ is: 'shelf' })
    else if (front === 0 && asks === 'front') done({ is: 'none' })
    else if (asks === 'front') {
      setAsks('drip')
      if (drip !== undefined && drip < front) setDrip(undefined)
    } else
      done({
        is: 'measured',
        mm: front,
        ...(drip === undefined || drip === front ? {} : { longestMm: drip }),
      })
  })
  return (
    <>
      <KilnMain>
        <p class="open-ask">{asks === 'front' ? w.front : w.drip}</p>
        <WallRuler
          pot={pot}
          front={front}
          drip={drip}
          told={shown === undefined ? '' : text(shown)}
          onTap={set}
          onStep={(by) => set(stepped(shown, by, roomMm))}
        />
      </KilnMain>
      <KnuckleBar label={label} />
    </>
  )
}
