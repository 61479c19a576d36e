/**
 * Any key is the big action: foot pedals, page turners and camera shutters are keyboards that send
 * one of a dozen keys, nobody knows which.
 */
/** Keys that move focus, leave, or belong to the system or the screen reader. */
const NOT_OURS: ReadonlySet<string> = new Set([
  'Tab',
  'Escape',
  'Shift',
  'Control',
  'Alt',
  'AltGraph',
  'Meta',
  'CapsLock',
  'NumLock',
  'ScrollLock',
  'Fn',
  'ContextMenu',
  'PrintScreen',
  'Unidentified',
  'Dead',
  'Process',
  'BrowserBack',
  'GoBack',
])
const FUNCTION_KEY = /^F\d+$/
const TAKES_TEXT = 'input, select, textarea, [contenteditable]'
/** A focused control keeps its own keys; the bar's own are the big action anyway. */
const OWN_CONTROL = 'button:not([data-press="bar"]), a[href], [role="button"]:not([data-press="bar"])'

export interface KeyFact {
  readonly key: string
  readonly repeat: boolean
  readonly withModifier: boolean
  readonly inText: boolean
  readonly onControl: boolean
}

/** Whether a key press is the big action. */
export function isBigAction(fact: KeyFact): boolean {
  if (fact.repeat || fact.withModifier || fact.inText) return false
  if (NOT_OURS.has(fact.key) || FUNCTION_KEY.test(fact.key)) return false
  return !(fact.onControl && (fact.key === 'Enter' || fact.key === ' '))
}

/** Calls `onBig` with the key's page time. Returns the way to stop. */
export function bindKeys(root: Document | HTMLElement, onBig: (atMs: number) => void): () => void {
  const onKey = (event: Event): void => {
    if (!(event instanceof KeyboardEvent)) return
    const at = event.target instanceof Element ? event.target : null
    const fact: KeyFact = {
      key: event.key,
      repeat: event.repeat,
      withModifier: event.ctrlKey || event.altKey || event.metaKey,
      inText: at?.closest(TAKES_TEXT) != null,
      onControl: at?.closest(OWN_CONTROL) != null,
    }
    if (!isBigAction(fact)) return
    event.preventDefault()
    onBig(event.timeStamp)
  }
  root.addEventListener('keydown', onKey)
  return () => root.removeEventListener('keydown', onKey)
}
