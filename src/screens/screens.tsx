import { useApp } from './app.ts'
import { Bench } from './bench/bench.tsx'
import { Board } from './board/board.tsx'
import { Pot } from './board/pot.tsx'
import { First } from './first/first.tsx'

/** The screen the route names. */
export function Screens() {
  const { route, table } = useApp()
  const noPots = Object.values(table.value.pots).every((pot) => pot.gone)
  const to = route.value
  switch (to.at) {
    case 'first':
      return <First />
    case 'bench':
      return noPots ? <First /> : <Bench />
    case 'board':
      return <Board />
    case 'pot':
      return <Pot key={to.potId} potId={to.potId} />
    default:
      return <First />
  }
}
