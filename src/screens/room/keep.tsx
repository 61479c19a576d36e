import { useRef, useState } from 'preact/hooks'
import { daysSince } from '../../table/card/copy-due.ts'
import { firedOf } from '../../table/fired/fired-pot.ts'
import { HoldKey } from '../../ui/hold.tsx'
import { decimal } from '../../words/number.ts'
import type { JoinedHow, PassedOn } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { useRoomWords } from '../desk/room-words.ts'
import { ToSettle } from '../desk/to-settle.tsx'
import { Join, type Looked } from './join.tsx'
import { useLanguageAnew } from './language.tsx'

/** Backups, what was set aside, and clearing the table. */
export function Keep() {
  const { words, act, health, demo, backUp, lookInto, passSheets, go } = useDesk()
  const w = useRoomWords()
  const file = useRef<HTMLInputElement>(null)
  const [said, setSaid] = useState<{ readonly text: string; readonly wrong: boolean }>()
  const [looked, setLooked] = useState<Looked>()
  const [cleared, setCleared] = useState(false)
  const { quarantined: aside, readOnly, unread, copiedAt, copyHere, lasting } = health.value
  // With a backup the language of that phone comes; what went wrong is read first.
  useLanguageAnew(said?.wrong === false)
  const failed = () => setSaid({ text: w.failed, wrong: true })

  const passOn = (file: () => Promise<PassedOn>, out: typeof w.backedUp) => {
    file().then(({ how, left }) => {
      const wrong = left > 0 && how !== 'cancelled'
      setSaid({ text: wrong ? `${out[how]} ${w.photosLeft(left)}` : out[how], wrong })
    }, failed)
  }
  const read = (chosen: File | undefined) => {
    if (!chosen) return
    lookInto(chosen)
      .then((found) => {
        setLooked(found.ok ? found : undefined)
        setSaid(found.ok ? undefined : { text: w.refused[found.code], wrong: true })
      })
      .catch(failed)
  }
  const join = ({ takeIn }: Looked, how: JoinedHow) => {
    setLooked(undefined)
    takeIn(how)
      .then(({ added, known, faulty, waiting, ahead, whole, photos, photosLost }) => {
        const missing = [
          ...(whole ? [w.notWhole(whole.read, whole.of)] : []),
          ...(faulty > 0 ? [w.leftOut(faulty)] : []),
          ...(waiting > 0 ? [w.waiting(waiting)] : []),
          ...(ahead > 0 ? [w.ahead(ahead)] : []),
          ...(photosLost > 0 ? [w.photosLost(photosLost)] : []),
        ]
        const pictures = photos > 0 ? [w.photosIn(photos)] : []
        setSaid({
          text: [w.tookIn(added, known), ...pictures, ...missing].join(' '),
          wrong: missing.length > 0,
        })
      })
      .catch(failed)
  }
  return (
    <section>
      {demo ? null : (
        <div class="pair">
          <button type="button" class="key" onClick={() => passOn(backUp, w.backedUp)}>
            {w.backUp}
          </button>
          <button type="button" class="key" onClick={() => file.current?.click()}>
            {w.takeIn}
          </button>
          <input
            ref={file}
            class="visually-hidden"
            type="file"
            accept=".txt,.json,text/plain,application/json"
            tabIndex={-1}
            aria-label={w.takeIn}
            onChange={(event) => {
              read(event.currentTarget.files?.[0])
              event.currentTarget.value = ''
            }}
          />
        </div>
      )}
      {demo ? null : <Pictures />}
      {demo ? null : (
        <button type="button" class="key" onClick={() => go({ at: 'codes' })}>
          {w.otherPhone}
        </button>
      )}
      <button type="button" class="key" onClick={() => passOn(passSheets, w.passedSheets)}>
        {w.sheets}
      </button>
      {looked ? (
        <Join looked={looked} join={(how) => join(looked, how)} leave={() => setLooked(undefined)} />
      ) : null}
      {said ? (
        <p class={said.wrong ? 'alarm' : 'strong'} role={said.wrong ? 'alert' : 'status'}>
          {said.text}
        </p>
      ) : null}
      {said && !demo ? <ToSettle /> : null}
      {demo ? null : <p class="strong">{w.copied(daysSince(copiedAt, Date.now()))}</p>}
      {demo || copyHere === undefined ? null : (
        <p class="help">
          {copyHere ? w.copyHere : w.noCopyHere}{' '}
          {lasting === undefined ? '' : w.lasting[lasting ? 'yes' : 'no']}
        </p>
      )}
      {aside > 0 ? <p class="alarm figures">{w.aside(aside)}</p> : null}
      {readOnly ? <p class="alarm">{w.readOnly}</p> : null}
      {unread ? null : cleared ? (
        <div class="cleared" role="status">
          <strong>{w.cleared}</strong>
          <button
            type="button"
            class="key"
            onClick={() => {
              if (!act({ do: 'take-back' })) setCleared(false)
            }}
          >
            {words.value.desk.takeBack}
          </button>
        </div>
      ) : (
        <HoldKey
          label={w.clear}
          hint={words.value.desk.holdHint}
          onHeld={() => {
            if (!act({ do: 'clear-table' })) setCleared(true)
          }}
        />
      )}
      <p class="help">{w.clearHelp}</p>
    </section>
  )
}

/** What of a backup is large. */
function Pictures() {
  const { table } = useDesk()
  const photos = Object.values(table.value.pots).flatMap((pot) => (pot.fired ? firedOf(pot).photos : []))
  if (photos.length === 0) return null
  const bytes = photos.reduce((sum, photo) => sum + photo.bytes, 0)
  return (
    <p class="help figures">
      {useRoomWords().photosGo(
        photos.length,
        bytes < 1e6 ? `${Math.ceil(bytes / 1000)} kB` : `${decimal(bytes / 1e6, 1)} MB`,
      )}
    </p>
  )
}
