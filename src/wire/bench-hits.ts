import { bindKeys } from '../device/keys.ts'
import { bindPress } from '../device/press-binding.ts'
import type { App, BenchView } from '../screens/app.ts'
import type { Fetched } from '../ui/fetched.ts'
import { pressedOf } from '../ui/press.tsx'
import type { Sounding } from './sounding.ts'

/** Hits on a bench screen by finger, key or pedal, heard and seen as the press rules say. */
export function bindBench(
  root: HTMLElement,
  bench: BenchView,
  sounding: Fetched<Sounding>,
): ReturnType<App['attachBench']> {
  const unlock = () =>
    sounding.with(({ sound, take }) => {
      take()
      void sound.unlock()
    })
  let stopRise: (() => void) | undefined
  let held: HTMLElement | undefined
  const press = bindPress(root, {
    onIntent({ target: { kind, element }, by, atMs }) {
      unlock()
      if (kind === 'bar') bench.pressBar(by, atMs)
      else if (element) pressedOf(element)?.(atMs)
    },
    onRefusal(refusal) {
      if (refusal.heard) sounding.with(({ sound }) => sound.refused())
    },
    onHolding(target) {
      stopRise?.()
      stopRise = target ? sounding.now()?.sound.holding() : undefined
      held?.classList.remove('is-holding')
      held = target?.element
      held?.classList.add('is-holding')
    },
  })
  const unbindKeys = bindKeys(document, (atMs) => {
    unlock()
    bench.pressBar('key', atMs)
  })
  return {
    cardChanged: press.cardChanged,
    detach() {
      press.unbind()
      unbindKeys()
    },
  }
}
