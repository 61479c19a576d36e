import { signal } from '@preact/signals'
import type { ComponentType } from 'preact'
import { useEffect, useLayoutEffect } from 'preact/hooks'
import { fetched } from '../ui/fetched.ts'
import { notHad } from '../ui/not-had.ts'
import { useApp } from './app.ts'

/** How long the first card has the phone to itself before the other parts are fetched, ms. */
const LATER_MS = 1500

type Load<Props> = () => Promise<ComponentType<Props>>

const all: (() => void)[] = []
const first: (() => void)[] = []

/**
 * A part that is fetched when it is asked for, or when the first card has long been drawn. Until it is here, `Plain`
 * stands for it; without one, that it cannot be had is shown.
 */
export function lazyPart<Props extends object>(
  load: Load<Props>,
  Plain?: ComponentType<Props>,
): ComponentType<Props> {
  return Plain ? part(all, load, Plain) : part(all, load, () => null, Missing)
}

/** A part of the bench that is fetched as soon as the first card is drawn. Until it is here, `Plain` stands for it. */
export function withStandIn<Props extends object>(
  load: Load<Props>,
  Plain: ComponentType<Props>,
): ComponentType<Props> {
  return part(first, load, Plain)
}

/** Something else than a screen's part, fetched like {@link lazyPart}: a hook that answers undefined until it is here. */
export function lazyValue<Thing>(load: () => Promise<Thing>): () => Thing | undefined {
  const { ask, got } = shown(load)
  all.push(ask)
  return function useThing() {
    useEffect(ask, [])
    return got.value.thing
  }
}

function part<Props extends object>(
  asks: (() => void)[],
  load: Load<Props>,
  Plain: ComponentType<Props>,
  Failed?: ComponentType,
): ComponentType<Props> {
  const { ask, got } = shown(load, Failed !== undefined)
  asks.push(ask)
  // What has a stand-in lets it be painted first.
  const useAsking = Failed ? useLayoutEffect : useEffect
  return function Later(props: Props) {
    useAsking(ask, [])
    const { thing: Part = Plain, failed } = got.value
    return Failed && failed ? <Failed /> : <Part {...props} />
  }
}

/** What is fetched, as a signal; `gives`: a failure is shown instead of being tried again. */
function shown<Thing>(load: () => Promise<Thing>, gives = false) {
  const got = signal<{ readonly thing?: Thing; readonly failed?: true }>({})
  const part = fetched(load, gives ? () => (got.value = { failed: true }) : undefined)
  part.with((thing) => {
    got.value = { thing }
  })
  return { ask: part.ask, got }
}

/** Fetches what {@link withStandIn} waits for. */
export function fetchFaces(): void {
  for (const ask of first) ask()
}

/** Fetches every part in a while, one after another: from then on a hit finds it there. */
export function useAllParts(): void {
  useEffect(() => {
    let timer = setTimeout(next, LATER_MS)
    let asked = 0
    function next() {
      all[asked++]?.()
      if (asked < all.length) timer = setTimeout(next)
    }
    return () => clearTimeout(timer)
  }, [])
}

/** A part of the app could not be fetched. */
function Missing() {
  const { words, go } = useApp()
  const w = words.value
  return (
    <main class="desk desk-main-part">
      <p>{notHad(w)}</p>
      <button type="button" class="desk-main" onClick={() => location.reload()}>
        {w.retry}
      </button>
      <button type="button" class="desk-second" onClick={() => go({ at: 'bench' })}>
        {w.toBench}
      </button>
    </main>
  )
}
