import { type ComponentType, h } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { useDesk } from './app.ts'

type State<P> =
  | { readonly is: 'loading' | 'failed' }
  | { readonly is: 'here'; readonly part: ComponentType<P> }

/** A part of a screen that is fetched when it is first shown. */
export function later<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let state: State<P> = { is: 'loading' }
  return function Later(props: P) {
    const [, again] = useState(0)
    const { words } = useDesk()
    useEffect(() => {
      if (state.is === 'here') return
      load().then(
        (part) => {
          state = { is: 'here', part }
          again(1)
        },
        () => {
          state = { is: 'failed' }
          again(2)
        },
      )
    }, [])
    if (state.is === 'here') return h(state.part, props)
    return state.is === 'failed' ? <p class="alarm">{words.value.missing}</p> : null
  }
}
