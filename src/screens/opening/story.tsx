import { useMemo, useState } from 'preact/hooks'
import { firedOf } from '../../table/fired/fired-pot.ts'
import type { PotState } from '../../table/model/state.ts'
import { type StoryLine, storyOf } from '../../table/opening/story.ts'
import { useDays } from '../days.ts'
import { DeskHead } from '../desk/head.tsx'
import { lazyPart } from '../lazy.tsx'
import { coverText, nameOf } from '../text/pot-text.ts'
import { appText } from './guess-lines.tsx'
import { foundText, reachOf, reachText, useOpening } from './opening-app.ts'
import { Kept } from './photo-page.tsx'
import { PotFace } from './pot-face.tsx'
import { stirredText } from './stirred.tsx'
import '../desk/kiln.css'
import './opening.css'

const Film = lazyPart(() => import('./film.tsx').then((part) => part.Film))
const Again = lazyPart(() => import('./again.tsx').then((part) => part.Again))

/** The whole story of a pot on one page: what was done, when, how thick, where it stood, what came of it. */
export function Story({ potId }: { readonly potId: string }) {
  const { table, words } = useOpening()
  const w = words.value.opening.story
  const pot = table.value.pots[potId]
  const [plays, setPlays] = useState(false)
  return (
    <div class="desk">
      <DeskHead
        title={pot ? words.value.desk.pot.title(nameOf(words.value, pot)) : w.title}
        back={plays ? () => setPlays(false) : { at: 'fired' }}
      />
      <main class="desk-main-part">
        {!pot ? (
          <p>{words.value.desk.pot.unknown}</p>
        ) : plays ? (
          <Film pot={pot} />
        ) : (
          <Told pot={pot} play={() => setPlays(true)} />
        )}
      </main>
    </div>
  )
}

function Told({ pot, play }: { readonly pot: PotState; readonly play: () => void }) {
  const { table, words, formats, go } = useOpening()
  const w = words.value.opening.story
  const days = useDays()
  // Worked out when it is asked for: it takes a phone a moment.
  const [again, setAgain] = useState(false)
  const { found, photos } = firedOf(pot)
  const lines = useMemo(() => storyOf(table.value, pot), [table.value, pot])
  const run = found?.run
  const front = reachOf(run)
  const keys = [
    <button
      key="judge"
      type="button"
      class={found ? 'desk-second' : 'desk-main'}
      onClick={() => go({ at: 'judge', potId: pot.facts.potId })}
    >
      {found ? w.putRight : w.judge}
    </button>,
    <button key="play" type="button" class={found ? 'desk-main' : 'desk-second'} onClick={play}>
      {w.play}
    </button>,
  ]
  return (
    <>
      <div class="open-story-face">
        <PotFace pot={pot} front={front}>
          <p class="kiln-big">
            {found ? foundText(words.value, formats.value, found) : words.value.opening.is.open}
          </p>
        </PotFace>
      </div>
      {found ? keys.toReversed() : keys}
      {photos.toReversed().map(({ photoId, side, at }) => (
        <figure key={photoId} class="open-photo">
          <Kept photoId={photoId} alt={w.photoOf(words.value.opening.photos.sides[side])} />
          <figcaption class="figures">
            {words.value.opening.photos.sides[side]}, {days.moment(at)}
          </figcaption>
        </figure>
      ))}
      {again ? (
        <>
          <h2>{words.value.opening.once.title}</h2>
          <Again pot={pot} />
        </>
      ) : (
        <button type="button" class="desk-second" onClick={() => setAgain(true)}>
          {words.value.opening.once.title}
        </button>
      )}
      <ol class="open-story">
        {lines.map((line, i) => (
          <li key={i}>
            <span class="soft figures">{days.moment(line.at)}</span>
            <span class="figures">
              <Line line={line} />
            </span>
          </li>
        ))}
      </ol>
    </>
  )
}

function Line({ line }: { readonly line: StoryLine }) {
  const { table, words, formats } = useOpening()
  const w = words.value.opening.story
  switch (line.what) {
    case 'dipped': {
      const { bucketId, holdS, cover, how } = line.dip
      const name = (table.value.buckets[bucketId] ?? table.value.removed?.[bucketId])?.facts.name ?? ''
      const seconds = words.value.bench.seconds(holdS)
      const thick = line.likelyMm === undefined ? undefined : formats.value.coat(line.likelyMm)
      const stirred = stirredText(words.value, formats.value, line.dip)
      return (
        <>
          <strong>{name}</strong> {coverText(words.value, formats.value, cover)}, {seconds}
          {thick === undefined ? '' : `, ${w.thick(thick)}`}
          {stirred === undefined ? '' : `, ${stirred}`}
          {how === 'logged' ? ` (${w.logged})` : ''}
        </>
      )
    }
    case 'loaded':
      return <>{w.loaded(line.place)}</>
    case 'cone':
      return <>{w.cone(line.cone)}</>
    case 'guessed':
      return (
        <>
          {w.guessed(reachText(words.value, formats.value, line.mm))}
          {line.app
            ? `, ${w.appToo(appText(words.value, formats.value, table.value.settings.units, line.app))}`
            : ''}
        </>
      )
    case 'judged':
      return <strong>{w.found(foundText(words.value, formats.value, line.look))}</strong>
    case 'looked':
      return (
        <>
          {w.looked(
            line.look.faults.length > 0 ? foundText(words.value, formats.value, line.look) : w.nothingNew,
          )}
        </>
      )
    default:
      return <>{w[line.what]}</>
  }
}
