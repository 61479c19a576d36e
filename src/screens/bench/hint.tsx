import { useEffect } from 'preact/hooks'
import { cardKey } from '../../table/card/bar-action.ts'
import type { CardKind } from '../../table/card/card.ts'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import type { FaceProps } from './stand-ins.tsx'

/** On the bar, how its card is answered: until one of its kind was answered on this phone. */
export function Hint({ card }: FaceProps) {
  const { table, extras } = useApp()
  const hints: Readonly<Partial<Record<CardKind, string>>> = useLateWords().hint
  useEffect(() => {
    const { kind } = card
    const before = table.peek().hits.at(-1)?.hit
    return () => {
      const { hits, takenBack } = table.peek()
      const last = hits.at(-1)
      // A pause and a hit that was taken back lead to another card too, and answer none.
      if (last === undefined || last.hit === before || last.kind === 'held' || takenBack) return
      extras.peek()?.noteAnswered(kind)
    }
  }, [cardKey(card, 0)])
  const late = extras.value
  const text = late && !late.answered.value.has(card.kind) ? hints[card.kind] : undefined
  useEffect(() => {
    if (text === undefined) return
    late?.sayHint(card.kind, text)
    return () => late?.sayHint(card.kind, '')
  }, [text, cardKey(card, 0)])
  return text === undefined ? null : <span class="bar-hint">{text}</span>
}
