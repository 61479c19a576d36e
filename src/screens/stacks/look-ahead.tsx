import { useEffect, useState } from 'preact/hooks'
import type { CoatFacts, PotFacts } from '../../../shared/nouns.ts'
import { type Ending, type MeltPreview, meltPreviewOf } from '../../table/advice/melt-preview.ts'
import type { PlanOutlook } from '../../table/advice/what-if.ts'
import { pairSoFar } from '../../table/fired/pairs.ts'
import { Choice } from '../../ui/choice.tsx'
import { MeltPot } from '../../ui/melt.tsx'
import { LOOK_WORDS } from '../../words/look.ts'
import { useDesk } from '../desk/desk-app.ts'
import { amount } from '../text/amounts.ts'
import { Remedies } from './remedies.tsx'
import './look-ahead.css'

/** Frames of a play to one cone over, and how long each is shown, ms: two thirds of three seconds to the cone. */
const FRAMES = 37
const FRAME_MS = 85
/** The planned firing is looked at before it goes on, ms. */
const PAUSE_MS = 900
/** Rest after a change before the kiln is looked into, ms. */
const REST_MS = 300
/** Melt is less than a millimetre: drawn so many times as thick. */
const TIMES = 5
const HANGS_MM = 1.5

interface LookProps {
  readonly pot: PotFacts
  readonly name: string
  readonly plan: readonly CoatFacts[]
  readonly outlook: PlanOutlook | undefined
  readonly take: (coats: readonly CoatFacts[]) => void
}

const still = () => matchMedia('(prefers-reduced-motion: reduce)').matches

/** The stack softening on this pot: pressed and watched, or three stills; what it comes to in words beside. */
export function LookAhead({ pot, name, plan, outlook, take }: LookProps) {
  const { table, go } = useDesk()
  const w = LOOK_WORDS[table.value.settings.language]
  const [melting, setMelting] = useState<MeltPreview>()
  const { tiles, firing, buckets } = table.value
  useEffect(() => {
    const timer = setTimeout(
      () => setMelting(outlook && meltPreviewOf(table.peek(), pot, plan, outlook, still() ? 3 : FRAMES)),
      REST_MS,
    )
    return () => clearTimeout(timer)
  }, [outlook, tiles, firing, buckets])
  const first = plan[0]
  return (
    <section class="look" aria-label={w.title}>
      <h2>{w.title}</h2>
      {melting ? (
        <>
          {melting.look.frames.length === 3 ? (
            <Stills melting={melting} name={name} />
          ) : (
            <Play melting={melting} name={name} />
          )}
          {judged(melting.endings).map((ending) => (
            <Verdict key={ending.cone} ending={ending} />
          ))}
          <Notes melting={melting} />
          {outlook ? <Remedies pot={pot} plan={plan} outlook={outlook} take={take} /> : null}
        </>
      ) : outlook ? (
        <p>{w.noFiring}</p>
      ) : null}
      {first && melting?.endings[0]?.room.doubts.includes('noTest') !== false ? (
        <button type="button" class="key" onClick={() => go({ at: 'tile', bucketId: first.bucketId })}>
          {w.toTile}
        </button>
      ) : null}
    </section>
  )
}

/** A flat is not judged in any firing: once is enough. */
const judged = (endings: readonly Ending[]): readonly Ending[] =>
  endings[0]?.room.doubts.includes('flat') ? endings.slice(0, 1) : endings

interface FrameProps {
  readonly melting: MeltPreview
  readonly at: number
  readonly name: string
  readonly width: number
  readonly height: number
}

/** Raw, at the planned cone, one cone over. */
function Moment({ melting, at }: { readonly melting: MeltPreview; readonly at: number }) {
  const { table } = useDesk()
  return <>{momentText(LOOK_WORDS[table.value.settings.language], melting, at)}</>
}

type LookWords = (typeof LOOK_WORDS)['en']

function momentText(w: LookWords, { endings, plannedAt }: MeltPreview, at: number): string {
  const cone = endings[at > plannedAt ? 1 : 0]?.cone
  return at === 0 || cone === undefined ? w.raw : w.cone(cone)
}

function Frame({ melting, at, name, width, height }: FrameProps) {
  const { table } = useDesk()
  const w = LOOK_WORDS[table.value.settings.language]
  const { look, patterns, insideGlaze, endings, plannedAt } = melting
  const frame = look.frames[at]
  const room = endings[at > plannedAt ? 1 : 0]?.room
  if (!frame) return null
  const bands = frame.edges.flatMap(({ glazeId, fromMm, toMm }) => {
    const pattern = patterns[glazeId]
    return pattern ? [{ pattern, fromMm, toMm }] : []
  })
  return (
    <MeltPot
      outer={melting.outer}
      inner={melting.inner}
      footLineMm={melting.footLineMm}
      bands={bands}
      outside={{ points: look.outside, thickMm: frame.outsideMm }}
      inside={{ points: look.inside, thickMm: frame.insideMm }}
      insidePattern={insideGlaze === undefined ? undefined : patterns[insideGlaze]}
      poolDepthMm={frame.poolDepthMm}
      times={TIMES}
      width={width}
      height={height}
      alarm={at > 0 && room?.verdict === 'over'}
      label={w.label(name, momentText(w, melting, at))}
    />
  )
}

function Play({ melting, name }: { readonly melting: MeltPreview; readonly name: string }) {
  const { table } = useDesk()
  const w = LOOK_WORDS[table.value.settings.language]
  const { plannedAt, endings, look } = melting
  const last = look.frames.length - 1
  const [at, setAt] = useState(plannedAt)
  const [plays, setPlays] = useState(false)
  useEffect(() => {
    if (!plays) return
    const timer = setTimeout(
      () => (at < last ? setAt(at + 1) : setPlays(false)),
      at === plannedAt ? PAUSE_MS : FRAME_MS,
    )
    return () => clearTimeout(timer)
  }, [plays, at])
  const stops = [0, plannedAt, ...(endings.length > 1 ? [last] : [])]
  return (
    <div class="look-play">
      <Frame melting={melting} at={Math.min(at, last)} name={name} width={212} height={210} />
      <div class="look-keys">
        <button
          type="button"
          class="desk-main"
          onClick={() => {
            setAt(0)
            setPlays(true)
          }}
        >
          {w.watch}
        </button>
        <Choice
          label={w.title}
          hidden
          options={stops.map((stop) => ({
            value: String(stop),
            label: <Moment melting={melting} at={stop} />,
          }))}
          value={String(at)}
          onChoose={(stop) => {
            setPlays(false)
            setAt(Number(stop))
          }}
        />
      </div>
    </div>
  )
}

/** For whom things should not move. */
function Stills({ melting, name }: { readonly melting: MeltPreview; readonly name: string }) {
  const stops = melting.look.frames.map((_, i) => i).slice(0, melting.endings.length + 1)
  return (
    <ol class="look-stills">
      {stops.map((at) => (
        <li key={at}>
          <Frame melting={melting} at={at} name={name} width={106} height={150} />
          <strong>
            <Moment melting={melting} at={at} />
          </strong>
        </li>
      ))}
    </ol>
  )
}

/** What a firing comes to, and what keeps it from being said for sure. */
function Verdict({ ending }: { readonly ending: Ending }) {
  const { table, formats } = useDesk()
  const w = LOOK_WORDS[table.value.settings.language]
  const { cone, room, carried } = ending
  const { verdict, doubts, untestedGlazes, untried, roomMm, marginRunMm, upperMarginRunMm } = room
  const glaze = (bucketId: string) => table.value.buckets[bucketId]?.facts.name ?? bucketId
  const flat = doubts.includes('flat')
  const mm = (length: number) => formats.value.mm(length)
  return (
    <div class="look-verdict">
      <p class={verdict === 'over' ? 'alarm' : 'strong'}>
        {flat ? w.flat : `${w.cone(cone)}: ${w.verdict[verdict]}`}
      </p>
      {flat ? null : (
        <p class="figures">
          {verdict === 'over'
            ? w.roomOver(mm(roomMm), mm(marginRunMm))
            : upperMarginRunMm >= roomMm
              ? w.roomWorst(mm(roomMm), mm(marginRunMm))
              : w.room(mm(roomMm), mm(marginRunMm).replace(/ .*/, ''), mm(upperMarginRunMm))}
        </p>
      )}
      {[
        ...untestedGlazes.map((id) => w.noTile(glaze(id))),
        ...untried.map(({ over, under }) =>
          w.pair[pairSoFar(table.value, over, under)](glaze(over), glaze(under)),
        ),
        ...(carried && cone === table.value.firing?.cone ? [w.carried] : []),
      ].map((line) => (
        <p key={line} class="soft">
          {line}
        </p>
      ))}
    </div>
  )
}

/** The rim, the well, what hangs; and that the drawing is not to scale there. */
function Notes({ melting }: { readonly melting: MeltPreview }) {
  const { table } = useDesk()
  const w = LOOK_WORDS[table.value.settings.language]
  const { units } = table.value.settings
  const room = melting.endings[0]?.room
  const pool = melting.look.frames[melting.plannedAt]?.poolDepthMm ?? 0
  const coat = (mm: number) => amount('limitMm', mm, units)
  return (
    <p class="help figures">
      {[
        room && room.rimMeltMm > 0 ? `${w.rim(coat(room.rimMeltMm))}.` : '',
        pool > 0 ? `${w.pool(coat(pool))}.` : '',
        room && room.hangingMm >= HANGS_MM ? w.hangs : '',
        w.thick(TIMES),
      ]
        .filter(Boolean)
        .join(' ')}
    </p>
  )
}
