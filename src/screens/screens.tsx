import { useApp } from './app.ts'
import { Bench } from './bench/bench.tsx'
import { First } from './first/first.tsx'

/** The screen the route names. */
export function Screens() {
  const { route, table } = useApp()
  const noPots = Object.values(table.value.pots).every((pot) => pot.gone)
  switch (route.value.at) {
    case 'bench':
      return noPots ? <First /> : <Bench />
    default:
      return <First />
  }
}
