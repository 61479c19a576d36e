import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { lazyPart } from '../lazy.tsx'
import { Air } from './air.tsx'
import { Clay } from './clay.tsx'
import { Keep } from './keep.tsx'
import { Ring } from './ring.tsx'
import { Count, Phone, Work } from './settings.tsx'
import { Sitting } from './sitting.tsx'
import { Taught } from './taught.tsx'
import './room.css'

const Firing = lazyPart(() => import('./firing.tsx').then((part) => part.Firing))

/** The room: its air today, the board's clay, how it works, this phone, what is kept. */
export function Room() {
  const { words } = useDesk()
  const w = words.value.desk.room
  return (
    <div class="desk room">
      <DeskHead title={w.title} back={{ at: 'board' }} />
      <main class="desk-main-part">
        <Air />
        <Sitting />
        <Clay />
        <Taught />
        <Firing />
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

function About() {
  const { words } = useDesk()
  const w = words.value.desk.room
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
