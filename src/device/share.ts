/**
 * A file out of the app: the phone's share sheet where it takes files, a download elsewhere. Installed
 * apps on iOS mishandle download links, so sharing comes first.
 */
import type { Share } from './ports.ts'

/** Long enough for a download to have begun reading. */
const KEEP_MS = 60_000

export function openShare(): Share {
  return {
    async file(name, type, content) {
      const file = new File([content], name, { type })
      // Only `files`: iOS drops the file when other fields come with it.
      const data = { files: [file] }
      if (navigator.canShare?.(data)) {
        try {
          await navigator.share(data)
          return 'shared'
        } catch (error) {
          if (error instanceof DOMException && error.name === 'AbortError') return 'cancelled'
        }
      }
      const url = URL.createObjectURL(file)
      const link = document.createElement('a')
      link.href = url
      link.download = name
      link.click()
      setTimeout(() => URL.revokeObjectURL(url), KEEP_MS)
      return 'saved'
    },
  }
}
