import { useEffect, useMemo, useState } from 'preact/hooks'
import '../../table/forecast/walls.ts'
import { firedOf } from '../../table/fired/fired-pot.ts'
import { drawingOf } from '../../table/forecast/drawing.ts'
import { coatsOn } from '../../table/model/plan.ts'
import type { PotState } from '../../table/model/state.ts'
import { filmOf, type Scene, sceneAt, waitedShare } from '../../table/opening/film.ts'
import { outsideWall, pointAt } from '../../table/opening/wall.ts'
import { useDays } from '../days.ts'
import { coverText, nameOf } from '../text/pot-text.ts'
import { FilmDrawing } from './film-drawing.tsx'
import { foundText, reachOf, useOpening } from './opening-app.ts'
import { Kept } from './photo-page.tsx'
import { useBackWords, useLater } from './plot-part.tsx'
import './film.css'

const still = () => matchMedia('(prefers-reduced-motion: reduce)').matches
/** The melt begins to move in the last part of a firing. */
const MELTS_FROM = 0.55

/** A story played in a minute for a class: coats as they went on, waits sped up, the melt, the photo. */
export function Film({ pot }: { readonly pot: PotState }) {
  const { table, words } = useOpening()
  const w = useBackWords().film
  const scenes = useLater(() => filmOf(table.peek(), pot), [pot])
  const [ms, setMs] = useState(0)
  const [playing, setPlaying] = useState(() => !still())
  const all = scenes?.reduce((sum, scene) => sum + scene.ms, 0) ?? 0
  useEffect(() => {
    if (!playing || !scenes) return undefined
    let last = performance.now()
    let frame = requestAnimationFrame(function next(now) {
      // A page that was hidden goes on where it was.
      const by = Math.min(200, now - last)
      last = now
      setMs((at) => Math.min(all, at + by))
      frame = requestAnimationFrame(next)
    })
    return () => cancelAnimationFrame(frame)
  }, [playing, scenes])
  useEffect(() => {
    if (all > 0 && ms >= all) setPlaying(false)
  }, [ms, all])
  if (!scenes) return null
  const { index, share } = sceneAt(scenes, ms)
  const scene = scenes[index]
  if (!scene) return null
  const isOver = ms >= all
  /** To another part, as it is at its end: by hand nothing moves. */
  const step = (by: 1 | -1) => {
    setPlaying(false)
    const to = Math.max(0, Math.min(scenes.length - 1, index + by))
    setMs(scenes.slice(0, to + 1).reduce((sum, one) => sum + one.ms, 0) - (to < scenes.length - 1 ? 1 : 0))
  }
  const play = () => {
    if (isOver) setMs(0)
    setPlaying(!playing)
  }
  return (
    <section class="film" aria-label={words.value.desk.pot.title(nameOf(words.value, pot))}>
      <div class="film-picture">
        <Picture pot={pot} scene={scene} share={share} />
      </div>
      <div class="film-side">
        <Caption pot={pot} scene={scene} share={share} />
        <div class="film-parts" role="img" aria-label={w.part(index + 1, scenes.length)}>
          {scenes.map((one, i) => (
            <span key={i} style={{ flexGrow: one.ms }}>
              <span style={{ width: `${i < index ? 100 : i > index ? 0 : share * 100}%` }} />
            </span>
          ))}
        </div>
        <button type="button" class="desk-main" onClick={play}>
          {playing ? w.stop : isOver ? w.again : w.play}
        </button>
        <div class="pair">
          <button type="button" class="desk-second" disabled={index === 0} onClick={() => step(-1)}>
            {w.before}
          </button>
          <button
            type="button"
            class="desk-second"
            disabled={index === scenes.length - 1}
            onClick={() => step(1)}
          >
            {w.next}
          </button>
        </div>
      </div>
    </section>
  )
}

interface MomentProps {
  readonly pot: PotState
  readonly scene: Scene
  readonly share: number
}

/** Water between the moments of a wait that were computed, grams; undefined where nothing is known. */
function waterAt(scene: Scene, share: number): number | undefined {
  if (scene.what !== 'wait' || scene.waterG.length < 2) return undefined
  const { waterG } = scene
  const at = share * (waterG.length - 1)
  const i = Math.min(Math.floor(at), waterG.length - 2)
  const [a = 0, b = 0] = [waterG[i], waterG[i + 1]]
  return a + (b - a) * (at - i)
}

/** How wet it looks, 0 to 1: a coat that goes on wets, a wall of which nothing is known dries evenly. */
function wetAt(scene: Scene, share: number): number {
  if (scene.what === 'coat') return share
  if (scene.what !== 'wait') return 0
  const water = waterAt(scene, share)
  return water === undefined ? 1 - share : water / Math.max(1, scene.waterG[0] ?? 1)
}

const AFTER_FIRE: readonly Scene['what'][] = ['found', 'photo']

function Picture({ pot, scene, share }: MomentProps) {
  const { table, words } = useOpening()
  const w = useBackWords().film
  const { coats, what } = scene
  const drawing = useMemo(
    () => drawingOf(table.value, { ...pot, dips: coatsOn(pot).slice(0, coats) }, 'as-is'),
    [pot, coats],
  )
  const wall = useMemo(() => outsideWall(table.value, pot), [pot])
  if (scene.what === 'photo') return <Kept photoId={scene.photoId} alt={w.photo} />
  const reach = reachOf(firedOf(pot).found?.run)
  const runs = AFTER_FIRE.includes(what)
    ? 1
    : what === 'fire'
      ? Math.max(0, (share - MELTS_FROM) / (1 - MELTS_FROM))
      : 0
  const { edgeMm } = wall
  const downMm =
    edgeMm === undefined || reach === undefined ? undefined : reach === 'shelf' ? wall.roomMm : reach
  const frontMm =
    edgeMm === undefined || downMm === undefined || runs === 0
      ? undefined
      : pointAt(wall.line, edgeMm + downMm * runs).zMm
  return (
    <FilmDrawing
      drawing={drawing}
      grown={scene.what === 'coat' && scene.dip.cover.kind !== 'inside' ? share : 1}
      fromRim={scene.what === 'coat' && scene.dip.cover.kind === 'collar'}
      wet={wetAt(scene, share)}
      frontMm={frontMm}
      onShelf={what === 'loaded' || what === 'fire' || what === 'found'}
      label={words.value.desk.pot.title(nameOf(words.value, pot))}
    />
  )
}

/** What is on, and when it was. */
function Caption({ pot, scene, share }: MomentProps) {
  const { table, words, formats } = useOpening()
  const w = useBackWords().film
  const days = useDays()
  const f = formats.value
  const waitedMs = scene.what === 'wait' ? waitedShare(share) * (scene.until - (scene.at ?? scene.until)) : 0
  const lines = (): readonly (string | undefined)[] => {
    switch (scene.what) {
      case 'coat': {
        const { bucketId, cover, holdS } = scene.dip
        const name = (table.value.buckets[bucketId] ?? table.value.removed?.[bucketId])?.facts.name ?? ''
        const thick = scene.likelyMm === undefined ? undefined : w.thick(f.coat(scene.likelyMm))
        return [
          w.coat(scene.coats, name),
          w.under(coverText(words.value, f, cover), words.value.bench.seconds(holdS), thick),
        ]
      }
      case 'wait': {
        const water = waterAt(scene, share)
        const left = water === undefined ? undefined : w.water(Math.round(water))
        return [w.wait, [w.waited(f.span(waitedMs)), left].filter(Boolean).join(', ')]
      }
      case 'loaded':
        return [w.loaded(scene.place)]
      case 'fire': {
        const { at, until, cone } = scene
        const parts = [
          at !== undefined && until !== undefined ? w.fired(f.span(until - at)) : undefined,
          cone === undefined ? undefined : w.cone(cone),
        ]
        return [share < MELTS_FROM ? w.inKiln : w.fire, parts.filter(Boolean).join(', ')]
      }
      case 'found': {
        const { found } = firedOf(pot)
        return [found ? foundText(words.value, f, found) : undefined]
      }
      default:
        return [w[scene.what]]
    }
  }
  const [first, second] = lines()
  return (
    <div class="film-said" role="status">
      <p class="kiln-big">{first}</p>
      <p class="figures">{second}</p>
      <p class="soft figures">{scene.at === undefined ? '' : days.moment(scene.at + waitedMs)}</p>
    </div>
  )
}
