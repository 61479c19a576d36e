import type { VNode } from 'preact'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { useRoomWords } from '../desk/room-words.ts'
import { Air } from './air.tsx'
import { Clay } from './clay.tsx'
import { type Door, Doors, isDoor } from './doors.tsx'
import { Keep } from './keep.tsx'
import { About, Phone } from './phone.tsx'
import { Ring } from './ring.tsx'
import { Count, Waits, Wax } from './settings.tsx'
import { Sitting } from './sitting.tsx'
import { Taught } from './taught.tsx'
import './room.css'

/** The room: six doors, and what is behind the one that the route names. */
export function Room({ door }: { readonly door?: string | undefined }) {
  const { go } = useDesk()
  const w = useRoomWords()
  if (!isDoor(door))
    return (
      <div class="desk">
        <DeskHead title={w.title} back={{ at: 'board' }}>
          <button type="button" class="key" onClick={() => go({ at: 'help' })}>
            {w.help}
          </button>
        </DeskHead>
        <Doors />
      </div>
    )
  const Behind = BEHIND[door]
  return (
    <div class="desk room">
      <DeskHead title={w.doors[door]} back={{ at: 'room' }} />
      <main class="desk-main-part">
        <Behind />
      </main>
    </div>
  )
}

const BEHIND: Readonly<Record<Door, () => VNode>> = {
  air: () => (
    <>
      <Air />
      <Waits />
      <Taught />
    </>
  ),
  kiln: () => (
    <>
      <Sitting />
      <FiringKey />
    </>
  ),
  clay: () => (
    <>
      <Clay />
      <Wax />
    </>
  ),
  count: () => (
    <>
      <Count />
      <Ring />
    </>
  ),
  phone: () => (
    <>
      <Phone />
      <About />
    </>
  ),
  keep: () => <Keep />,
}

/** The glaze firing has a page of its own, with the kiln. */
function FiringKey() {
  const { words, go } = useDesk()
  const w = words.value.desk.shelf
  return (
    <button type="button" class="desk-second" onClick={() => go({ at: 'firing' })}>
      {w.firing}
    </button>
  )
}
