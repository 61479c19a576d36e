import { effect, type Signal, signal } from '@preact/signals'
import type { Route } from '../screens/app.ts'

/**
 * The address after `#` names the screen. One history entry is used throughout: a swipe from the edge of a wet
 * screen has nowhere to go.
 */
export function openRoute(start: Route): Signal<Route> {
  const route = signal<Route>(routeOf(location.hash) ?? start)
  effect(() => {
    const hash = print(route.value)
    if (location.hash !== hash) history.replaceState(null, '', hash)
  })
  addEventListener('hashchange', () => {
    route.value = routeOf(location.hash) ?? start
  })
  return route
}

const print = (route: Route): string => {
  const id =
    'potId' in route
      ? route.potId
      : 'stackId' in route
        ? route.stackId
        : 'bucketId' in route
          ? route.bucketId
          : 'loadId' in route
            ? route.loadId
            : 'door' in route
              ? route.door
              : 'stage' in route
                ? route.stage
                : undefined
  const second = 'underId' in route ? route.underId : undefined
  const named = [id, second].flatMap((part) => (part === undefined ? [] : encodeURIComponent(part)))
  return ['#', route.at, ...named].join('/')
}

/** The screen that an address names; undefined where it names none. A broken address names the screen alone. */
export function routeOf(hash: string): Route | undefined {
  const [, at, id, second] = hash.split('/')
  const named = readable(id)
  switch (at) {
    case 'first':
    case 'bench':
    case 'board':
    case 'settle':
    case 'looks':
    case 'elsewhere':
    case 'taught':
    case 'fired':
    case 'plots':
    case 'firing':
    case 'codes':
    case 'class':
      return { at }
    case 'shelf':
    case 'opening':
    case 'which':
      return named === undefined ? { at } : { at, loadId: named }
    case 'room':
      return named === undefined ? { at } : { at, door: named }
    case 'help':
      return named === undefined ? { at } : { at, stage: named }
    case 'story':
      return named === undefined ? { at: 'fired' } : { at, potId: named }
    case 'judge':
      return named === undefined ? { at: 'opening' } : { at, potId: named }
    case 'pot':
      return named === undefined ? { at } : { at, potId: named }
    case 'stacks':
    case 'handout':
      return named === undefined ? { at } : { at, stackId: named }
    case 'tile':
    case 'results':
      if (named === undefined) return { at: 'buckets' }
      return { at, bucketId: named, ...(readable(second) ? { underId: readable(second) } : {}) }
    case 'buckets':
      return named === undefined ? { at } : { at, bucketId: named }
    default:
      return undefined
  }
}

/** A part of an address, if it says anything. */
function readable(part: string | undefined): string | undefined {
  try {
    const name = part ? decodeURIComponent(part) : ''
    // Nor is it a name that every object has.
    return name === '' || name in {} ? undefined : name
  } catch {
    return undefined
  }
}
