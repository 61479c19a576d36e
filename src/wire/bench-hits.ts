import { bindKeys } from '../device/keys.ts'
import { bindPress } from '../device/press-binding.ts'
import type { App, BenchHit } from '../screens/app.ts'
import type { Fetched } from '../ui/fetched.ts'
import type { Sounding } from './sounding.ts'

/** Hits on a bench screen by finger, key or pedal, heard and seen as the press rules say. */
export function bindBench(
  root: HTMLElement,
  onHit: (hit: BenchHit) => void,
  sounding: Fetched<Sounding>,
): ReturnType<App['attachBench']> {
  const unlock = () => sounding.with(({ sound }) => void sound.unlock())
  let stopRise: (() => void) | undefined
  const press = bindPress(root, {
    onIntent(intent) {
      unlock()
      onHit(intent)
    },
    onRefusal(refusal) {
      if (refusal.heard) sounding.with(({ sound }) => sound.refused())
    },
    onHolding(target) {
      stopRise?.()
      stopRise = target ? sounding.now()?.sound.holding() : undefined
      for (const element of root.querySelectorAll('.is-holding')) element.classList.remove('is-holding')
      if (target) root.querySelector(`[data-act="${target.act}"]`)?.classList.add('is-holding')
    },
  })
  const unbindKeys = bindKeys(document, (atMs) => {
    unlock()
    const big = root.querySelector<HTMLElement>('[data-press="bar"]')?.dataset.act
    if (big !== undefined) onHit({ act: big, atMs, by: 'press' })
  })
  return {
    cardChanged: press.cardChanged,
    detach() {
      press.unbind()
      unbindKeys()
    },
  }
}
