/** A touch's click may come in a later task than its lift, ms. */
const CLICK_AFTER_MS = 50

/**
 * Follows the pointers on a page from now on. Resolves when none presses and the click of the last one was heard:
 * what is under a finger must not be taken away, or the tap is lost.
 */
export function followPointers(page: EventTarget): () => Promise<void> {
  const down = new Set<number>()
  let waiting: (() => void)[] = []
  const lift = (event: Event) => {
    down.delete((event as PointerEvent).pointerId)
    if (down.size > 0) return
    for (const done of waiting) setTimeout(done, CLICK_AFTER_MS)
    waiting = []
  }
  page.addEventListener('pointerdown', (event) => down.add((event as PointerEvent).pointerId), true)
  for (const end of ['pointerup', 'pointercancel']) page.addEventListener(end, lift, true)
  return () => (down.size === 0 ? Promise.resolve() : new Promise((done) => waiting.push(done)))
}
