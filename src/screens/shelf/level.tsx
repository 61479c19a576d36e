import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { levelView } from '../../table/load/level-view.ts'
import type { LevelState, LoadState } from '../../table/model/load-state.ts'
import { LevelDrawing } from '../../ui/level-drawing.tsx'
import { gapText } from './gap-text.ts'
import { thingName, useLoad } from './load-app.ts'

interface LevelProps {
  readonly load: LoadState
  readonly level: LevelState
  /** Nothing is moved: another answer comes. */
  readonly rests: boolean
  readonly tell: (refusal: ReturnType<ReturnType<typeof useLoad>['act']>) => void
  /** Keys to the other shelves. */
  readonly children: ComponentChildren
}

/** One shelf from above, to be moved about on, and the nearest gap on it. */
export function Level({ load, level, rests, tell, children }: LevelProps) {
  const { table, words, formats, act } = useLoad()
  const w = words.value.desk.shelf
  const [chosen, setChosen] = useState<string>()
  const view = levelView(table.value, load, level)
  if (!view) return null
  const { column, storey } = level
  const { chamber } = load.kiln
  const [widthMm, depthMm] =
    chamber.kind === 'round' ? [chamber.diameterMm, chamber.diameterMm] : [chamber.widthMm, chamber.depthMm]
  const name = (key: string) => thingName(words.value, table.value, key)
  const at = (spot: { readonly xMm: number; readonly yMm: number }) => ({ column, storey, ...spot })
  const { loadId } = load
  const fixed = level.loadedAt !== undefined || rests
  const [tight] = view.tight
  const [against] = view.against
  const gap = (mm: number) => formats.value.mm(Math.abs(mm))
  return (
    <div class="level-page">
      <div class="level-said">
        {chosen === undefined ? (
          <>
            {tight ? (
              <p class="alarm figures" role="status">
                {gapText(words.value, formats.value, table.value, tight)}
              </p>
            ) : view.nearest ? (
              <p class="figures">
                {w.nearest(
                  name(view.nearest.a.key),
                  view.nearest.b ? name(view.nearest.b.key) : w.post,
                  gap(view.nearest.mm),
                )}
              </p>
            ) : null}
            {against ? (
              <p class="alarm figures">{w.against[against.kind](name(against.one.key), gap(against.mm))}</p>
            ) : null}
          </>
        ) : (
          <p class="help">{w.chosen(name(chosen))}</p>
        )}
      </div>
      {children ? <div class="level-keys">{children}</div> : null}
      <div class="kiln-drawn">
        <LevelDrawing
          round={chamber.kind === 'round'}
          widthMm={widthMm}
          depthMm={depthMm}
          shelves={[{ ...view.shelf, side: column }]}
          posts={level.postMm.length > 0 ? level.posts : []}
          things={view.things.map((one) => ({
            ...one,
            kind: one.what,
            label:
              one.what === 'pot'
                ? `${name(one.key)}${one.onSlab ? 's' : ''}`
                : one.what === 'tile'
                  ? 'T'
                  : 'C',
          }))}
          tight={view.tight.flatMap(({ a, b, post }) => {
            const to = b?.key ?? post
            return to === undefined ? [] : [[a.key, to] as const]
          })}
          chosen={chosen}
          label={w.drawn(level.number, view.things.map(({ key }) => name(key)).join(', '))}
          front={w.front}
          {...(fixed
            ? {}
            : {
                onTap: (key, spot) => {
                  if (key === undefined) {
                    if (chosen !== undefined) tell(act({ do: 'stand', loadId, key: chosen, at: at(spot) }))
                    setChosen(undefined)
                  } else if (chosen === undefined || chosen === key)
                    setChosen(chosen === key ? undefined : key)
                  else {
                    tell(act({ do: 'swap', loadId, keys: [chosen, key] }))
                    setChosen(undefined)
                  }
                },
                onDrag: (key, spot) => {
                  setChosen(undefined)
                  tell(act({ do: 'stand', loadId, key, at: at(spot) }))
                },
                onHold: (key) => {
                  setChosen(undefined)
                  tell(act({ do: 'lift-out', loadId, key }))
                },
              })}
        />
      </div>
    </div>
  )
}
