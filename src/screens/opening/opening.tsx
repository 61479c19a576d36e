import type { ComponentChildren } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import { firedOf } from '../../table/fired/fired-pot.ts'
import { toldSureness } from '../../table/fired/which-pot.ts'
import { loadOf } from '../../table/load/loads.ts'
import { firedElsewhere, loadToOpen, placeIn, potsToOpen, toLookAt } from '../../table/opening/queue.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import type { Drafts } from '../app.ts'
import { useDays } from '../days.ts'
import { BackLine } from '../desk/back-line.tsx'
import { DeskHead } from '../desk/head.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useBar } from '../desk/use-bar.ts'
import { lazyPart } from '../lazy.tsx'
import { nameOf } from '../text/pot-text.ts'
import { useDrafts } from './draft.ts'
import { JudgeCard, type Over } from './judge-card.tsx'
import { useOpening } from './opening-app.ts'
import { PotList } from './pot-list.tsx'
import './opening.css'

// What computes guesses, and their scores, comes with them.
const GuessCard = lazyPart(() => import('./guess-card.tsx').then((part) => part.GuessCard))
const LookCard = lazyPart(() => import('./look-card.tsx').then((part) => part.LookCard))
const DoneCard = lazyPart(() => import('./done-card.tsx').then((part) => part.DoneCard))

type Page = 'list' | 'elsewhere' | 'look' | undefined

interface OpeningProps {
  readonly loadId?: string | undefined
  /** A pot in hand, of whatever load. */
  readonly potId?: string
  /** What lies over the cards at first: pots that are due to be looked at again, or those fired elsewhere. */
  readonly first?: 'look' | 'elsewhere'
}

/** From before the lid to the last pot judged: one card a pot, in the order in which hands reach them. */
export function Opening(props: OpeningProps) {
  const drafts = useDrafts()
  return drafts ? <Cards {...props} drafts={drafts} /> : null
}

function Cards({ loadId, potId, first, drafts }: OpeningProps & { readonly drafts: Drafts }) {
  const app = useOpening()
  const { table, now, words } = app
  const w = words.value.opening
  const days = useDays()
  const root = useRef<HTMLDivElement>(null)
  const [page, setPage] = useState<Page>(first)
  const [over, setOver] = useState<Over>()
  /** Taken in hand out of their order; those that nobody guesses. */
  const [chosen, setChosen] = useState(potId)
  useEffect(() => (root.current ? app.attachBench(root.current).detach : undefined), [])
  // It stays the one at hand once all of it is judged.
  const [unnamed] = useState(() => loadToOpen(table.value, now.value)?.loadId)
  const inHand = table.value.pots[potId ?? '']?.facts
  const load =
    (inHand && loadOf(table.value, inHand.lidOf ?? inHand.potId)) ??
    table.value.loads?.[loadId ?? unnamed ?? '']
  const pots = load ? potsToOpen(table.value, load) : []
  const skips = app.demo ? 'bucketside.demo-skips' : 'bucketside.skips'
  const skipsOf = load?.loadId ?? ''
  const [skipped, setSkipped] = useState(() => listOf(drafts.of(skips, skipsOf)))
  const skip = (potIds: readonly string[]) => {
    setSkipped(potIds)
    drafts.keep(skips, skipsOf, potIds)
  }
  const isOpen = !load || load.openedAt !== undefined
  const again = toLookAt(table.value, now.value)
  const isDone = (pot: (typeof pots)[number]) =>
    isOpen ? firedOf(pot).found !== undefined : firedOf(pot).guess !== undefined
  const done = pots.filter(isDone).length
  const left = pots.filter((pot) => !isDone(pot) && (isOpen || !skipped.includes(pot.facts.potId)))
  const picked = chosen === undefined ? undefined : table.value.pots[chosen]
  const looked = page === 'look' ? again[0] : undefined
  const pot = page === 'look' ? looked : page ? undefined : (picked ?? left[0])
  // What stands in no load here needs no lid.
  const judges = isOpen || (pot !== undefined && !pots.includes(pot))
  // Who has seen a pot of it guesses nothing more, though the lid be taken back.
  const seen = app.demo ? 'bucketside.demo-lids' : 'bucketside.lids'
  const shows = judges && pot && load && pots.includes(pot) ? load.loadId : undefined
  useEffect(() => {
    if (shows !== undefined) drafts.keep(seen, shows, true)
  }, [shows])
  const isShut = load !== undefined && !isOpen && drafts.of(seen, load.loadId) === true
  const next = () => {
    // From those fired elsewhere to the next of them.
    if (pot && !pots.includes(pot)) setPage('elsewhere')
    setChosen(undefined)
    setOver(undefined)
  }
  const choose = (potId: string) => {
    setChosen(potId)
    setPage(undefined)
  }
  const back = over
    ? () => setOver(undefined)
    : page
      ? () => setPage(undefined)
      : isOpen
        ? ({ at: 'board' } as const)
        : ({ at: 'shelf', loadId: load?.loadId ?? '' } as const)
  const place = pot && placeIn(table.value, pot)
  const stage = isOpen ? w.title : w.guess.title
  const title =
    over === 'stuck'
      ? w.stuckTitle
      : pot
        ? words.value.desk.pot.title(nameOf(words.value, pot))
        : page === 'list'
          ? w.listTitle
          : page === 'elsewhere'
            ? w.elsewhere
            : page === 'look'
              ? w.again.title
              : isOpen && pots.length > 0
                ? w.allTitle
                : stage
  const nth =
    page === 'look'
      ? w.again.nth(again.length)
      : pot && pots.includes(pot)
        ? w.nth(pots.indexOf(pot) + 1, pots.length)
        : ''
  const matched = pot && load?.matched?.[pot.facts.potId]
  const sureness = pot && load ? toldSureness(load, pot) : 1
  const under =
    matched || sureness < 1
      ? w.matched(Math.min(99, Math.round(100 * sureness)), nth)
      : pot
        ? place === undefined
          ? w.noPlace(nth)
          : (judges ? w.at : w.stands)(place, nth)
        : load && !page
          ? words.value.desk.shelf.loadOf(days.moment(load.begunAt))
          : ''
  const potKey = pot?.facts.potId
  return (
    <div class="desk kiln open" ref={root}>
      <DeskHead title={title} under={under} place={over === 'stuck' ? undefined : place} back={back}>
        {pot && !over && page === undefined ? (
          <button type="button" class="key" onClick={() => setPage('list')}>
            {w.pots}
          </button>
        ) : null}
      </DeskHead>
      {page === 'list' ? (
        <ListPage
          label={left[0] ? (isOpen ? w.toJudge : w.guess.toGuess)(`${nameOf(words.value, left[0])}`) : w.done}
          close={() => setPage(undefined)}
        >
          {load && isOpen && pots.some(({ facts }) => !load.matched?.[facts.potId]) ? (
            <button
              type="button"
              class="desk-second"
              onClick={() => app.go({ at: 'which', loadId: load.loadId })}
            >
              {words.value.desk.shelf.over.which}
            </button>
          ) : null}
          <PotList pots={pots} isOpen={isOpen} choose={choose} />
          {isOpen && left.some((one) => firedOf(one).outAt === undefined) ? (
            <button
              type="button"
              class="desk-second"
              onClick={() => app.act({ do: 'take-out', potIds: left.map(({ facts }) => facts.potId) })}
            >
              {w.allOut}
            </button>
          ) : null}
        </ListPage>
      ) : page === 'elsewhere' ? (
        <Elsewhere choose={choose} close={() => setPage(undefined)} />
      ) : page === 'look' ? (
        looked ? (
          <LookCard key={potKey} pot={looked} next={() => undefined} />
        ) : (
          <ListPage label={w.done} close={() => setPage(undefined)}>
            <p>{w.again.over}</p>
          </ListPage>
        )
      ) : pot && judges ? (
        <JudgeCard key={potKey} pot={pot} drafts={drafts} next={next} over={over} open={setOver} />
      ) : pot && !(isShut && firedOf(pot).guess === undefined) ? (
        <GuessCard
          key={potKey}
          pot={pot}
          load={load}
          next={next}
          skip={() => {
            skip([...skipped, pot.facts.potId])
            next()
          }}
        />
      ) : isOpen ? (
        <DoneCard
          pots={pots}
          again={again.length}
          look={() => setPage('look')}
          elsewhere={() => setPage('elsewhere')}
          choose={choose}
        />
      ) : (
        <Guessed
          left={pots.length - done}
          isShut={isShut}
          anew={() => skip([])}
          toLid={() => app.go({ at: 'shelf', loadId: load.loadId })}
        />
      )}
    </div>
  )
}

/** What was kept, which may be of another version, as a list of pots. */
const listOf = (kept: unknown): readonly string[] =>
  Array.isArray(kept) ? kept.filter((one) => typeof one === 'string') : []

interface ListProps {
  readonly label: string
  /** Back to the cards. */
  readonly close: () => void
  readonly children: ComponentChildren
}

/** A page that lies over the cards, from which the bar leads back to them. */
function ListPage({ label, close, children }: ListProps) {
  useBar(close)
  return (
    <>
      <KilnMain>{children}</KilnMain>
      <BackLine />
      <KnuckleBar label={label} />
    </>
  )
}

interface ElsewhereProps {
  readonly choose: (potId: string) => void
  readonly close: () => void
}

/** Pots that were fired without a load on this phone: any of them may be judged. */
function Elsewhere({ choose, close }: ElsewhereProps) {
  const { table, words } = useOpening()
  const w = words.value.opening
  const pots = firedElsewhere(table.value)
  return (
    <ListPage label={w.done} close={close}>
      {pots.length > 0 ? <PotList pots={pots} isOpen choose={choose} /> : <p>{w.elsewhereNone}</p>}
    </ListPage>
  )
}

interface GuessedProps {
  readonly left: number
  /** The lid was up: nothing more is guessed. */
  readonly isShut: boolean
  readonly anew: () => void
  readonly toLid: () => void
}

/** Nothing is left to guess, or to skip. */
function Guessed({ left, isShut, anew, toLid }: GuessedProps) {
  const { words } = useOpening()
  const w = words.value.opening
  useBar(toLid)
  return (
    <>
      <KilnMain>
        <p class="kiln-big">{isShut ? w.guess.shut : left > 0 ? w.guess.left(left) : w.guess.all}</p>
        {isShut ? null : <p>{w.guess.hidden}</p>}
        {left > 0 && !isShut ? (
          <button type="button" class="desk-second" onClick={anew}>
            {w.guess.anew}
          </button>
        ) : null}
      </KilnMain>
      <BackLine />
      <KnuckleBar label={w.guess.toKiln} />
    </>
  )
}
