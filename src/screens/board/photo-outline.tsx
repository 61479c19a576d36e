import { useEffect, useRef, useState } from 'preact/hooks'
import type { ShapeFacts } from '../../../shared/nouns.ts'
import {
  type Cut,
  KNOWN,
  type Known,
  type Outline,
  type PhotoFault,
  type Point,
  shapeByPhoto,
  TOO_STEEP_DEG,
  type Trace,
  traceFault,
} from '../../table/entry/photo-outline.ts'
import { Choice } from '../../ui/choice.tsx'
import { PHOTO_WORDS } from '../../words/photo-outline.ts'
import type { Box, Picture } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, useEntry } from '../desk/entry-field.tsx'
import { DeskHead } from '../desk/head.tsx'
import { Alarm } from '../desk/save.tsx'
import { Take } from './photo-take.tsx'
import { TraceView } from './trace-view.tsx'
import './photo-outline.css'

const WHOLE: Box = { x0: 0, y0: 0, x1: 1, y1: 1 }
/** Room round the box that was drawn, in its own longer side; a box is no smaller than this part of the picture. */
const ROOM = 0.1
const LEAST_BOX = 0.04
/** Longer side of what is measured, px. */
const CUT_PX = 480
/** Two millimetres of a phone's screen, CSS px: how far a tap may be off. */
const HAND_PX = 11

interface PhotoOutlineProps {
  readonly base: ShapeFacts
  readonly back: () => void
  /** Takes the measures into the form; nothing is stored by it. */
  readonly keep: (shape: ShapeFacts) => void
}

interface Traced {
  readonly side: readonly Point[]
  readonly sideDone: boolean
  readonly footLeft?: Point
  readonly rimLeft?: Point
}
const NOTHING: Traced = { side: [], sideDone: false }
const LOOKS = ['yes', 'no', 'line'] as const

/** A pot's outline from one photo of its side: traced by hand, the edges found near it, scaled by one known length. */
export function PhotoOutline({ base, back, keep }: PhotoOutlineProps) {
  const { table, formats, photos } = useDesk()
  const w = PHOTO_WORDS[table.value.settings.language]
  const [picture, setPicture] = useState<Picture>()
  const [drawn, setDrawn] = useState<Box>()
  const [part, setPart] = useState<Box>()
  const [traced, setTraced] = useState<Traced>(NOTHING)
  const [looks, setLooks] = useState<(typeof LOOKS)[number]>()
  const [known, setKnown] = useState<Known>('heightMm')
  /** One length told too little: both are asked. */
  const [both, setBoth] = useState(false)
  const [found, setFound] = useState<{
    readonly shape: ShapeFacts
    readonly outline: Outline
    readonly cut: Cut
  }>()
  const [busy, setBusy] = useState(false)
  const [said, setSaid] = useState<string>()
  const widePx = useRef(0)
  const lengths = {
    heightMm: useEntry('heightMm', undefined),
    bellyMm: useEntry('bellyMm', undefined),
  }
  useEffect(() => () => picture?.close(), [picture])

  const read = (file: File | undefined) => {
    if (!file) return
    setSaid(undefined)
    photos()
      .then((store) => store.open(file))
      .then(setPicture, () => setSaid(w.notRead))
  }
  const anew = () => {
    setPicture(undefined)
    setBoth(false)
    setDrawn(undefined)
    setPart(undefined)
    retrace()
  }
  const retrace = () => {
    setTraced(NOTHING)
    setFound(undefined)
    setSaid(undefined)
  }
  const { side, sideDone, footLeft, rimLeft } = traced
  const step = !picture
    ? 'take'
    : !part
      ? 'box'
      : !sideDone
        ? 'side'
        : !footLeft
          ? 'footLeft'
          : !rimLeft
            ? 'rimLeft'
            : found
              ? 'found'
              : 'ask'

  const touch = (at: Point, down: boolean, wide: number) => {
    widePx.current = wide
    if (step === 'box') {
      setDrawn(down || !drawn ? { x0: at.x, y0: at.y, x1: at.x, y1: at.y } : { ...drawn, x1: at.x, y1: at.y })
    } else if (step === 'side') setTraced({ ...traced, side: [...side, at] })
    else if (down && step === 'footLeft') setTraced({ ...traced, footLeft: at })
    else if (down && step === 'rimLeft') setTraced({ ...traced, rimLeft: at })
  }
  const lift = () => {
    if (step !== 'box' || !drawn || !picture) return
    const box = roomy(drawn, picture)
    setDrawn(undefined)
    if (box) setPart(box)
  }
  const undo = () => {
    setSaid(undefined)
    if (rimLeft) setTraced({ side, sideDone, ...(footLeft ? { footLeft } : {}) })
    else if (footLeft) setTraced({ side, sideDone })
    else if (sideDone) setTraced({ side, sideDone: false })
    else if (side.length > 0) setTraced({ side: side.slice(0, -1), sideDone: false })
    else setPart(undefined)
  }
  const find = () => {
    if (!picture || !part || !footLeft || !rimLeft) return
    const asked = both ? KNOWN : [known]
    if (!asked.map((one) => lengths[one].check()).every(Boolean)) return
    const typed = Object.fromEntries(asked.map((one) => [one, lengths[one].value]))
    if (asked.some((one) => typed[one] === undefined)) return
    const cut = cutOf(picture, part)
    const on = ({ x, y }: Point): Point => ({ x: x * cut.width, y: y * cut.height })
    const trace: Trace = {
      side: side.map(on),
      footLeft: on(footLeft),
      rimLeft: on(rimLeft),
      handPx: (HAND_PX * cut.width) / widePx.current,
      ...(looks === 'line' ? {} : { looksIn: looks === 'yes' }),
    }
    setSaid(undefined)
    const fault = traceFault(cut, trace)
    if (fault) return setSaid(faultText(fault))
    setBusy(true)
    // What takes a second begins once the key says so.
    setTimeout(() => {
      const got = shapeByPhoto(base, cut, trace, typed)
      setBusy(false)
      if (got.ok) setFound({ shape: got.shape, outline: got.outline, cut })
      else {
        if (got.field === 'known') setBoth(true)
        setSaid(faultText(got))
      }
    }, 60)
  }
  const faultText = ({ field, value, least, most }: PhotoFault): string => {
    const say = (x: number) =>
      field.endsWith('Mm')
        ? formats.value.mm(x)
        : field === 'points' || field === 'known'
          ? `${x}`
          : `${Math.round(x * 100)} %`
    return w.wrong[field](say(value), say(least), say(most))
  }

  const shown = part ?? WHOLE
  return (
    <div class="desk">
      <DeskHead title={w.title} back={back} />
      <main class="desk-main-part">
        {step === 'ask' ? null : <Alarm said={said} />}
        {picture ? (
          <>
            {step === 'ask' || step === 'found' ? null : (
              <p class="trace-say" role="status">
                {w[step as 'box' | 'side' | 'footLeft' | 'rimLeft']}
              </p>
            )}
            <TraceView
              picture={picture}
              part={shown}
              label={w.picture}
              points={found ? [] : [...side, ...(footLeft ? [footLeft] : []), ...(rimLeft ? [rimLeft] : [])]}
              joined={found ? 0 : side.length}
              box={step === 'box' ? (drawn ?? { x0: 0, y0: 0, x1: 0, y1: 0 }) : undefined}
              outline={found?.outline.seen.map(({ x, y, sure }) => ({
                x: x / found.cut.width,
                y: y / found.cut.height,
                sure,
              }))}
              touch={step === 'ask' || step === 'found' ? undefined : touch}
              lift={lift}
            />
          </>
        ) : (
          <Take read={read} />
        )}
        {step === 'side' ? (
          <button
            type="button"
            class="desk-main"
            disabled={side.length < 2}
            onClick={() =>
              // From the foot up, whichever way it was drawn.
              setTraced({
                side: (side[0]?.y ?? 0) < (side[side.length - 1]?.y ?? 0) ? [...side].reverse() : side,
                sideDone: true,
              })
            }
          >
            {w.sideDone}
          </button>
        ) : null}
        {step === 'ask' ? (
          <>
            <Choice
              label={w.looks}
              columns={3}
              options={LOOKS.map((value) => ({ value, label: w.look[value] }))}
              value={looks}
              onChoose={setLooks}
            />
            {both ? (
              KNOWN.map((one) => <EntryField key={one} entry={lengths[one]} label={w.known[one]} />)
            ) : (
              <>
                <Choice
                  label={w.which}
                  columns={2}
                  options={KNOWN.map((value) => ({ value, label: w.known[value] }))}
                  value={known}
                  onChoose={setKnown}
                />
                <EntryField key={known} entry={lengths[known]} label={w.length} />
              </>
            )}
            <Alarm said={said} />
            <button type="button" class="desk-main" disabled={busy || looks === undefined} onClick={find}>
              {busy ? w.wait : w.find}
            </button>
          </>
        ) : null}
        {found ? (
          <>
            <p class="help">{w.found}</p>
            <p class="trace-measures figures">
              {(
                [
                  ['height', found.shape.heightMm],
                  ['rim', found.shape.rimMm],
                  ['widest', found.outline.widestMm],
                  ['foot', found.shape.footMm ?? 0],
                ] as const
              ).map(([what, mm]) => (
                <span key={what}>
                  {w[what]} <strong>{formats.value.mm(mm)}</strong>
                </span>
              ))}
            </p>
            {found.outline.downDeg > TOO_STEEP_DEG ? <p class="caution">{w.steep}</p> : null}
            <button type="button" class="desk-main" onClick={() => keep(found.shape)}>
              {w.keep}
            </button>
          </>
        ) : null}
        {picture ? (
          <div class="trace-keys">
            <button type="button" class="key" onClick={found ? retrace : undo} disabled={step === 'box'}>
              {found ? w.retrace : w.undo}
            </button>
            <button type="button" class="key" onClick={anew}>
              {w.again}
            </button>
          </div>
        ) : null}
      </main>
    </div>
  )
}

/** The box with room about it, within the picture; nothing where it is hardly one. */
function roomy({ x0, y0, x1, y1 }: Box, { width, height }: Picture): Box | undefined {
  const [wide, high] = [Math.abs(x1 - x0), Math.abs(y1 - y0)]
  if (wide < LEAST_BOX || high < LEAST_BOX) return undefined
  const room = ROOM * Math.max(wide * width, high * height)
  return {
    x0: Math.max(0, Math.min(x0, x1) - room / width),
    y0: Math.max(0, Math.min(y0, y1) - room / height),
    x1: Math.min(1, Math.max(x0, x1) + room / width),
    y1: Math.min(1, Math.max(y0, y1) + room / height),
  }
}

/** What is measured, and where the middle of the whole photo lies in it. */
function cutOf(picture: Picture, part: Box): Cut {
  const pixels = picture.pixels(part, CUT_PX)
  const scale = pixels.width / ((part.x1 - part.x0) * picture.width)
  return {
    ...pixels,
    middle: { x: (0.5 - part.x0) * picture.width * scale, y: (0.5 - part.y0) * picture.height * scale },
    longest: Math.max(picture.width, picture.height) * scale,
  }
}
