import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { BACK_WORDS } from '../../words/back.ts'
import { useApp } from '../app.ts'

/** What takes a phone a moment, once the page shows; undefined until then. */
export function useLater<Thing>(make: () => Thing, of: readonly unknown[]): Thing | undefined {
  const [made, setMade] = useState<Thing>()
  useEffect(() => {
    const timer = setTimeout(() => setMade(make()))
    return () => clearTimeout(timer)
  }, of)
  return made
}

/** Words of looking back, which other screens do without. */
export const useBackWords = () => BACK_WORDS[useApp().table.value.settings.language]

interface PartProps {
  readonly title: string
  /** What it shows, in words. */
  readonly said: string
  /** What it can be asked of: keys above the drawing. */
  readonly choice?: ComponentChildren
  /** The drawing; left out where there is nothing to draw. */
  readonly drawn?: ComponentChildren
  readonly legend: ComponentChildren
  /** The mark that was tapped, in words, and the pot it is of. */
  readonly picked: { readonly line: string; readonly potId?: string | undefined } | undefined
  readonly heads: readonly string[]
  /** Asked for when the table is opened. */
  readonly rows: () => readonly (readonly string[])[]
  readonly count: number
}

/** One plot: a sentence, the drawing, what was tapped, and the same as a table. */
export function PlotPart(props: PartProps) {
  const { title, said, choice, drawn, legend, picked, heads, rows, count } = props
  const { go } = useApp()
  const w = useBackWords()
  const [isOpen, setOpen] = useState(false)
  const potId = picked?.potId
  return (
    <section class="back-part">
      <h2>{title}</h2>
      {choice}
      <p class="figures">{said}</p>
      {drawn ? (
        <>
          {drawn}
          <div class="back-picked" role="status">
            <p class="figures">{picked?.line ?? w.tap}</p>
            {potId === undefined ? null : (
              <button type="button" class="key" onClick={() => go({ at: 'story', potId })}>
                {w.toStory}
              </button>
            )}
          </div>
          <ul class="back-legend">{legend}</ul>
          <details class="more" onToggle={(event) => setOpen(event.currentTarget.open)}>
            <summary class="key">{w.asTable(count)}</summary>
            {isOpen ? (
              <table class="back-table figures">
                <thead>
                  <tr>
                    {heads.map((head) => (
                      <th key={head} scope="col">
                        {head}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {rows().map((row, i) => (
                    <tr key={i}>
                      {row.map((cell, k) => (
                        <td key={k}>{cell}</td>
                      ))}
                    </tr>
                  ))}
                </tbody>
              </table>
            ) : null}
          </details>
        </>
      ) : null}
    </section>
  )
}

interface KeyProps {
  readonly shape: 'dot' | 'ring' | 'square' | 'up' | 'down' | 'bar' | 'hatch' | 'solid' | 'letter'
  readonly text: string
}

const KEYS: Readonly<Record<KeyProps['shape'], ComponentChildren>> = {
  dot: <circle cx="12" cy="12" r="6" fill="currentColor" />,
  ring: <circle cx="12" cy="12" r="6" fill="none" stroke="currentColor" stroke-width="2.5" />,
  square: <path d="M6 6 h12 v12 h-12 Z" fill="currentColor" />,
  up: <path d="M5 18 h14 L12 5 Z" fill="currentColor" />,
  down: <path d="M5 6 h14 L12 19 Z" fill="currentColor" />,
  bar: <path d="M12 4 V20 M7 4 h10 M7 20 h10" stroke="currentColor" stroke-width="2.5" />,
  hatch: <path d="M1 12 L12 1 M4 20 L20 4 M12 23 L23 12" stroke="currentColor" stroke-width="2" />,
  solid: <path d="M1 5 h22 v14 h-22 Z" fill="currentColor" opacity="0.25" />,
  letter: <path d="M12 2 V22" stroke="currentColor" stroke-width="2" stroke-dasharray="5 4" />,
}

/** A mark of the drawing and what it stands for. */
export function LegendLine({ shape, text }: KeyProps) {
  return (
    <li>
      <svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
        {KEYS[shape]}
      </svg>
      {text}
    </li>
  )
}
