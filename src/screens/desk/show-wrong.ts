import type { RefObject } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'

/** A page that is saved as a whole: after `tried` what is wrong on it is opened and brought into sight, wherever it is kept. */
export function useShowWrong(): { readonly page: RefObject<HTMLElement | null>; readonly tried: () => void } {
  const page = useRef<HTMLElement>(null)
  const [times, setTimes] = useState(0)
  useLayoutEffect(() => {
    if (times === 0) return
    const wrong = [...(page.current?.querySelectorAll('.is-wrong') ?? [])]
    for (const one of wrong) {
      const kept = one.closest('details')
      if (kept) kept.open = true
    }
    wrong[0]?.scrollIntoView({ block: 'center' })
  }, [times])
  return { page, tried: () => setTimes(times + 1) }
}
