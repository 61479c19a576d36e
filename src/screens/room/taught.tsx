import { boardsOf } from '../../table/forecast/board-memory.ts'
import { lessonFor, lessonOf, lessonsUsed, type Seen, seenOn } from '../../table/forecast/learning.ts'
import { type Learned, type Lesson, Z90 } from '../../table/forecast/readings.ts'
import { roomChangedAt } from '../../table/model/taken.ts'
import { More } from '../../ui/more.tsx'
import { useDays } from '../days.ts'
import { useDesk } from '../desk/desk-app.ts'
import { nameOf } from '../text/pot-text.ts'

/** Latest observations that are listed; older ones still count. */
const LISTED = 24
/** Of them so many are seen at once. */
const SEEN = 5

const rangeOf = (mean: number, sd: number): [number, number, number] => {
  const x = (by: number) => Math.exp(mean + by * Z90 * sd)
  return [x(0), x(-1), x(1)]
}

/** What touches and weighings have taught about this room's waits, from how many, and which of them to leave out. */
export function Taught() {
  const { table, words } = useDesk()
  const w = words.value.desk.measured.taught
  const lesson = lessonOf(table.value)
  const seen = Object.values(table.value.pots)
    .flatMap((pot) => seenOn(table.value, pot))
    .sort((a, b) => b.at - a.at)
    .slice(0, LISTED)
  const boards = boardsOf(table.value).boards
  const told = boards.filter(({ speak }) => speak)
  const glazes = new Set(lessonsUsed(table.value).map(({ bucketId }) => bucketId))
  const why = new Map('dropped' in lesson ? lesson.dropped.map(({ id, why }) => [id, why]) : [])
  const rows = (listed: readonly Seen[]) => (
    <ul class="taught">
      {listed.map((one) => (
        <Row key={`${one.potId} ${one.lessonId}`} seen={one} why={why.get(one.observation.id)} />
      ))}
    </ul>
  )
  return (
    <section>
      <h2>{w.title}</h2>
      {lesson.count === 0 ? <p>{w.none}</p> : <LessonLine lesson={lesson} />}
      {glazes.size > 1 ? (
        <ul class="figures">
          {[...glazes].map((bucketId) => (
            <GlazeLine key={bucketId} bucketId={bucketId} />
          ))}
        </ul>
      ) : null}
      {told.length > 0 ? (
        <ul class="figures">
          {told.map(({ board, ln, sittings }) => (
            <li key={board}>{w.board(board, Math.exp(ln), sittings)}</li>
          ))}
        </ul>
      ) : null}
      <Changed touched={boards.length > 0} />
      {seen.length > 0 ? rows(seen.slice(0, SEEN)) : null}
      {seen.length > SEEN ? <More label={w.older(seen.length - SEEN)}>{rows(seen.slice(SEEN))}</More> : null}
    </section>
  )
}

/** A room with a heater or a fan more is another one to its boards; where it was said by mistake, that is taken back. */
function Changed({ touched }: { readonly touched: boolean }) {
  const { table, words, act } = useDesk()
  const w = words.value.desk.measured.taught
  const days = useDays()
  const at = roomChangedAt(table.value)
  return (
    <>
      {at === undefined ? null : (
        <>
          <p class="figures">{w.changedAt(days.moment(at))}</p>
          <button
            type="button"
            class="desk-second"
            onClick={() => act({ do: 'change-room', changed: false })}
          >
            {w.notChanged}
          </button>
        </>
      )}
      {touched ? (
        <>
          <button type="button" class="desk-second" onClick={() => act({ do: 'change-room', changed: true })}>
            {w.changed}
          </button>
          <p class="help">{w.changedHelp}</p>
        </>
      ) : null}
    </>
  )
}

function LessonLine({ lesson }: { readonly lesson: Learned }) {
  const w = useDesk().words.value.desk.measured.taught
  return (
    <p class="figures">
      <strong>{w.from(lesson.count)}</strong> {w.waits(...rangeOf(lesson.timeMean, lesson.timeSd))}{' '}
      {w.water(...rangeOf(lesson.fillMean, lesson.fillSd))}
    </p>
  )
}

function GlazeLine({ bucketId }: { readonly bucketId: string }) {
  const { table, words } = useDesk()
  const { timeMean, timeSd } = lessonFor(table.value, bucketId)
  const name = table.value.buckets[bucketId]?.facts.name ?? ''
  return <li>{words.value.desk.measured.taught.glaze(name, ...rangeOf(timeMean, timeSd))}</li>
}

interface RowProps {
  readonly seen: Seen
  readonly why: Lesson['dropped'][number]['why'] | undefined
}

function Row({ seen, why }: RowProps) {
  const { table, words, act } = useDesk()
  const w = words.value.desk.measured.taught
  const days = useDays()
  const pot = table.value.pots[seen.potId]
  if (!pot) return null
  const clock = (min: number) => days.moment(min * 60_000)
  const { observation, potId, lessonId } = seen
  const said =
    observation.kind === 'weighing'
      ? w.weighed(Math.round(observation.gainG), clock(observation.atMin))
      : [
          observation.dampMin === undefined ? undefined : w.look.damp(clock(observation.dampMin)),
          observation.dryMin === undefined ? undefined : w.look.dry(clock(observation.dryMin)),
        ]
          .filter(Boolean)
          .join(', ')
  const out = pot.dropped?.includes(lessonId) ?? false
  return (
    <li class={out ? 'is-out' : undefined}>
      <span class="figures">
        <strong>
          {nameOf(words.value, pot)} {table.value.buckets[seen.bucketId]?.facts.name}
        </strong>
        <small>{why === undefined || out ? said : `${said}: ${w.dropped[why]}`}</small>
      </span>
      <button
        type="button"
        class="key"
        onClick={() => act({ do: 'drop-lesson', potId, lessonId, dropped: !out })}
      >
        {out ? w.again : w.leave}
      </button>
    </li>
  )
}
