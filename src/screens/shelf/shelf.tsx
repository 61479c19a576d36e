import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { decideLoad } from '../../table/decide/decide-load.ts'
import { decideSetup } from '../../table/decide/decide-setup.ts'
import type { More } from '../../table/decide/decision.ts'
import { firingOf, USUAL_FIRING } from '../../table/firing/firing.ts'
import { levelShown, postsUnderMm } from '../../table/load/level-shown.ts'
import { FIRST_SHELF_MM } from '../../table/load/level-view.ts'
import { isHot, isWarm, levelsOf, loadsOf, stageOf } from '../../table/load/loads.ts'
import { potsLeftOut } from '../../table/load/to-load.ts'
import type { Action } from '../../table/model/action.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { loadInHand } from '../../table/model/load-things.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import type { Table } from '../../table/model/state.ts'
import { useApp } from '../app.ts'
import { useDays } from '../days.ts'
import { DeskHead } from '../desk/head.tsx'
import { lazyPart } from '../lazy.tsx'
import { ActProvider, useLoad } from './load-app.ts'
import { usePacking } from './propose.ts'
import './shelf.css'
import type { LateDeed } from './when-page.tsx'

const LoadCard = lazyPart(() => import('./load-card.tsx').then((part) => part.LoadCard))
const FireCard = lazyPart(() => import('./fire-card.tsx').then((part) => part.FireCard))
const ReadingPage = lazyPart(() => import('./reading.tsx').then((part) => part.ReadingPage))
const KilnForm = lazyPart(() => import('./kiln-form.tsx').then((part) => part.KilnForm))
const LeftOutPage = lazyPart(() => import('./left-out.tsx').then((part) => part.LeftOutPage))
const Ticket = lazyPart(() => import('./ticket.tsx').then((part) => part.Ticket))
const WhichPot = lazyPart(() => import('./which-pot.tsx').then((part) => part.WhichPot))
const WhenPage = lazyPart(() => import('./when-page.tsx').then((part) => part.WhenPage))
const PutRight = lazyPart(() => import('./put-right.tsx').then((part) => part.PutRight))
const FiringOfLoad = lazyPart(() => import('./firing-of-load.tsx').then((part) => part.FiringOfLoad))
const ConePage = lazyPart(() => import('./cone-page.tsx').then((part) => part.ConePage))

/** What lies over the card of a load. */
export type Over =
  | 'which'
  | 'kiln'
  | 'out'
  | 'ticket'
  | 'reading'
  | 'cone'
  | 'open'
  | 'right'
  | 'firing'
  | LateDeed

/** The load that a screen without one shows: the one in hand, else one whose kiln is hot, else the latest. */
const shown = (table: Table, loadId: string | undefined): LoadState | undefined =>
  (loadId === undefined ? undefined : table.loads?.[loadId]) ??
  loadInHand(table.loads) ??
  loadsOf(table).find(isHot) ??
  loadsOf(table)[0]

const more: More = (table, action, stamp) =>
  decideLoad(table, action, stamp) ?? decideSetup(table, action, stamp)

interface ShelfProps {
  readonly loadId?: string | undefined
  /** What lies over the card at first: it leads back to the opening, where hands came from. */
  readonly first?: 'which'
}

/** The kiln: a load is proposed, stacked, fired and cooled on one card whose bar follows it. */
export function Shelf({ loadId, first }: ShelfProps) {
  const app = useApp()
  const act = useCallback((action: Action, atMs?: number) => app.act(action, atMs, more), [app])
  return (
    <ActProvider value={act}>
      <LoadScreen loadId={loadId} first={first} />
    </ActProvider>
  )
}

function LoadScreen({ loadId, first }: ShelfProps) {
  const app = useLoad()
  const { table, now, words, formats, go } = app
  const w = words.value.desk.shelf
  const [over, setOver] = useState<Over | undefined>(first)
  const [looked, look] = useState<string>()
  const root = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (!root.current) return
    const { detach } = app.attachBench(root.current)
    return detach
  }, [])
  const days = useDays()
  const { mm } = formats.value
  const load = shown(table.value, loadId)
  const kiln = Object.values(table.value.kilns ?? {}).at(-1)
  const close = () => setOver(undefined)
  const packing = usePacking()
  const propose = async (of: string) => {
    close()
    const refusal = await packing.propose(of)
    const then = table.peek().loads?.[of]
    // What was proposed stands already: why the others are in no place is said of each.
    const nothing = refusal !== 'failed' && refusal?.code === 'nothing-to-do'
    if (nothing && then && potsLeftOut(table.peek(), then).length > 0) setOver('out')
    return refusal
  }

  /** What stood as drawn in the kiln as it was may stand no more: what is not loaded is proposed anew. */
  const changed = () => {
    close()
    if (!load || Object.keys(load.things).length === 0) return
    const then = table.peek().loads?.[load.loadId]
    if (!then || then === load) return
    const { is } = stageOf(table.peek(), then, now.peek())
    if (is === 'propose' || is === 'shelf') void propose(then.loadId)
  }
  const stage = load && stageOf(table.value, load, now.value)
  // Beside another key there is room for its day alone.
  const begun = load && days.moment(load.begunAt)
  const of = begun && (load.litAt === undefined || over ? w.loadOf(begun) : begun)
  const level = load && stage?.is === 'shelf' && !over ? levelShown(load, stage, looked) : undefined
  const stands = load && level && postsUnderMm(load, level)
  const under =
    stands === undefined ? of : stands > 0 ? w.onPosts(mm(stands)) : w.onStilts(mm(FIRST_SHELF_MM))
  const title =
    over && over in w.over
      ? w.over[over as keyof typeof w.over]
      : load && level
        ? w.shelfOf(level.number, levelsOf(load).at(-1)?.number ?? level.number)
        : stage
          ? w.stage[stage.is]
          : w.title
  const out = useMemo(() => {
    if (!load || load.litAt !== undefined) return 0
    const later = potsOnTable(table.value).filter(({ later }) => later)
    return potsLeftOut(table.value, load).length + later.length
  }, [table.value, load])
  const others = loadsOf(table.value).filter((other) => other !== load && isWarm(other, now.value))
  const otherKeys = others.map(({ loadId, begunAt }) => (
    <button key={loadId} type="button" class="key" onClick={() => go({ at: 'shelf', loadId })}>
      {w.loadOf(days.moment(begunAt))}
    </button>
  ))
  const card = { kiln, packing: { ...packing, propose }, open: setOver, looked, look, beside: otherKeys }
  const face = () => {
    if (!kiln || over === 'kiln') return <KilnForm kiln={kiln} done={changed} />
    if (!load || !stage) return <LoadCard load={undefined} stage={{ is: 'propose' }} {...card} kiln={kiln} />
    if (over === 'ticket') return <Ticket load={load} close={close} />
    if (over === 'out') return <LeftOutPage load={load} propose={propose} />
    if (over === 'reading' || over === 'open')
      return <ReadingPage load={load} opens={over === 'open'} close={close} />
    if (over === 'right') return <PutRight load={load} open={setOver} />
    if (over === 'firing') return <FiringOfLoad load={load} close={close} />
    if (over === 'on' || over === 'off' || over === 'bung')
      return <WhenPage load={load} deed={over} close={close} />
    if (over === 'which') return <WhichPot load={load} />
    if (over === 'cone') return <ConePage load={load} close={close} />
    if (load.litAt === undefined) return <LoadCard load={load} stage={stage} {...card} kiln={kiln} />
    return <FireCard load={load} open={setOver} beside={otherKeys} />
  }
  return (
    <div class={over === 'ticket' ? 'desk ticket' : 'desk kiln'} ref={root}>
      <DeskHead
        title={title}
        under={under}
        back={first ? { at: 'opening', loadId: load?.loadId ?? '' } : over ? close : { at: 'board' }}
      >
        {over ? null : out > 0 && !packing.asking ? (
          <button type="button" class="key" onClick={() => setOver('out')}>
            {w.out(out)}
          </button>
        ) : load?.litAt !== undefined ? (
          <button
            type="button"
            class="key"
            onClick={() => {
              const inHand = loadInHand(table.value.loads)
              const firing = firingOf(table.value) ?? USUAL_FIRING
              if (!inHand && kiln) app.act({ do: 'begin-load', kilnId: kiln.kilnId, firing })
              go({ at: 'shelf', loadId: loadInHand(table.peek().loads)?.loadId ?? load.loadId })
            }}
          >
            {w.next}
          </button>
        ) : null}
      </DeskHead>
      {face()}
    </div>
  )
}
