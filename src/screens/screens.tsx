import { useEffect } from 'preact/hooks'
import { useApp } from './app.ts'
import { Bench } from './bench/bench.tsx'
import { Board } from './board/board.tsx'
import { Pot } from './board/pot.tsx'
import { Buckets } from './buckets/buckets.tsx'
import { First } from './first/first.tsx'
import { Room } from './room/room.tsx'
import { Stacks } from './stacks/stacks.tsx'

/** The screen the route names. */
export function Screens() {
  const { route, table } = useApp()
  const noPots = Object.values(table.value.pots).every((pot) => pot.gone)
  const to = route.value
  useEffect(() => scrollTo(0, 0), [to])
  switch (to.at) {
    case 'first':
      return <First />
    case 'bench':
      return noPots ? <First /> : <Bench />
    case 'board':
      return <Board />
    case 'pot':
      return <Pot key={to.potId} potId={to.potId} />
    case 'buckets':
      return <Buckets bucketId={to.bucketId} />
    case 'stacks':
      return <Stacks stackId={to.stackId} />
    case 'room':
      return <Room />
  }
}
