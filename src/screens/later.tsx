import { signal } from '@preact/signals'
import type { ComponentType } from 'preact'
import { useEffect, useLayoutEffect } from 'preact/hooks'
import { useApp } from './app.ts'

/** How long the first card has the phone to itself before the other parts are fetched, ms. */
const LATER_MS = 1500

const all: (() => void)[] = []

/** A part that is fetched when it is asked for, or when the first card has long been drawn. */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const part = signal<{ readonly shows?: ComponentType<Props>; readonly failed?: true }>({})
  let asked = false
  const ask = () => {
    if (asked) return
    asked = true
    load().then(
      (shows) => {
        part.value = { shows }
      },
      () => {
        asked = false
        part.value = { failed: true }
      },
    )
  }
  all.push(ask)
  return function Later(props: Props) {
    useLayoutEffect(ask, [])
    const { shows: Part, failed } = part.value
    return Part ? <Part {...props} /> : failed ? <Missing /> : null
  }
}

/** Fetches every part in a while: from then on a hit finds it there. */
export function useParts(): void {
  useEffect(() => {
    const timer = setTimeout(() => {
      for (const ask of all) ask()
    }, LATER_MS)
    return () => clearTimeout(timer)
  }, [])
}

/** A part of the app could not be fetched: no network, and not kept yet. */
function Missing() {
  const { words, go } = useApp()
  const w = words.value
  return (
    <main class="desk desk-main-part">
      <p>{w.missing}</p>
      <button type="button" class="desk-main" onClick={() => location.reload()}>
        {w.retry}
      </button>
      <button type="button" class="desk-second" onClick={() => go({ at: 'bench' })}>
        {w.toBench}
      </button>
    </main>
  )
}
