/** The press binding on a bare page: a bar below, a small button above, one that erases between them. */
import { bindKeys } from '../../../src/device/keys.ts'
import { bindPress } from '../../../src/device/press-binding.ts'
import type { Intent, TouchRefusal } from '../../../src/device/press-facts.ts'

document.body.innerHTML = `
  <style>
    body { margin: 0; touch-action: none; user-select: none }
    button { position: fixed; left: 16px; border: 0 }
    #bar { bottom: 16px; height: 250px; width: 328px }
    #stale { top: 200px; right: 16px; left: auto; height: 108px; width: 112px }
    #small { top: 16px; height: 108px; width: 112px }
    #erase { top: 200px; height: 108px; width: 112px }
  </style>
  <main style="height: 100vh">
    <button id="bar" data-press="bar">Start</button>
    <button id="stale" data-press="bar" data-hold-ms="2000">Stirred</button>
    <button id="small" data-press="small">Hold</button>
    <button id="erase" data-press="hold">Gone</button>
  </main>`

/** Which button was hit, with the rest of the hit. */
type Hit = Omit<Intent, 'target'> & { readonly on: string | undefined }
const intents: Hit[] = []
const refusals: TouchRefusal[] = []
const holding: (string | null)[] = []
let keys = 0
const binding = bindPress(document.querySelector('main')!, {
  onIntent: ({ target, ...hit }) => intents.push({ ...hit, on: target.element?.id }),
  onRefusal: (refusal) => refusals.push(refusal),
  onHolding: (target) => holding.push(target?.element?.id ?? null),
})
bindKeys(document, () => keys++)

const harness = {
  take: () => ({
    intents: intents.splice(0),
    refusals: refusals.splice(0),
    holding: holding.splice(0),
    keys,
  }),
  hits: () => intents,
  held: () => holding,
  cardChanged: () => binding.cardChanged(),
}
export type PressHarness = typeof harness

declare global {
  interface Window {
    pressHarness: PressHarness
  }
}
window.pressHarness = harness
