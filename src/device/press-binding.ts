/**
 * Feeds the press rules from a page. Targets carry `data-press="bar|small|hold"` and optionally `data-hold-ms`. For
 * bench screens only: desk screens are for clean fingers and plain clicks.
 */

import { holdMsOf, press, restingPress } from './press.ts'
import {
  type Intent,
  type PointerFact,
  type PressKind,
  type PressTarget,
  RISE_MS,
  type TouchRefusal,
} from './press-facts.ts'

export interface PressListener {
  onIntent(intent: Intent): void
  onRefusal(refusal: TouchRefusal): void
  /** A target is held: show its ring and sound its rise, full in {@link RISE_MS}. Called with null when let go. */
  onHolding?(target: PressTarget | null): void
}

export interface PressBinding {
  /** The big action means something else now; hits meant for the old card are passed over. */
  cardChanged(): void
  unbind(): void
}

const KINDS: Readonly<Record<PressKind, true>> = { bar: true, small: true, hold: true }
const isKind = (kind: string): kind is PressKind => Object.hasOwn(KINDS, kind)

/** `root` should outlive the cards: a contact's end is lost with an element that was taken away. */
export function bindPress(root: HTMLElement, listener: PressListener): PressBinding {
  let state = restingPress
  let riseTimer: ReturnType<typeof setTimeout> | undefined
  let holdTimer: ReturnType<typeof setTimeout> | undefined
  let rising = false
  let lastPointerMs = -Infinity

  function feed(fact: PointerFact): void {
    const before = state.candidate
    const step = press(state, fact)
    state = step.state
    if (state.candidate !== before) watchHold()
    if (step.intent) listener.onIntent(step.intent)
    if (step.refusal) listener.onRefusal(step.refusal)
  }

  function watchHold(): void {
    if (rising) listener.onHolding?.(null)
    rising = false
    clearTimeout(riseTimer)
    clearTimeout(holdTimer)
    const candidate = state.candidate
    const holdMs = candidate && holdMsOf(candidate.target)
    if (!candidate || holdMs === null) return
    const dueAtMs = candidate.atMs + holdMs
    const dueMs = dueAtMs - performance.now()
    const rise = (): void => {
      rising = true
      listener.onHolding?.(candidate.target)
    }
    if (dueMs > RISE_MS) riseTimer = setTimeout(rise, dueMs - RISE_MS)
    else rise()
    // Timers count in whole milliseconds and may fire a fraction early; the hold would then never be full.
    holdTimer = setTimeout(() => feed({ kind: 'time', atMs: Math.max(dueAtMs, performance.now()) }), dueMs)
  }

  const onPointer = (event: PointerEvent): void => {
    if (event.type !== 'pointermove') lastPointerMs = event.timeStamp
    if (event.type === 'pointercancel') {
      feed({ kind: 'cancel', id: event.pointerId, atMs: event.timeStamp })
      return
    }
    const place = {
      id: event.pointerId,
      atMs: event.timeStamp,
      xPx: event.clientX,
      yPx: event.clientY,
      widthPx: event.width,
      heightPx: event.height,
    }
    if (event.type === 'pointerdown') {
      if (event.button === 0) feed({ kind: 'down', ...place, target: targetOf(event.target) })
      return
    }
    const kind = event.type === 'pointerup' ? 'up' : 'move'
    if (kind === 'move' && state.candidate?.id !== event.pointerId) return
    feed({ kind, ...place, over: isOver(event, state.candidate?.target) })
  }

  /** Screen readers and switches click without a pointer. */
  const onClick = (event: MouseEvent): void => {
    const target = targetOf(event.target)
    if (event.detail !== 0 || !target || event.timeStamp - lastPointerMs < 1000) return
    listener.onIntent({ target, atMs: event.timeStamp, heldMs: 0, by: 'press' })
  }
  const onMenu = (event: Event): void => event.preventDefault()

  const pointerTypes = ['pointerdown', 'pointermove', 'pointerup', 'pointercancel'] as const
  for (const type of pointerTypes) root.addEventListener(type, onPointer)
  root.addEventListener('click', onClick)
  root.addEventListener('contextmenu', onMenu)
  return {
    cardChanged: () => feed({ kind: 'card', atMs: performance.now() }),
    unbind() {
      clearTimeout(riseTimer)
      clearTimeout(holdTimer)
      for (const type of pointerTypes) root.removeEventListener(type, onPointer)
      root.removeEventListener('click', onClick)
      root.removeEventListener('contextmenu', onMenu)
    },
  }
}

function elementOf(at: EventTarget | null): HTMLElement | null {
  return at instanceof Element ? at.closest<HTMLElement>('[data-press]') : null
}

function targetOf(at: EventTarget | null): PressTarget | null {
  const element = elementOf(at)
  const kind = element?.dataset.press
  if (!element || element.ariaDisabled === 'true' || !kind || !isKind(kind)) return null
  const holdMs = Number(element.dataset.holdMs)
  return { kind, element, holdMs: holdMs > 0 ? holdMs : undefined }
}

/** Touch pointers are captured, so the event's own target says nothing about where the finger is. */
function isOver(event: PointerEvent, target: PressTarget | undefined): boolean {
  const under = elementOf(document.elementFromPoint(event.clientX, event.clientY))
  return target !== undefined && under === target.element
}
