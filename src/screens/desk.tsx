import { useMemo } from 'preact/hooks'
import { useApp } from './app.ts'
import { Board } from './board/board.tsx'
import { Pot } from './board/pot.tsx'
import { Buckets } from './buckets/buckets.tsx'
import { asDesk, DeskProvider } from './desk/app.ts'
import { lazyPart } from './lazy.tsx'
import { Room } from './room/room.tsx'
import { Stacks } from './stacks/stacks.tsx'

const Tiles = lazyPart(() => import('./buckets/tile.tsx').then((part) => part.Tiles))

/** The screens for clean hands, loaded after the bench can take a hit. */
export function Desk() {
  const app = useApp()
  const desk = useMemo(() => asDesk(app), [app])
  return (
    <DeskProvider value={desk}>
      <Screen />
    </DeskProvider>
  )
}

function Screen() {
  const to = useApp().route.value
  switch (to.at) {
    case 'board':
      return <Board />
    case 'pot':
      return <Pot key={to.potId} potId={to.potId} />
    case 'buckets':
      return <Buckets bucketId={to.bucketId} />
    case 'stacks':
      return <Stacks stackId={to.stackId} />
    case 'tile':
      return <Tiles key={to.bucketId} bucketId={to.bucketId} underId={to.underId} />
    case 'room':
      return <Room />
    default:
      return null
  }
}
