import { Choice, Switch } from '../../ui/choice.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { useRoomWords } from '../desk/room-words.ts'
import { optionsOf, useSet } from '../desk/settings.ts'
import { LanguageChoice } from './language.tsx'

/** What belongs to this phone and the hand that holds it. */
export function Phone() {
  const { table } = useDesk()
  const set = useSet()
  const w = useRoomWords()
  const { settings } = table.value
  return (
    <section>
      <LanguageChoice />
      <Choice
        label={w.units}
        options={optionsOf(w.unit)}
        value={settings.units}
        onChoose={(units) => void set('units', units)}
      />
      <Choice
        label={w.hand}
        options={optionsOf(w.hands)}
        value={settings.hand}
        onChoose={(hand) => void set('hand', hand)}
      />
      <Choice
        label={w.theme}
        options={optionsOf(w.themes)}
        value={settings.theme}
        onChoose={(theme) => void set('theme', theme)}
      />
      <Switch
        label={w.alone}
        help={w.aloneHelp}
        on={settings.student}
        onSwitch={(on) => void set('student', on)}
      />
      <Offline />
    </section>
  )
}

/** Whether it works without a network, stands on the home screen, and is the newest. */
function Offline() {
  const { health, install, applyUpdate } = useDesk()
  const w = useRoomWords()
  const { offlineReady, install: installed, update } = health.value
  return (
    <>
      <p class="strong">{offlineReady ? w.offline : w.notOffline}</p>
      {installed === 'prompt' ? (
        <button type="button" class="key" onClick={install}>
          {w.install}
        </button>
      ) : (
        <p class="help">{installed === 'installed' ? w.installed : w.installBy}</p>
      )}
      {update ? (
        <button type="button" class="key" onClick={applyUpdate}>
          {w.update}
        </button>
      ) : null}
    </>
  )
}

/** What this is, what it can harm, and whose work is in it. */
export function About() {
  const { words } = useDesk()
  const w = useRoomWords()
  return (
    <section>
      <h2>{w.about}</h2>
      <p>{w.aboutText}</p>
      <ul class="first-cautions">
        {[...words.value.first.cautions, ...w.cautions].map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p class="help">{w.private}</p>
      <a class="key" href="./licences.txt" target="_blank" rel="noreferrer">
        {w.licences}
      </a>
    </section>
  )
}
