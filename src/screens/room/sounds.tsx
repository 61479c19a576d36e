import { More } from '../../ui/more.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { useRoomWords } from '../desk/room-words.ts'

const TONES = ['heard', 'low', 'in', 'tick', 'rise', 'out', 'drip', 'hold', 'refused'] as const

/** Every sound of the app with its meaning, each played by a touch: the order is that of a dip, then the calls. */
export function Sounds() {
  const { table, extras } = useDesk()
  const w = useRoomWords().heard
  const play = extras.value?.playTone
  if (!play) return null
  return (
    <More label={w.title}>
      {table.value.settings.sound === 'numerals' ? <p class="strong">{w.none}</p> : null}
      <div class="sounds">
        {TONES.map((tone) => (
          <button key={tone} type="button" class="key sound-key" onClick={() => play(tone)}>
            <Loudspeaker />
            {w.tones[tone]}
          </button>
        ))}
        {Object.values(table.value.buckets).map(({ facts }) => (
          <button key={facts.bucketId} type="button" class="key sound-key" onClick={() => play(facts.letter)}>
            <Swatch pattern={facts.pattern} letter={facts.letter} size={36} />
            {w.call(facts.name)}
          </button>
        ))}
      </div>
    </More>
  )
}

const Loudspeaker = () => (
  <svg viewBox="0 0 56 56" width="36" height="36" aria-hidden="true">
    <path
      d="M6 21 H15 L27 10 V46 L15 35 H6 Z M34 20 Q41 28 34 36 M42 12 Q55 28 42 44"
      fill="none"
      stroke="currentColor"
      stroke-width="4.5"
      stroke-linejoin="round"
    />
  </svg>
)
