import { useEffect, useRef, useState } from 'preact/hooks'
import type { Handout } from '../../../shared/nouns.ts'
import { AnswerBars, KnuckleBar } from '../../ui/bar.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { ToSettle } from '../desk/to-settle.tsx'
import { useBar } from '../desk/use-bar.ts'
import type { Met, Passing } from '../passing.ts'
import { phoneName } from '../text/phone-name.ts'
import { Read } from './read.tsx'
import { Show } from './show.tsx'
import { TakeHandout } from './take-handout.tsx'
import { usePassingWords } from './words.ts'
import './codes.css'

export { ClassPage } from './class.tsx'
export { HandoutPage } from './handout.tsx'
export { Student } from './student.tsx'

type Page =
  | { readonly at: 'start' | 'read' }
  /** `back`: to the phone that was just read; else to any. */
  | { readonly at: 'show'; readonly back: boolean }
  | { readonly at: 'met'; readonly met: Met }
  | { readonly at: 'handout'; readonly handout: Handout }

/** Another phone: this one shows, that one reads, or the other way round. */
export function Codes() {
  const { attachBench, passing: open, card, demo, go } = useDesk()
  const w = usePassingWords()
  const root = useRef<HTMLDivElement>(null)
  const [page, setPage] = useState<Page>({ at: 'start' })
  const [passing, setPassing] = useState<Passing>()
  useEffect(() => (root.current ? attachBench(root.current).detach : undefined), [])
  useEffect(() => {
    if (!demo) void open().then(setPassing)
  }, [])
  const start = () => setPage({ at: 'start' })
  const counting = card.value.kind === 'count'
  const title = page.at === 'show' ? w.showTitle : page.at === 'read' ? w.readTitle : w.title
  return (
    <div class="desk kiln codes" ref={root}>
      <DeskHead title={title} back={page.at === 'start' ? { at: 'room', door: 'keep' } : start} />
      {demo || counting ? (
        <Not why={demo ? w.demo : w.counting} label={w.toBench} onPress={() => go({ at: 'bench' })} />
      ) : page.at === 'show' && passing ? (
        <Show passing={passing} back={page.back} onDone={start} />
      ) : page.at === 'read' && passing ? (
        <Read
          passing={passing}
          onStop={start}
          onHandout={(handout) => setPage({ at: 'handout', handout })}
          onMet={(met) => setPage({ at: 'met', met })}
        />
      ) : page.at === 'handout' ? (
        <TakeHandout handout={page.handout} done={start} />
      ) : page.at === 'met' ? (
        <MetCard
          met={page.met}
          showBack={() => setPage({ at: 'show', back: true })}
          read={() => setPage({ at: 'read' })}
          done={start}
        />
      ) : (
        <Start
          name={passing?.phone}
          show={() => setPage({ at: 'show', back: false })}
          read={() => setPage({ at: 'read' })}
        />
      )}
    </div>
  )
}

interface NotProps {
  readonly why: string
  readonly label: string
  readonly onPress: () => void
}

function Not({ why, label, onPress }: NotProps) {
  useBar(onPress)
  return (
    <>
      <KilnMain>
        <p class="kiln-big">{why}</p>
      </KilnMain>
      <KnuckleBar label={label} />
    </>
  )
}

interface StartProps {
  readonly name: string | undefined
  readonly show: () => void
  readonly read: () => void
}

function Start({ name, show, read }: StartProps) {
  const { table, go } = useDesk()
  const w = usePassingWords()
  const { student, hand } = table.value.settings
  useBar(show)
  return (
    <>
      <KilnMain>
        <p class="kiln-big">{w.how}</p>
        <p>{w.private}</p>
        {name ? <p class="help">{w.called(phoneName(name))}</p> : null}
        {student ? null : (
          <div class="kiln-keys">
            <button type="button" class="key" onClick={() => go({ at: 'class' })}>
              {w.class.key}
            </button>
            <button type="button" class="key" onClick={() => go({ at: 'room', door: 'keep' })}>
              {w.file}
            </button>
          </div>
        )}
      </KilnMain>
      <AnswerBars big={w.show} small={{ label: w.read, onPress: read }} hand={hand} />
    </>
  )
}

interface MetProps {
  readonly met: Met
  readonly showBack: () => void
  readonly read: () => void
  readonly done: () => void
}

/** A clock that is off by less needs no word, ms. */
const CLOCKS_MS = 30_000

/** What taking in came to, and what the other phone still lacks. */
function MetCard({ met, showBack, read, done }: MetProps) {
  const { table, formats, go } = useDesk()
  const w = usePassingWords()
  const { added, coats, pots, waiting, faulty, ahead, theyLack, more, aheadMs } = met
  // Who shows back says what it has, and gets what it lacks, whatever the other has.
  const back = more || theyLack > 0
  useBar(back ? showBack : done)
  return (
    <>
      <KilnMain>
        <p class="kiln-big codes-took figures" role="status">
          {added > 0 ? w.took(coats, pots, added - coats - pots) : more ? '' : w.nothingNew}
        </p>
        <ToSettle />
        {waiting > 0 ? <p class="alarm figures">{w.waiting(waiting)}</p> : null}
        {faulty > 0 ? <p class="alarm figures">{w.faulty(faulty)}</p> : null}
        {ahead > 0 ? <p class="alarm figures">{w.ahead(ahead)}</p> : null}
        {Math.abs(aheadMs) > CLOCKS_MS ? (
          <p class="alarm figures">{w.clocks(formats.value.span(Math.abs(aheadMs)), aheadMs > 0)}</p>
        ) : null}
        {theyLack > 0 ? <p class="figures">{w.theyLack(theyLack)}</p> : null}
        {more ? <p>{w.more}</p> : theyLack === 0 ? <p>{w.both}</p> : null}
        {more ? null : (
          <div class="kiln-keys">
            <button type="button" class="key" onClick={read}>
              {w.next}
            </button>
            <button type="button" class="key" onClick={() => go({ at: 'board' })}>
              {w.toBoard}
            </button>
          </div>
        )}
      </KilnMain>
      {back ? (
        <AnswerBars
          big={w.showBack}
          small={more ? { label: w.read, onPress: read } : { label: w.done, onPress: done }}
          hand={table.value.settings.hand}
        />
      ) : (
        <KnuckleBar label={w.done} />
      )}
    </>
  )
}
