import { useState } from 'preact/hooks'
import { deedsBack } from '../../table/load/deeds.ts'
import type { Action } from '../../table/model/action.ts'
import type { Deed, LoadState } from '../../table/model/load-state.ts'
import { KILN_FORM_WORDS } from '../../words/kiln-form.ts'
import { KILN_PAGE_WORDS } from '../../words/kiln-pages.ts'
import { useDays } from '../days.ts'
import { BackLine } from '../desk/back-line.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { kilnRefusalText, useLoad } from './load-app.ts'
import { OffsetTaken } from './offset-taken.tsx'
import type { Over } from './shelf.tsx'

interface Seen {
  readonly at: number
  readonly label: string
  readonly action: Action
}

interface PutRightProps {
  readonly load: LoadState
  readonly open: (over: Over) => void
}

/** What was said of a load by mistake: a tap, and it was never so. Its firing, and its kiln while that is not on. */
export function PutRight({ load, open }: PutRightProps) {
  const { table, words, formats, act, go } = useLoad()
  const w = words.value.desk.shelf
  const pages = KILN_PAGE_WORDS[table.value.settings.language]
  const days = useDays()
  const [said, setSaid] = useState<string>()
  const { loadId, firing, litAt } = load
  const { temp } = formats.value
  const hit = (...[action]: Parameters<typeof act>) => {
    const refusal = act(action)
    setSaid(refusal && kilnRefusalText(words.value, formats.value, table.peek(), refusal))
  }
  const loaded = Object.values(load.levels).filter(({ loadedAt }) => loadedAt !== undefined)
  const top = loaded.toSorted((a, b) => (a.loadedAt ?? 0) - (b.loadedAt ?? 0) || a.number - b.number).at(-1)
  const at: Readonly<Record<Deed['kind'], number | undefined>> = {
    'shelf-loaded': top?.loadedAt,
    'lid-shut': load.shutAt,
    'kiln-lit': litAt,
    'bung-pulled': load.bungAt,
    'kiln-off': load.offAt,
    'lid-opened': load.openedAt,
  }
  const deeds = deedsBack(table.value, load)
  /** Whatever was read and seen, the latest first. */
  const seen: readonly Seen[] = [
    ...load.readings.map(({ id, tempC, at: readAt }) => ({
      at: readAt,
      label: w.last(temp(tempC), days.moment(readAt)),
      action: { do: 'drop-reading' as const, loadId, readId: id },
    })),
    ...load.cones.map((look) => ({
      at: look.at,
      label: pages.right.cone(look.cone, w.stand[look.is], days.moment(look.at)),
      action: { do: 'drop-look' as const, loadId, hit: look.hit },
    })),
    ...load.glass.map((look) => ({
      at: look.at,
      label: pages.right.glass(look.fogged, days.moment(look.at)),
      action: { do: 'drop-look' as const, loadId, hit: look.hit },
    })),
  ].sort((a, b) => b.at - a.at)
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        {deeds.length + seen.length > 0 ? <p class="choice-label">{pages.right.tap}</p> : null}
        {deeds.map((kind) => (
          <button
            key={kind}
            type="button"
            class="key figures"
            onClick={() => hit({ do: 'unsay', loadId, kind })}
          >
            {pages.right.deed(
              kind === 'shelf-loaded' ? pages.right.shelf(top?.number ?? 0) : pages.right.deeds[kind],
              days.moment(at[kind] ?? load.begunAt),
            )}
          </button>
        ))}
        {seen.map(({ label, action }, i) => (
          <button key={`${i} ${label}`} type="button" class="key figures" onClick={() => hit(action)}>
            {label}
          </button>
        ))}
        <OffsetTaken kilnId={load.kiln.kilnId} />
        <div class="kiln-keys">
          <button
            type="button"
            class="key"
            onClick={() => (litAt === undefined ? go({ at: 'firing' }) : open('firing'))}
          >
            {pages.right.firing(firing.cone)}
          </button>
          {litAt === undefined ? (
            <button type="button" class="key" onClick={() => open('kiln')}>
              {KILN_FORM_WORDS[table.value.settings.language].change}
            </button>
          ) : null}
        </div>
      </KilnMain>
      <BackLine />
    </>
  )
}
