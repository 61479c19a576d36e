import { useEffect, useMemo } from 'preact/hooks'
import type { Handout } from '../../../shared/nouns.ts'
import { handoutOf, namesIn, whoseOf } from '../../table/entry/handout.ts'
import { planOf, potsOnTable } from '../../table/model/plan.ts'
import type { PotState } from '../../table/model/state.ts'
import { Swatch } from '../../ui/swatch.tsx'
import { tagOf } from '../../words/languages.ts'
import { LATE_WORDS } from '../../words/late.ts'
import { useCalendar } from '../days.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { DeskSave } from '../desk/save.tsx'
import { placeText } from '../text/amounts.ts'
import { cautionText, nameOf } from '../text/pot-text.ts'
import { StillCode, StillCodes } from './code.tsx'
import { usePassing } from './handout.tsx'
import { usePassingWords } from './words.ts'

interface SheetProps {
  readonly handout: Handout
  readonly back: () => void
}

/** The class on one page of paper: its codes, each stack by its marks with a code of its own, what the marks are and hold, and the pots with boxes to tick. */
export function ClassSheet({ handout, back }: SheetProps) {
  const { table, now, words } = useDesk()
  useEffect(() => scrollTo(0, 0), [])
  const w = usePassingWords()
  const passing = usePassing()
  // Paper is read on another day.
  const calendar = useCalendar()
  const { settings, skewMs } = table.value
  const codes = useMemo(() => passing?.stillCodes(handout), [passing, handout])
  const pots = potsOnTable(table.value)
  const all = pots.map((pot) => pot.facts)
  const groups = [...namesIn(all), undefined].map((name) => ({
    name,
    pots: pots.filter((pot) => whoseOf(all, pot.facts) === name),
  }))
  return (
    <div class="desk class-paper">
      <DeskHead title={w.class.sheet} back={back} />
      <main class="desk-main-part has-save">
        <p class="figures class-day">
          {calendar ? (
            <strong>
              {calendar.dateText(
                LATE_WORDS[settings.language].days,
                tagOf(settings.language),
                now.peek() + skewMs,
              )}
            </strong>
          ) : null}
        </p>
        <div class="class-codes">
          {codes && codes.length > 0 ? (
            <section>
              <h2>{w.class.plan}</h2>
              <StillCodes codes={codes} label={w.class.how} nth={w.handout.nth} />
            </section>
          ) : codes ? (
            <p>{w.handout.tooMuch}</p>
          ) : null}
          {handout.stacks.map((stack) => {
            const own = passing?.stillCodes(handoutOf(table.value, stack.stackId))
            return (
              <section key={stack.stackId}>
                <h2>{stack.name}</h2>
                {own?.length === 1 && own[0] ? <StillCode rows={own[0]} label={stack.name} /> : null}
                <p class="class-marks">
                  {stack.coats.map(({ bucketId }, i) => (
                    <Mark key={i} bucketId={bucketId} />
                  ))}
                </p>
              </section>
            )
          })}
        </div>
        <p>{w.class.how}</p>
        {handout.buckets.map(({ bucketId, name, cautions }) => (
          <p key={bucketId} class="class-glaze">
            <Mark bucketId={bucketId} />
            <span>
              {name}
              {cautions.length > 0 ? <strong>. {cautionText(words.value, cautions)}</strong> : null}
            </span>
          </p>
        ))}
        <div class="class-rows">
          {groups
            .filter((group) => group.pots.length > 0)
            .map((group) => (
              <section key={group.name ?? ''}>
                <h2 class="class-head">
                  <span>{group.name ?? w.class.nobody}</span>
                  <small>{w.class.kiln}</small>
                </h2>
                {group.pots.map((pot) => (
                  <Row key={pot.facts.potId} pot={pot} />
                ))}
              </section>
            ))}
        </div>
      </main>
      <DeskSave said={undefined} save={() => window.print()} label={w.handout.print} />
    </div>
  )
}

/** A pot by number and place, its coats by their marks with a box each, and one for the kiln below that word. */
function Row({ pot }: { readonly pot: PotState }) {
  const { table, words } = useDesk()
  return (
    <p class="class-row figures">
      <strong>{nameOf(words.value, pot)}</strong>
      <span>{placeText(pot.facts.place)}</span>
      <span class="class-marks">
        {planOf(table.value, pot).map(({ bucketId }, i) => (
          <span key={i}>
            <Mark bucketId={bucketId} />
            <Box />
          </span>
        ))}
      </span>
      <Box />
    </p>
  )
}

const Box = () => (
  <svg class="class-box" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
    <rect x="1.5" y="1.5" width="13" height="13" fill="none" stroke="currentColor" stroke-width="1.5" />
  </svg>
)

function Mark({ bucketId }: { readonly bucketId: string }) {
  const { table } = useDesk()
  const facts = table.value.buckets[bucketId]?.facts
  return facts ? <Swatch pattern={facts.pattern} letter={facts.letter} size={24} /> : null
}
