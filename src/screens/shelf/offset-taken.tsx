import { KILN_PAGE_WORDS } from '../../words/kiln-pages.ts'
import { useLoad } from './load-app.ts'

/** What a kiln was taken to differ from its thermometer by, and a key that drops it. */
export function OffsetTaken({ kilnId }: { readonly kilnId: string }) {
  const { table, act } = useLoad()
  const { language, units } = table.value.settings
  const w = KILN_PAGE_WORDS[language].right
  const taken = table.value.offsets?.[kilnId]
  if (!taken) return null
  const [scale, unit] = units === 'us' ? [1.8, '°F'] : [1, '°C']
  const degrees = `${Math.round(Math.abs(taken.offsetC) * scale * 10) / 10} ${unit}`
  return (
    <button type="button" class="key figures" onClick={() => act({ do: 'drop-offset', kilnId })}>
      {w.offset(degrees, taken.offsetC >= 0)} <small>{w.drop}</small>
    </button>
  )
}
