import { useMemo } from 'preact/hooks'
import { firedOf } from '../../table/fired/fired-pot.ts'
import { type FactorTold, factorsOf } from '../../table/fired/lesson.ts'
import { asSet, keepsLimit, type LimitTold, limitsTold, takesLimit } from '../../table/fired/limits.ts'
import { type JudgedPot, type PotResult, resultsOf } from '../../table/fired/results.ts'
import { asTold, isByOneFiring, isOfDrip, keeps, takes } from '../../table/fired/take.ts'
import { More } from '../../ui/more.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { useDays } from '../days.ts'
import { useBack } from '../desk/back-line.tsx'
import { DeskHead } from '../desk/head.tsx'
import { nameOf } from '../text/pot-text.ts'
import { figure, foundText, timesText, useOpening } from './opening-app.ts'
import { useAnswered, useStanding } from './standing.ts'
import '../desk/kiln.css'
import './opening.css'

const LEADS = ['danger', 'relief', 'same'] as const

const limitKey = ({ bucketId, underId }: LimitTold): string => `${bucketId} ${underId}`

/** What fired pots say of each glaze and pair: danger first, then what waits for a hand. */
export function FireTaught() {
  const { table, words } = useOpening()
  const w = words.value.opening.taught
  const factors = useMemo(() => factorsOf(table.value), [table.value])
  const silent = useMemo(() => resultsOf(table.value), [table.value]).filter(
    (one) => one.silent !== undefined,
  )
  const limits = useMemo(() => limitsTold(table.value), [table.value])
  const lessons = useStanding(
    factors.toSorted((a, b) => LEADS.indexOf(a.still) - LEADS.indexOf(b.still)),
    ({ key }) => key,
  )
  const standing = useStanding(limits, limitKey)
  const isAnswered = useAnswered()
  const back = useBack()
  return (
    <div class="desk">
      <DeskHead title={w.title} back={{ at: 'opening' }} />
      <main class="desk-main-part">
        {lessons.length + limits.length === 0 ? <p>{w.none}</p> : null}
        {lessons.map((told) => (
          <Lesson key={told.key} told={told} isAnswered={!told.asks && isAnswered('lesson-taken', told)} />
        ))}
        {standing.map((told) => (
          <Limit
            key={limitKey(told)}
            told={told}
            isAnswered={!told.asks && isAnswered('limit-taken', told)}
          />
        ))}
        {silent.length > 0 ? (
          <More label={w.nobody(silent.length)}>
            <ul class="open-behind">
              {silent.map((result) => (
                <Behind key={result.found.id} result={result} why={undefined} />
              ))}
            </ul>
          </More>
        ) : null}
      </main>
      {back ? (
        <button type="button" class="key open-back" onClick={back.press}>
          {back.label}
        </button>
      ) : null}
    </div>
  )
}

interface CardProps<T> {
  readonly told: T
  /** On this page, just now. */
  readonly isAnswered: boolean
}

function Lesson({ told, isAnswered }: CardProps<FactorTold>) {
  const { table, words, act } = useOpening()
  const w = words.value.opening.taught
  const { factor, results, others, used, drip, usedDrip, tileDrip, still, asks, taken, scratchFirst } = told
  const facts = (id: string | undefined) => (id === undefined ? undefined : table.value.buckets[id]?.facts)
  const [over, under] = [facts(told.bucketId), facts(told.underId)]
  const ownDrip = taken && (tileDrip === undefined || figure(tileDrip) !== figure(usedDrip))
  const ofDrip = isOfDrip(told)
  const waits = still === 'relief' && scratchFirst
  const said = (factor: number) => timesText(words.value, factor)
  const numbers = told.shelved.map(({ pot }) => String(nameOf(words.value, pot))).join(', ')
  return (
    <section class="open-lesson">
      <h2>
        {under ? <Swatch pattern={under.pattern} letter={under.letter} size={34} /> : null}
        {over ? <Swatch pattern={over.pattern} letter={over.letter} size={34} /> : null}
        {under ? w.over(over?.name ?? '', under.name) : over?.name}
      </h2>
      {results.length > 0 ? (
        <>
          <p class="kiln-big figures">{w.runs(said(factor.likely))}</p>
          <p class="figures">
            {w.range(figure(factor.low), figure(factor.high), results.length)}
            {told.cone === undefined ? '' : `. ${w.ofCone(told.cone)}`}
          </p>
        </>
      ) : (
        <p class="kiln-big">{w.noResult}</p>
      )}
      {said(used) !== w.asTold ? (
        <p class="figures">{w.used(said(used))}</p>
      ) : ownDrip ? null : (
        <p class="figures">{w.usedTold}</p>
      )}
      {ownDrip ? (
        <p class="figures">{w.usedDrip(figure(usedDrip), tileDrip === undefined ? '' : figure(tileDrip))}</p>
      ) : null}
      {drip !== undefined && drip > usedDrip ? (
        <p class="figures">{w.drips(figure(drip), figure(usedDrip))}</p>
      ) : null}
      {told.withdrawn ? <p>{w.withdrawn}</p> : null}
      {still === 'danger' ? <p class="alarm">{ofDrip ? w.dripDanger : w.danger}</p> : null}
      {told.way === 'relief' ? <p>{scratchFirst ? w.scratch : w.relief}</p> : null}
      {asks && still !== 'danger' && numbers !== '' ? <p class="alarm">{w.shelved(numbers)}</p> : null}
      {isAnswered ? (
        <p>{still === 'same' ? w.answered : w.kept}</p>
      ) : (asks || still !== 'same') && !waits ? (
        <Answers
          asks={asks}
          keeps={!ofDrip && isByOneFiring(told)}
          isKept={!ownDrip}
          label={ofDrip ? w.useDrip : w.use}
          use={() => act(takes(told))}
          keep={() => act(keeps(told))}
        />
      ) : null}
      {taken && !isAnswered ? (
        <button type="button" class="key" onClick={() => act(asTold(told))}>
          {w.back}
        </button>
      ) : null}
      <More label={w.behind(results.length + others.length)}>
        <ul class="open-behind">
          {[...results, ...others].toReversed().map((result) => (
            <Behind
              key={result.found.id}
              result={result}
              why={results.includes(result) ? undefined : isOther(result, told) ? w.otherGlaze : w.otherCone}
            />
          ))}
        </ul>
      </More>
    </section>
  )
}

interface AnswersProps {
  /** To keep it is the main answer; what is kept says so, unless a drip was taken by itself. */
  readonly keeps?: boolean
  readonly isKept?: boolean
  /** Nobody answered yet. */
  readonly asks: boolean
  /** What is used by it. */
  readonly label: string
  readonly use: () => void
  readonly keep: () => void
}

/** What a hand says of a lesson; one that was kept as it was can be used all the same. */
function Answers({ asks, keeps = false, isKept = true, label, use, keep }: AnswersProps) {
  const { words } = useOpening()
  const w = words.value.opening.taught
  return (
    <div class={asks ? 'pair' : 'open-kept'}>
      {asks || !isKept ? null : <p>{w.kept}</p>}
      <button type="button" class={asks && !keeps ? 'desk-main' : 'desk-second'} onClick={use}>
        {label}
      </button>
      {asks ? (
        <button type="button" class={keeps ? 'desk-main' : 'desk-second'} onClick={keep}>
          {w.keep}
        </button>
      ) : null}
    </div>
  )
}

/** How thick a glaze may go on before it crawls, by the pots on which it did. */
function Limit({ told, isAnswered }: CardProps<LimitTold>) {
  const { table, words, formats, act } = useOpening()
  const w = words.value.opening.limits
  const { limit, limitMm, usedMm, statedMm, pots, crawled, still, asks } = told
  const facts = (id: string | undefined) => (id === undefined ? undefined : table.value.buckets[id]?.facts)
  const [over, under] = [facts(told.bucketId), facts(told.underId)]
  const mm = (thick: number) => formats.value.coat(thick)
  const { taught } = words.value.opening
  return (
    <section class="open-lesson">
      <h2>
        {under ? <Swatch pattern={under.pattern} letter={under.letter} size={34} /> : null}
        {over ? <Swatch pattern={over.pattern} letter={over.letter} size={34} /> : null}
        {under ? taught.over(over?.name ?? '', under.name) : over?.name}
      </h2>
      <p class="kiln-big figures">{(under ? w.bothCrawl : w.crawls)(mm(limit.mm.likely))}</p>
      <p class="figures">{w.range(mm(limit.mm.low), mm(limit.mm.high), crawled.length, pots.length)}</p>
      <p class="figures">
        {w.used(mm(usedMm))}
        {still === 'same' ? '' : `. ${w.offer(mm(limitMm))}`}
      </p>
      {still === 'same' ? null : (
        <>
          <p class={still === 'danger' ? 'alarm' : undefined}>{w[still]}</p>
          {isAnswered ? null : (
            <Answers
              asks={asks}
              label={taught.use}
              use={() => act(takesLimit(told))}
              keep={() => act(keepsLimit(told))}
            />
          )}
        </>
      )}
      {isAnswered ? <p>{still === 'same' ? taught.answered : taught.kept}</p> : null}
      {usedMm !== statedMm && !isAnswered ? (
        <button type="button" class="key" onClick={() => act(asSet(told))}>
          {under ? w.backToAll : w.back}
        </button>
      ) : null}
      <More label={taught.behind(pots.length)}>
        <ul class="open-behind">
          {pots.toReversed().map((one) => (
            <Behind key={one.found.id} result={one} why={undefined} />
          ))}
        </ul>
      </More>
    </section>
  )
}

/** Its run speaks of another glaze of the same pot. */
const isOther = ({ subject }: PotResult, { bucketId, underId }: FactorTold): boolean =>
  subject !== undefined && (subject.over !== bucketId || (subject.under ?? undefined) !== underId)

interface BehindProps {
  readonly result: JudgedPot & Partial<Pick<PotResult, 'silent'>>
  /** Why it does not count here, where it counts elsewhere. */
  readonly why: string | undefined
}

/** A pot behind a lesson: what was found of it, and out of what it teaches, or in again. */
function Behind({ result, why }: BehindProps) {
  const { words, formats, act } = useOpening()
  const w = words.value.opening.taught
  const days = useDays()
  const { pot, found, silent } = result
  const out = silent === 'unmatched' || silent === 'unreached' || (firedOf(pot).found?.dropped ?? false)
  const what = foundText(words.value, formats.value, found)
  return (
    <li>
      <span class="figures">
        <strong>{w.found(String(nameOf(words.value, pot)), what)}</strong>
        <small>{[days.moment(found.at), silent ? w.silent[silent] : why].filter(Boolean).join(', ')}</small>
      </span>
      {silent === 'no-load' && !out ? null : (
        <button
          type="button"
          class="key"
          onClick={() =>
            act({ do: 'drop-lesson', potId: pot.facts.potId, lessonId: found.dropId, dropped: !out })
          }
        >
          {out ? w.takeIn : w.leave}
        </button>
      )}
    </li>
  )
}
