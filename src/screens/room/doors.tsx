import { daysSince } from '../../table/card/copy-due.ts'
import { AIR_OLD_MS } from '../../table/model/defaults.ts'
import { useDays } from '../days.ts'
import { useDesk } from '../desk/desk-app.ts'
import { useRoomWords } from '../desk/room-words.ts'
import { airText, amount } from '../text/amounts.ts'
import { useAir } from './use-air.ts'

const DOORS = ['air', 'kiln', 'clay', 'count', 'phone', 'keep'] as const
export type Door = (typeof DOORS)[number]

export const isDoor = (name: string | undefined): name is Door => DOORS.some((door) => door === name)

/** The six doors of the room, each with its sign and how things stand behind it. */
export function Doors() {
  const { go } = useDesk()
  const w = useRoomWords()
  const stands = useStands()
  return (
    <main class="doors">
      {DOORS.map((door) => {
        const { says, alarm } = stands[door]
        return (
          <button key={door} type="button" class="door" onClick={() => go({ at: 'room', door })}>
            <Sign door={door} />
            <strong>{w.doors[door]}</strong>
            <small class={alarm ? 'alarm figures' : 'figures'}>{says}</small>
          </button>
        )
      })}
    </main>
  )
}

interface Stands {
  readonly says: string
  readonly alarm?: boolean
}

/** What a door says of what is behind it. */
function useStands(): Readonly<Record<Door, Stands>> {
  const { table, now, words, formats, demo, health } = useDesk()
  const w = useRoomWords()
  const { moment } = useDays()
  const { air, at } = useAir()
  const { board, settings } = table.value
  const agoMs = at === undefined ? 0 : now.value - at
  const { kilnOnAt, leadInS, sound, units } = settings
  const { quarantined, copiedAt } = health.value
  return {
    air:
      agoMs < AIR_OLD_MS
        ? { says: airText(words.value, air, units) }
        : { says: words.value.desk.measured.air.old(formats.value.span(agoMs)), alarm: true },
    kiln: { says: kilnOnAt === null ? w.noKiln : w.kilnAt(moment(kilnOnAt - table.value.skewMs)) },
    clay: {
      says: w.clayStands(
        amount('wallMm', board.wallMm, units),
        board.bisqueCone,
        amount('absorption', board.absorption, units),
      ),
    },
    count: { says: w.countStands(words.value.bench.seconds(leadInS), w.sounds[sound]) },
    phone: { says: w.phoneStands(w.unit[units], w.hands[settings.hand]) },
    keep: demo
      ? { says: '' }
      : quarantined > 0
        ? { says: w.aside(quarantined), alarm: true }
        : { says: w.copiedShort(daysSince(copiedAt, Date.now())) },
  }
}

/** Lines of the signs, drawn like stencils. */
const LINES: Readonly<Record<Door, string>> = {
  air: 'M4 14 Q12 6 20 14 T36 14 T52 14 M4 28 Q12 20 20 28 T36 28 T52 28 M4 42 Q12 34 20 42 T36 42 T52 42',
  kiln: 'M9 18 H47 V50 H9 Z M5 8 H51 V18 H5 Z M28 29 a5 5 0 1 0 0.1 0 M17 42 H39',
  clay: 'M6 12 H14 C14 30 19 38 28 38 C37 38 42 30 42 12 H50 C50 38 40 46 36 46 V51 H20 V46 C16 46 6 38 6 12 Z',
  count: 'M6 21 H15 L27 10 V46 L15 35 H6 Z M34 20 Q41 28 34 36 M42 12 Q55 28 42 44',
  phone: 'M15 4 H41 V52 H15 Z M24 45 H32',
  keep: 'M6 32 V50 H50 V32 M28 5 V37 M16 26 L28 38 L40 26',
}

function Sign({ door }: { readonly door: Door }) {
  return (
    <svg viewBox="0 0 56 56" width="48" height="48" aria-hidden="true">
      <path d={LINES[door]} fill="none" stroke="currentColor" stroke-width="4.5" stroke-linejoin="round" />
    </svg>
  )
}
