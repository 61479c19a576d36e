import type { VNode } from 'preact'
import { useState } from 'preact/hooks'
import type { KilnFacts } from '../../../shared/load.ts'
import { firingOf, USUAL_FIRING } from '../../table/firing/firing.ts'
import { hotInKiln } from '../../table/load/before-fire.ts'
import { conesSeen } from '../../table/load/kiln-space.ts'
import { shelfLine } from '../../table/load/kiln-spoken.ts'
import { levelShown } from '../../table/load/level-shown.ts'
import { candled, type LoadStage, levelsOf, stageOf } from '../../table/load/loads.ts'
import { type LoadState, levelKey } from '../../table/model/load-state.ts'
import { loadInHand } from '../../table/model/load-things.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KILN_CARE_WORDS } from '../../words/kiln-care.ts'
import { BackLine } from '../desk/back-line.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { lazyPart } from '../lazy.tsx'
import { gapText } from './gap-text.ts'
import { InTheWay } from './in-the-way.tsx'
import { Level } from './level.tsx'
import { kilnRefusalText, useLoad } from './load-app.ts'
import type { Packing } from './propose.ts'
import type { Over } from './shelf.tsx'
import { useSpoken } from './use-spoken.ts'

const Ready = lazyPart(() => import('./ready.tsx').then((part) => part.Ready))
const Disputed = lazyPart(() => import('./disputed.tsx').then((part) => part.Disputed))
const Misfits = lazyPart(() => import('./misfits.tsx').then((part) => part.Misfits))
const CandleLines = lazyPart(() => import('./candle-lines.tsx').then((part) => part.CandleLines))

interface CardProps {
  readonly load: LoadState | undefined
  readonly stage: LoadStage
  readonly kiln: KilnFacts
  readonly packing: Packing
  readonly open: (over: Over) => void
  /** The shelf that is looked at, by its key. */
  readonly looked: string | undefined
  readonly look: (key: string | undefined) => void
  /** Keys to loads that are in the fire or not cold yet. */
  readonly beside: readonly VNode[]
}

/** A load until its kiln is on: proposed, stacked shelf by shelf, the lid shut. */
export function LoadCard({ load: kept, stage: known, kiln, packing, open, looked, look, beside }: CardProps) {
  const app = useLoad()
  const { table, words, formats } = app
  const w = words.value.desk.shelf
  const care = KILN_CARE_WORDS[table.value.settings.language]
  const { asking, propose, drawn } = packing
  const load = kept && drawn(kept)
  const stage = load && load !== kept ? stageOf(table.value, load, app.now.value) : known
  const [said, setSaid] = useState<string>()
  const [asked, setAsked] = useState(false)
  const tell = (refusal: ReturnType<typeof app.act> | 'failed') =>
    setSaid(
      refusal === 'failed'
        ? w.failed
        : refusal && refusal.code !== 'nothing-to-do'
          ? kilnRefusalText(words.value, formats.value, table.peek(), refusal)
          : undefined,
    )
  const begin = async (): Promise<void> => {
    if (!load) {
      const firing = firingOf(table.peek()) ?? USUAL_FIRING
      const refusal = app.act({ do: 'begin-load', kilnId: kiln.kilnId, firing })
      if (refusal) return tell(refusal)
    }
    const loadId = load?.loadId ?? loadInHand(table.peek().loads)?.loadId
    if (loadId !== undefined) tell(await propose(loadId))
  }
  /** The kiln goes on once what speaks against it was asked. */
  const light = (loadId: string, sure: boolean, atMs?: number) => {
    const refusal = app.act({ do: 'light', loadId, sure }, atMs)
    const isAsked = refusal?.field === 'wet' || refusal?.field === 'hot-kiln'
    setAsked(isAsked)
    if (!isAsked) tell(refusal)
  }
  useSpoken(kept && !asking && stage.is === 'shelf' ? shelfLine(table.value, kept, stage.level) : undefined)
  const levels = load ? levelsOf(load) : []
  const shown = load && levelShown(load, stage, looked)
  useBar((atMs) => {
    if (asking) return
    setSaid(undefined)
    look(undefined)
    if (stage.is === 'propose') void begin()
    else if (load && stage.is === 'shelf') {
      const { column, storey } = stage.level
      // What is looked at is what is meant: another shelf's bar would load one that nobody sees.
      if (shown === stage.level)
        tell(app.act({ do: 'load-shelf', loadId: load.loadId, column, storey }, atMs))
    } else if (load && stage.is === 'lid') tell(app.act({ do: 'shut-lid', loadId: load.loadId }, atMs))
    else if (load) light(load.loadId, false, atMs)
  })
  const label = asking
    ? w.bar.wait
    : stage.is === 'shelf'
      ? (shown === stage.level ? w.bar.shelf : w.bar.toShelf)(stage.level.number)
      : stage.is === 'lid'
        ? w.bar.lid
        : stage.is === 'light'
          ? w.bar.light
          : w.bar.propose
  const isLoaded = stage.is !== 'shelf' && stage.is !== 'propose'
  const isHot =
    hotInKiln(table.value, { loadId: load?.loadId, kiln: load?.kiln ?? kiln }, app.now.value) !== undefined
  const isCandled = load !== undefined && candled(table.value, load)
  return (
    <>
      <KilnMain>
        <div class="level-card">
          <Alarm said={said} />
          {load && isDisputed(load) ? <Disputed load={load} /> : null}
          {load ? (
            <InTheWay load={load} loaded={isLoaded}>
              {asked && stage.is === 'light' ? (
                <button type="button" class="key" onClick={() => light(load.loadId, true)}>
                  {w.before.light}
                </button>
              ) : null}
            </InTheWay>
          ) : null}
          {load && stage.is === 'shelf' && conesSeen(load) === false ? <p class="alarm">{w.unseen}</p> : null}
          <p class="caution">{isLoaded ? care.light : isHot ? care.cool : care.shelf}</p>
          {load && shown ? (
            <Level load={load} level={shown} rests={asking} tell={tell}>
              {levels.length < 2
                ? null
                : levels.map((level) => (
                    <button
                      key={levelKey(level)}
                      type="button"
                      class="key"
                      aria-pressed={level === shown}
                      onClick={() => look(levelKey(level))}
                    >
                      {level.number}
                      {level.loadedAt === undefined ? '' : ' ✓'}
                    </button>
                  ))}
            </Level>
          ) : stage.is === 'propose' ? (
            <Ready load={load} open={open} kiln={kiln} />
          ) : null}
          {load && isLoaded ? (
            <Misfits load={load} gap={(gap) => gapText(words.value, formats.value, table.value, gap)} />
          ) : null}
          {load && isLoaded && isCandled ? <CandleLines load={load} /> : null}
          {stage.is === 'propose' || !load ? null : (
            <div class={stage.is === 'shelf' ? 'kiln-keys is-three' : 'kiln-keys'}>
              {stage.is === 'shelf' ? (
                <button
                  type="button"
                  class="key"
                  disabled={asking}
                  onClick={() => void propose(load.loadId).then(tell)}
                >
                  {w.again}
                </button>
              ) : null}
              {isLoaded ? (
                <button
                  type="button"
                  class="key"
                  aria-pressed={isCandled}
                  onClick={() =>
                    tell(app.act({ do: 'set-candling', loadId: load.loadId, candle: !isCandled }))
                  }
                >
                  {w.candle}
                </button>
              ) : null}
              {stage.is === 'light' ? (
                <button type="button" class="key" onClick={() => open('on')}>
                  {w.earlier}
                </button>
              ) : null}
              <button type="button" class="key" disabled={asking} onClick={() => open('ticket')}>
                {w.ticket}
              </button>
              <button type="button" class="key" disabled={asking} onClick={() => open('right')}>
                {w.over.right}
              </button>
            </div>
          )}
          {beside.length > 0 ? <div class="kiln-keys">{beside}</div> : null}
        </div>
      </KilnMain>
      <BackLine />
      <KnuckleBar label={label} />
    </>
  )
}

/** Two phones have something of it in two places. */
const isDisputed = ({ things }: LoadState): boolean =>
  Object.values(things).some(({ orHere }) => orHere !== undefined)
