import { useState } from 'preact/hooks'
import type { RunFacts } from '../../../shared/opening.ts'
import type { PotState } from '../../table/model/state.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useBar } from '../desk/use-bar.ts'
import { reachOf, reachText, useOpening } from './opening-app.ts'
import { WallRuler } from './wall-ruler.tsx'

interface RunProps {
  readonly pot: PotState
  readonly run: RunFacts
  /** What is known so far, while its drip is still asked. */
  readonly seen: (run: RunFacts) => void
  readonly done: (run: RunFacts) => void
}

type Reach = number | 'shelf'

/** How far it ran: tapped on the wall, the mean front, then the longest drip; or seen and not measured. */
export function RunPage({ pot, run, seen, done }: RunProps) {
  const { words, formats } = useOpening()
  const w = words.value.opening.run
  const [front, setFront] = useState(reachOf(run))
  const [drip, setDrip] = useState(run.is === 'measured' ? run.longestMm : undefined)
  const [asks, setAsks] = useState<'front' | 'drip'>('front')
  const set = (to: Reach) => {
    if (asks === 'front') setFront(to)
    else if (typeof front === 'number') setDrip(to === 'shelf' ? to : Math.max(front, to))
  }
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
    else if (front === 'shelf') done({ is: 'shelf' })
    else if (front === 0) done({ is: 'measured', mm: 0 })
    else if (asks === 'front') {
      setAsks('drip')
      if (typeof drip === 'number' && drip < front) setDrip(undefined)
      seen({ is: 'measured', mm: front })
    } else done({ is: 'measured', mm: front, longestMm: drip ?? front })
  })
  return (
    <>
      <KilnMain>
        <p class="open-ask">{asks === 'front' ? w.front : w.drip}</p>
        <WallRuler
          pot={pot}
          front={front}
          drip={drip}
          at={asks === 'front' ? front : (drip ?? front)}
          asksDrip={asks === 'drip'}
          onSet={set}
        />
      </KilnMain>
      <KnuckleBar label={label} />
    </>
  )
}
