import { useEffect, useState } from 'preact/hooks'
import { potsOnTable } from '../table/model/plan.ts'
import { type Health, useApp } from './app.ts'
import { Bench } from './bench/bench.tsx'
import { NotSaved } from './bench/strip.tsx'
import { First } from './first/first.tsx'
import { lazyPart, useAllParts } from './lazy.tsx'
import { Guard } from './parts/guard.tsx'

/** The screens for clean hands: the bench never waits for them. */
const Desk = lazyPart(() => import('./desk.tsx').then(({ Desk }) => Desk))

/** What is wrong with keeping; until its words are here, that something isn't kept. */
const Trouble = lazyPart(() => import('./trouble.tsx').then(({ TroubleLine }) => TroubleLine), NotSaved)

const isWrong = ({ saved, unread, readOnly, lost, recovered, fellBack }: Health): boolean =>
  saved === 'not-saved' || unread || readOnly || lost + recovered > 0 || fellBack

/** The screen the route names, under what is wrong. */
export function Screens() {
  const { route, table, words, health, go, demo, tryDemo, leaveDemo } = useApp()
  const noPots = potsOnTable(table.value).length === 0
  const to = route.value
  const [failed, setFailed] = useState(false)
  const open = (opening: Promise<boolean>) => void opening.then((done) => setFailed(!done))
  useEffect(() => scrollTo(0, 0), [to])
  useAllParts()
  const screen =
    to.at !== 'first' && to.at !== 'bench' ? (
      <Desk />
    ) : to.at === 'bench' && !noPots ? (
      <Bench />
    ) : (
      <First
        words={words.value}
        back={demo || !noPots}
        demo={!health.value.unread}
        failed={failed}
        onOwn={() => (demo ? open(leaveDemo()) : go({ at: 'board' }))}
        onDemo={() => (demo && !noPots ? go({ at: 'bench' }) : open(tryDemo()))}
      />
    )
  return (
    <>
      {isWrong(health.value) ? <Trouble /> : null}
      <Guard key={to.at} where={to.at}>
        {screen}
      </Guard>
    </>
  )
}
