import type { RefObject } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'

/** A finger lifts what it holds for so long; a mouse lifts it by dragging. */
const LIFT_MS = 400
/** A finger wanders by so much in a tap, px. */
const TAP_PX = 10
/** So near to an edge what is carried scrolls the page, by so much a move, px. */
const EDGE_PX = 56
const SCROLL_PX = 9

interface Lifted {
  readonly key: string
  /** How far it was carried, px. */
  readonly dx: number
  readonly dy: number
}

interface CarryProps {
  /** Let go over the element of another `data-place`. */
  readonly drop: (key: string, place: string) => void
  /** Lifted and let go where it stood. */
  readonly hold: (key: string) => void
}

interface Held {
  readonly pointer: number
  readonly key: string
  readonly x: number
  readonly y: number
  readonly scrolled: number
  readonly timer: ReturnType<typeof setTimeout>
  lifted: boolean
}

/**
 * Carrying what has a `data-carry` to what has a `data-place`, below an element that scrolls. A page can be scrolled over
 * both, and a short tap on them stays a tap.
 */
export function useCarry<T extends HTMLElement>({
  drop,
  hold,
}: CarryProps): {
  readonly root: RefObject<T | null>
  readonly lifted: Lifted | undefined
} {
  const root = useRef<T>(null)
  const [lifted, setLifted] = useState<Lifted>()
  const acts = useRef({ drop, hold })
  acts.current = { drop, hold }
  useEffect(() => {
    const element = root.current
    if (!element) return
    let held: Held | undefined
    const end = () => {
      clearTimeout(held?.timer)
      held = undefined
      setLifted(undefined)
    }
    const lift = () => {
      if (!held) return
      held.lifted = true
      setLifted({ key: held.key, dx: 0, dy: 0 })
    }
    const begin = (event: PointerEvent) => {
      const key = (event.target as Element).closest<HTMLElement>('[data-carry]')?.dataset.carry
      if (key === undefined || !event.isPrimary || event.button !== 0) return
      const { pointerId: pointer, clientX: x, clientY: y } = event
      held = {
        pointer,
        key,
        x,
        y,
        scrolled: element.scrollTop,
        timer: setTimeout(lift, LIFT_MS),
        lifted: false,
      }
    }
    const move = (event: PointerEvent) => {
      if (held?.pointer !== event.pointerId) return
      const [dx, dy] = [event.clientX - held.x, event.clientY - held.y]
      if (!held.lifted) {
        if (Math.hypot(dx, dy) < TAP_PX) return
        clearTimeout(held.timer)
        if (event.pointerType !== 'mouse') return end()
        lift()
      }
      const { top, bottom } = element.getBoundingClientRect()
      if (event.clientY < top + EDGE_PX) element.scrollTop -= SCROLL_PX
      if (event.clientY > bottom - EDGE_PX) element.scrollTop += SCROLL_PX
      setLifted({ key: held.key, dx, dy: dy + element.scrollTop - held.scrolled })
    }
    const letGo = (event: PointerEvent) => {
      if (held?.pointer !== event.pointerId) return
      const { key, x, y, lifted: carried } = held
      end()
      if (!carried) return
      // What was carried is not tapped as well.
      const stop = (click: Event) => click.stopPropagation()
      element.addEventListener('click', stop, { capture: true })
      setTimeout(() => element.removeEventListener('click', stop, { capture: true }))
      if (Math.hypot(event.clientX - x, event.clientY - y) < TAP_PX) return acts.current.hold(key)
      const places = document
        .elementsFromPoint(event.clientX, event.clientY)
        .map((under) => under.closest<HTMLElement>('[data-place]'))
      const place = places.find((at) => at && element.contains(at) && at.dataset.carry !== key)
      if (place?.dataset.place !== undefined) acts.current.drop(key, place.dataset.place)
    }
    const still = (event: Event) => {
      if (held?.lifted) event.preventDefault()
    }
    const menu = (event: Event) => {
      if (held) event.preventDefault()
    }
    const leaving = new AbortController()
    const { signal } = leaving
    element.addEventListener('pointerdown', begin, { signal })
    element.addEventListener('pointermove', move, { signal })
    element.addEventListener('pointerup', letGo, { signal })
    element.addEventListener('pointercancel', end, { signal })
    element.addEventListener('contextmenu', menu, { signal })
    element.addEventListener('touchmove', still, { signal, passive: false })
    return () => {
      leaving.abort()
      clearTimeout(held?.timer)
    }
  }, [])
  return { root, lifted }
}
