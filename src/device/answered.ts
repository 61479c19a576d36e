import { type ReadonlySignal, signal } from '@preact/signals'

/** Which cards were answered on this phone, over both tables. Losing it shows a hint again and loses nothing else. */
export interface Answered {
  readonly answered: ReadonlySignal<ReadonlySet<string>>
  noteAnswered(kind: string): void
}

const KEY = 'bucketside.answered'

export function openAnswered(): Answered {
  const answered = signal<ReadonlySet<string>>(new Set(read()))
  return {
    answered,
    noteAnswered(kind) {
      if (answered.peek().has(kind)) return
      answered.value = new Set([...answered.peek(), kind])
      try {
        localStorage.setItem(KEY, [...answered.peek()].join(' '))
      } catch {
        // Walled off, or full: said again in the next window.
      }
    },
  }
}

function read(): readonly string[] {
  try {
    return (localStorage.getItem(KEY) ?? '').split(' ')
  } catch {
    return []
  }
}
