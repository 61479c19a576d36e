import { useMemo, useState } from 'preact/hooks'
import { notHad } from '../ui/not-had.ts'
import { type Route, useApp } from './app.ts'
import { asDesk, DeskProvider, useDesk } from './desk/desk-app.ts'
import { lazyPart } from './lazy.tsx'
import './desk/demo.css'
import './desk/large-letters.css'

const Board = lazyPart(() => import('./board/board.tsx').then((part) => part.Board))
const Pot = lazyPart(() => import('./board/pot.tsx').then((part) => part.Pot))
const Buckets = lazyPart(() => import('./buckets/buckets.tsx').then((part) => part.Buckets))
const Tiles = lazyPart(() => import('./buckets/test-tiles.tsx').then((part) => part.Tiles))
const Stacks = lazyPart(() => import('./stacks/stacks.tsx').then((part) => part.Stacks))
const Shelf = lazyPart(() => import('./shelf/shelf.tsx').then((part) => part.Shelf))
const Opening = lazyPart(() => import('./opening/opening.tsx').then((part) => part.Opening))
const FiredList = lazyPart(() => import('./opening/fired-list.tsx').then((part) => part.FiredList))
const Story = lazyPart(() => import('./opening/story.tsx').then((part) => part.Story))
const Plots = lazyPart(() => import('./opening/plots.tsx').then((part) => part.Plots))
const Results = lazyPart(() => import('./opening/results.tsx').then((part) => part.Results))
const FireTaught = lazyPart(() => import('./opening/taught.tsx').then((part) => part.FireTaught))
const Firing = lazyPart(() => import('./shelf/firing.tsx').then((part) => part.FiringPage))
const HandoutPage = lazyPart(() => import('./codes/codes.tsx').then((part) => part.HandoutPage))
const ClassPage = lazyPart(() => import('./codes/codes.tsx').then((part) => part.ClassPage))
const Codes = lazyPart(() => import('./codes/codes.tsx').then((part) => part.Codes))
const Settle = lazyPart(() => import('./meeting/settle.tsx').then((part) => part.Settle))
const Student = lazyPart(() => import('./codes/codes.tsx').then((part) => part.Student))
const Help = lazyPart(() => import('./help/help.tsx').then((part) => part.Help))
const Room = lazyPart(() => import('./room/room.tsx').then((part) => part.Room))

/** The screens for clean hands, each fetched after the bench can take a hit. */
export function Desk() {
  const app = useApp()
  const desk = useMemo(() => asDesk(app), [app])
  return (
    <DeskProvider value={desk}>
      {app.demo ? <Demo /> : null}
      <Screen />
    </DeskProvider>
  )
}

/** On each of them: this is not the own table, and this is the way back to it. */
function Demo() {
  const { words, leaveDemo } = useDesk()
  const w = words.value.desk.demo
  const [failed, setFailed] = useState(false)
  return (
    <aside class="demo-line">
      {failed ? <strong role="alert">{notHad(words.value)}</strong> : <strong>{w.here}</strong>}
      <button type="button" onClick={() => void leaveDemo().then((done) => setFailed(!done))}>
        {w.leave}
      </button>
    </aside>
  )
}

/** What a student's phone shows besides. */
const OF_STUDENTS: ReadonlySet<Route['at']> = new Set(['codes', 'settle', 'help'])

function Screen() {
  const { route, table } = useApp()
  const to = route.value
  // What a student's phone has beside the bench passes what was done to the teacher's, and settles what came of that.
  if (table.value.settings.student && !OF_STUDENTS.has(to.at)) return <Student />
  switch (to.at) {
    case 'board':
      return <Board />
    case 'pot':
      return <Pot key={to.potId} potId={to.potId} from={to.from} />
    case 'buckets':
      return <Buckets bucketId={to.bucketId} onward={to.onward} />
    case 'stacks':
      return <Stacks stackId={to.stackId} onward={to.onward} />
    case 'tile':
      return <Tiles key={to.bucketId} bucketId={to.bucketId} underId={to.underId} />
    case 'room':
      return <Room key={to.door} door={to.door} />
    case 'help':
      return <Help stage={to.stage} />
    case 'codes':
      return <Codes />
    case 'handout':
      return <HandoutPage stackId={to.stackId} />
    case 'class':
      return <ClassPage />
    case 'settle':
      return <Settle />
    case 'shelf':
      return <Shelf key={to.loadId} loadId={to.loadId} />
    case 'which':
      return <Shelf key="which" loadId={to.loadId} first="which" />
    case 'opening':
      return <Opening key={to.loadId} loadId={to.loadId} />
    case 'judge':
      return <Opening key={to.potId} potId={to.potId} />
    case 'fired':
      return <FiredList />
    case 'story':
      return <Story key={to.potId} potId={to.potId} />
    case 'plots':
      return <Plots />
    case 'results':
      return <Results bucketId={to.bucketId} underId={to.underId} />
    case 'taught':
      return <FireTaught />
    case 'looks':
      return <Opening key="looks" first="look" />
    case 'elsewhere':
      return <Opening key="elsewhere" first="elsewhere" />
    case 'firing':
      return <Firing />
    default:
      return null
  }
}
