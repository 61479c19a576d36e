import { Choice, Switch } from '../../ui/choice.tsx'
import { VOICES, voiceOf } from '../../words/languages.ts'
import { useDesk } from '../desk/desk-app.ts'
import { useRoomWords } from '../desk/room-words.ts'
import { languageOptions, optionsOf, useSet } from '../desk/settings.ts'

/** How counts and calls are heard and seen, and whether knocks are. */
export function SoundSettings() {
  const { table, extras } = useDesk()
  const set = useSet()
  const w = useRoomWords()
  const { settings } = table.value
  const { sound, noisy } = settings
  const knock = extras.value?.knock.value
  return (
    <>
      <Choice
        label={w.sound}
        options={optionsOf(w.sounds)}
        value={sound}
        onChoose={(mode) => void set('sound', mode)}
      />
      {sound === 'voice' ? (
        <Choice
          label={w.spoken}
          options={languageOptions(VOICES)}
          value={voiceOf(settings)}
          onChoose={(language) => void set('spoken', language)}
        />
      ) : null}
      <Switch label={w.noisy} help={w.noisyHelp} on={noisy} onSwitch={(on) => void set('noisy', on)} />
      {knock ? (
        <>
          <Choice
            label={w.knock}
            help={w.knockHelp}
            options={optionsOf(w.knocks)}
            value={knock.by}
            onChoose={(by) => extras.value?.setKnock(by)}
          />
          {knock.state === 'off' ? null : (
            <p class={knock.state === 'listening' ? 'strong' : 'alarm'} role="status">
              {w.knockStates[knock.state]}
            </p>
          )}
        </>
      ) : null}
    </>
  )
}
