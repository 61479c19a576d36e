import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { useRoomWords } from '../desk/room-words.ts'
import { Air } from './air.tsx'
import { Clay } from './clay.tsx'
import { Keep } from './keep.tsx'
import { Ring } from './ring.tsx'
import { Count, Phone, Work } from './settings.tsx'
import { Sitting } from './sitting.tsx'
import { Taught } from './taught.tsx'
import './room.css'

/** The room: its air today, the board's clay, how it works, this phone, what is kept. */
export function Room() {
  const w = useRoomWords()
  return (
    <div class="desk room">
      <DeskHead title={w.title} back={{ at: 'board' }} />
      <main class="desk-main-part">
        <Air />
        <Sitting />
        <Clay />
        <Taught />
        <FiringKey />
        <Count />
        <Ring />
        <Work />
        <Phone />
        <Keep />
        <About />
      </main>
    </div>
  )
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

function About() {
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
    </section>
  )
}
