import { useId, useState } from 'preact/hooks'
import { handsLine, lateness, outOfTen, type Range } from '../../table/order/hands-line.ts'
import { Choice } from '../../ui/choice.tsx'
import { useCalendar, useDays } from '../days.ts'
import { useDesk } from '../desk/desk-app.ts'
import { useRoomWords } from '../desk/room-words.ts'
import { optionsOf, useSet } from '../desk/settings.ts'
import { useLateWords } from '../late-words.ts'
import { NumberOf } from './settings.tsx'

const MINUTE_MS = 60_000
const DAYS_AHEAD = 14

const bandOf = ({ early, late }: Range) => ({ likely: early, upper: late })

/** This sitting: who works, the kiln's hour, how it ends by the order of work, and the ways out when late. */
export function Sitting() {
  const { table, schedule, now, words, formats } = useDesk()
  const set = useSet()
  const w = useRoomWords()
  const b = words.value.bench
  const { ways } = useLateWords()
  const f = formats.value
  const { settings } = table.value
  const line = handsLine(table.value, schedule.value, now.value)
  const late = lateness(line)
  const days = useDays()
  return (
    <section>
      <Choice
        label={w.potters}
        options={optionsOf(w.potterCounts)}
        value={settings.potters === 2 ? 'two' : 'one'}
        onChoose={(many) => void set('potters', many === 'two' ? 2 : 1)}
      />
      <KilnOn />
      <div class="fields">
        <NumberOf field="loadMin" label={w.load} />
      </div>
      <Choice
        label={w.candle}
        help={w.candleHelp}
        options={optionsOf(w.candles)}
        value={settings.candle ? 'yes' : 'no'}
        onChoose={(candle) => void set('candle', candle === 'yes')}
      />
      {line ? (
        <p class="figures strong">
          {late > 0
            ? `${b.late(f.span(late))}. ${line.latestStartAt === undefined ? '' : ways.latestStart(days.moment(line.latestStartAt))}`
            : [
                w.dippedBy(
                  days.between(bandOf(line.finish ?? { early: line.finishAt, late: line.finishAt })),
                ),
                line.kilnDry ? b.kilnDry(days.between(bandOf(line.kilnDry))) : '',
                line.slackMs === undefined ? '' : b.spare(f.span(line.slackMs)),
              ]
                .filter(Boolean)
                .join(', ')}
        </p>
      ) : null}
      {late > 0 ? <WaysOut /> : null}
    </section>
  )
}

/** When the kiln goes on: one field, in the phone's own calendar. Stored as soon as it is left. */
function KilnOn() {
  const { table, now } = useDesk()
  const set = useSet()
  const id = useId()
  const [wrong, setWrong] = useState(false)
  const w = useRoomWords()
  const { kilnOnAt } = table.value.settings
  const nowMs = now.value + table.value.skewMs
  const calendar = useCalendar()
  const last = calendar?.daysAfter(nowMs, DAYS_AHEAD)
  const store = (text: string) => {
    const at = text === '' ? null : calendar?.ofField(text)
    const allowed =
      at === null || (at !== undefined && last !== undefined && at >= nowMs - MINUTE_MS && at <= last)
    setWrong(!allowed)
    if (allowed && at !== kilnOnAt) set('kilnOnAt', at)
  }
  return (
    <div class={wrong ? 'field is-wrong' : 'field'}>
      <label for={id}>{w.kilnOn}</label>
      <div class="field-box">
        <input
          id={id}
          class="figures field-moment"
          type="datetime-local"
          disabled={!calendar}
          value={kilnOnAt === null ? '' : calendar?.fieldOf(kilnOnAt)}
          min={calendar?.fieldOf(nowMs)}
          max={last && calendar?.fieldOf(last)}
          aria-invalid={wrong}
          aria-describedby={`${id}-said`}
          onChange={(event) => store(event.currentTarget.value)}
        />
      </div>
      <p id={`${id}-said`} class="field-said" role={wrong ? 'alert' : undefined}>
        {w.kilnOnRange(DAYS_AHEAD)}
      </p>
    </div>
  )
}

/** Ways out of being late, each taken in one tap. */
function WaysOut() {
  const { scheduleOptions: ways, words, formats, act } = useDesk()
  const b = words.value.bench
  const { ways: w } = useLateWords()
  const f = formats.value
  const days = useDays()
  return (
    <ul class="ways-out">
      {ways.value.map((way) => (
        <li key={way.cut}>
          <button type="button" class="desk-second" onClick={() => act(way.action)}>
            <strong>{w.way[way.cut](way.potIds.length)}</strong>
            <span class="figures">
              {w.ends(
                days.between(bandOf(way.finish)),
                way.slackMs >= 0 ? b.spare(f.span(way.slackMs)) : w.stillLate(f.span(-way.slackMs)),
                outOfTen(1 - way.lateOdds),
              )}
            </span>
          </button>
        </li>
      ))}
    </ul>
  )
}
