import { useEffect, useState } from 'preact/hooks'
import { readEntry } from '../../table/entry/entry.ts'
import { LID_C, lidWarning } from '../../table/load/loads.ts'
import { LIMITS } from '../../table/model/limits.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KILN_CARE_WORDS } from '../../words/kiln-care.ts'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { AgoKeys } from './ago-keys.tsx'
import { kilnRefusalText, useLoad } from './load-app.ts'

interface ReadingProps {
  readonly load: LoadState
  /** The lid is lifted with it. */
  readonly opens: boolean
  readonly close: () => void
}

const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '−', '0', '⌫'] as const
const MOST_LETTERS = 5

/** What the kiln's thermometer reads, in large keys for a glove; what cannot be is asked, never changed. */
export function ReadingPage({ load, opens, close }: ReadingProps) {
  const { table, words, formats, act } = useLoad()
  const w = words.value.desk.shelf
  const care = KILN_CARE_WORDS[table.value.settings.language]
  const { units } = table.value.settings
  const [text, setText] = useState('')
  const [agoMin, setAgo] = useState(0)
  const [said, setSaid] = useState<string>()
  const [asked, setAsked] = useState<readonly number[]>([])
  /** It rises though the kiln is said to be off. */
  const [risen, setRisen] = useState<number>()
  const [onAt, setOnAt] = useState<number>()
  const { loadId } = load
  const keep = (tempC: number, sure: boolean, atMs?: number): void => {
    const late = agoMin === 0 ? {} : { agoMin }
    const refusal = act(
      opens
        ? { do: 'open-lid', loadId, tempC, sure, ...late }
        : { do: 'read-heat', loadId, tempC, sure, ...late },
      atMs,
    )
    if (!refusal) {
      close()
      return
    }
    setSaid(kilnRefusalText(words.value, formats.value, table.peek(), refusal))
    const { value, asC } = refusal.facts ?? {}
    const isOdd = refusal.field === 'leap' || refusal.field === 'fahrenheit'
    const rises = tempC > (load.readings.at(-1)?.tempC ?? tempC)
    setRisen(isOdd && rises && !opens && load.offAt !== undefined ? tempC : undefined)
    if (refusal.field === 'fahrenheit' || refusal.field === 'hot-lid')
      setAsked([Number(value), Number(asC)].filter((tempC) => tempC <= LIMITS.readC.most))
    else setAsked(refusal.field === 'leap' ? [Number(value)] : [])
  }
  useBar((atMs) => {
    // A lid may be lifted without a look at the thermometer.
    if (text === '' && opens) {
      const refusal = act({ do: 'open-lid', loadId, ...(agoMin === 0 ? {} : { agoMin }) }, atMs)
      if (refusal) setSaid(kilnRefusalText(words.value, formats.value, table.peek(), refusal))
      else close()
      return
    }
    const entry = readEntry('readC', text.replace('−', '-'), units)
    if (entry.ok) keep(entry.value, false, atMs)
    // Above the range it may be the other unit: that is asked.
    else if (entry.why === 'out-of-range' && units === 'metric' && Number(text) > LIMITS.readC.most)
      keep(Number(text), false, atMs)
    else {
      const { least, most, unit } = entry.range
      const range = `${words.value.desk.range(least, most)} ${unit}`
      setSaid(
        text === ''
          ? words.value.desk.wrong.missing(range)
          : w.outOf(w.bar.reading, `${text} ${unit}`, range),
      )
      setAsked([])
    }
  })
  const isOn = (tempC: number) => {
    const refusal = act({ do: 'unsay', loadId, kind: 'kiln-off' })
    if (refusal) setSaid(kilnRefusalText(words.value, formats.value, table.peek(), refusal))
    else setOnAt(tempC)
  }
  // What is unsaid may be folded beside the page: the reading is kept with the kiln that is on again.
  useEffect(() => {
    if (onAt === undefined || load.offAt !== undefined) return
    setOnAt(undefined)
    keep(onAt, false)
  }, [onAt, load.offAt])
  const type = (key: (typeof KEYS)[number]) => () => {
    setSaid(undefined)
    setAsked([])
    setText((before) =>
      key === '⌫'
        ? before.slice(0, -1)
        : key === '−'
          ? before.startsWith('−')
            ? before.slice(1)
            : `−${before}`
          : before.length < MOST_LETTERS
            ? before + key
            : before,
    )
  }
  const last = load.readings.at(-1)
  const warning = opens ? lidWarning(load) : undefined
  const { temp } = formats.value
  const unit = units === 'us' ? '°F' : '°C'
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        {warning ? (
          <p class="alarm figures">
            {warning === 'hot' && last ? w.hotLid(temp(last.tempC), temp(LID_C)) : w.unreadLid(temp(LID_C))}
          </p>
        ) : null}
        {opens ? <p class="caution">{care.lid}</p> : null}
        {asked.length > 0 ? (
          <div class="kiln-keys">
            {asked.map((tempC) => (
              <button key={tempC} type="button" class="key" onClick={() => keep(tempC, true)}>
                {w.itIs(temp(tempC))}
              </button>
            ))}
            {risen === undefined ? null : (
              <button type="button" class="key" onClick={() => isOn(risen)}>
                {w.stillOn}
              </button>
            )}
          </div>
        ) : (
          <p class="kiln-figure figures" role="status" aria-label={w.readTitle}>
            {text === '' ? '–' : text} <small>{unit}</small>
          </p>
        )}
        <AgoKeys agoMin={agoMin} choose={setAgo} />
        <div class={asked.length > 0 || warning ? 'kiln-pad is-tight' : 'kiln-pad'}>
          {KEYS.map((key) => (
            <button key={key} type="button" class="key figures" onClick={type(key)}>
              {key}
            </button>
          ))}
        </div>
      </KilnMain>
      <KnuckleBar label={opens ? w.bar.open : w.bar.save} />
    </>
  )
}
