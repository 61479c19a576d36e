import { useEffect } from 'preact/hooks'
import { potsOnTable } from '../table/model/plan.ts'
import { useApp } from './app.ts'
import { Bench } from './bench/bench.tsx'
import { First } from './first/first.tsx'
import { lazyPart, useAllParts } from './lazy.tsx'

/** The screens for clean hands: the bench never waits for them. */
const Desk = lazyPart(() => import('./desk.tsx').then(({ Desk }) => Desk))

/** The screen the route names. */
export function Screens() {
  const { route, table, words, go, layDemo } = useApp()
  const noPots = potsOnTable(table.value).length === 0
  const to = route.value
  useEffect(() => scrollTo(0, 0), [to])
  useAllParts()
  if (to.at !== 'first' && to.at !== 'bench') return <Desk />
  if (to.at === 'bench' && !noPots) return <Bench />
  return (
    <First
      words={words.value}
      back={!noPots}
      onOwn={() => go({ at: 'board' })}
      onDemo={() => void layDemo()}
    />
  )
}
