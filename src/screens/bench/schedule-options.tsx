import { useSignal } from '@preact/signals'
import { decideSetup } from '../../table/decide/decide-setup.ts'
import { handsLine, lateness, mayBeLate, outOfTen } from '../../table/order/hands-line.ts'
import type { ScheduleOption } from '../../table/order/schedule-options.ts'
import { PressButton } from '../../ui/press.tsx'
import { refusalText, useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'

/** Late for the kiln: the ways out, what each gains, each taken in one tap. */
export function Ways({ close }: { readonly close: () => void }) {
  const app = useApp()
  const { table, schedule, now, scheduleOptions, words, formats } = app
  const said = useSignal<string | undefined>(undefined)
  const w = words.value.bench
  const { ways, other } = useLateWords()
  const { back } = other
  const f = formats.value
  const { skewMs } = table.value
  const line = handsLine(table.value, schedule.value, now.value)
  const late = lateness(line)
  const may = mayBeLate(line)
  const ends = ({ finish }: ScheduleOption) => {
    const [early, late] = [f.clock(finish.early + skewMs), f.clock(finish.late + skewMs)]
    return early === late ? early : w.fromTo(early, late)
  }
  const take = (way: ScheduleOption) => (atMs: number) => {
    const refusal = app.act(way.action, atMs, decideSetup)
    if (refusal) said.value = refusalText(words.value, refusal)
    else close()
  }
  return (
    <section class="other ways">
      <header class="other-head">
        <h1>{late > 0 ? w.late(f.span(late)) : may > 0 ? w.mayBeLate(may) : ways.inTime}</h1>
        <PressButton class="other-close" onPress={close}>
          {back}
        </PressButton>
      </header>
      {line?.latestStartAt === undefined || late === 0 ? null : (
        <p class="figures">{ways.latestStart(f.clock(line.latestStartAt + skewMs))}</p>
      )}
      {said.value ? (
        <p class="said" role="alert">
          {said.value}
        </p>
      ) : null}
      <div class="ways-list">
        {scheduleOptions.value.slice(0, WAYS_SHOWN).map((way) => (
          <PressButton key={way.cut} class="other-tile way" onPress={take(way)}>
            <span>{ways.way[way.cut](way.potIds.length)}</span>
            <small class="figures">
              {ways.ends(
                ends(way),
                way.slackMs >= 0 ? w.spare(f.span(way.slackMs)) : ways.stillLate(f.span(-way.slackMs)),
                outOfTen(1 - way.lateOdds),
              )}
            </small>
          </PressButton>
        ))}
      </div>
      {scheduleOptions.value.length === 0 ? <p class="soft">{ways.none}</p> : null}
    </section>
  )
}

/** As many as fit under one another. */
const WAYS_SHOWN = 4
