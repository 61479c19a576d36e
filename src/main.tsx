/// <reference types="vite/types/importMeta.d.ts" />
import { render } from 'preact'
import { openFaults } from './device/faults.ts'
import { inDemo, lastLanguage, lastSeen, lastTheme, showDemo } from './device/seen.ts'
import { openTrust } from './device/trusted.ts'
import { First } from './screens/first/first.tsx'
import { followPointers } from './ui/lifted.ts'
import type { AllWords } from './words/en/all.ts'
import { FRONT_WORDS } from './words/front.ts'
import { openLanguage } from './words/languages.ts'
import './ui/style.css'
import './ui/desk.css'

/** Of every language but English, whose words are in parts. */
const FOLDERS = import.meta.glob<{ words: AllWords }>('./words/*/index.ts')

openTrust()

const root = document.getElementById('app') ?? document.body
const dark = matchMedia('(prefers-color-scheme: dark)').matches
document.documentElement.dataset.theme = lastTheme() ?? (dark ? 'dim' : 'paper')

const faults = openFaults(
  () => localStorage,
  () => Date.now(),
)
addEventListener('error', ({ error, message }) => faults.note('page', error ?? message))
addEventListener('unhandledrejection', ({ reason }) => faults.note('page', reason))

const lifted = followPointers(window)
let wantsOwn = false
const language = lastLanguage()

/** A first visit reads while the program is fetched; what is hit meanwhile is done as soon as it is there. */
function showFirst(failed: boolean): void {
  const want = (own: boolean) => () => {
    wantsOwn = own
    showDemo(!own)
    if (failed) void open()
  }
  render(
    <First
      words={FRONT_WORDS[language]}
      back={false}
      failed={failed}
      onOwn={want(true)}
      onDemo={want(false)}
    />,
    root,
  )
}

async function open(): Promise<void> {
  let program: typeof import('./wire/start.tsx')
  try {
    program = await import('./wire/start.tsx')
  } catch {
    showFirst(true)
    return
  }
  try {
    await program.start(root, faults, async () => {
      await lifted()
      return wantsOwn
    })
  } catch (error) {
    faults.note('opening', error)
    const { Unopened } = await import('./screens/first/unopened.tsx')
    const backUp = async () => (await import('./wire/unopened.ts')).backUpUnopened()
    const passOn = async () => (await import('./wire/pass-on.ts')).passOnFaults(faults, Date.now())
    render(<Unopened words={FRONT_WORDS[language]} backUp={backUp} passOn={passOn} />, root)
    root.removeAttribute('aria-busy')
  }
}

/** The program is not kept waiting longer than this. */
const PAINT_MS = 3000

const painted = () =>
  new Promise((done) => {
    // A page out of sight is never painted.
    setTimeout(done, document.visibilityState === 'visible' ? PAINT_MS : 0)
    new PerformanceObserver((list) => list.getEntriesByName('first-contentful-paint').map(done)).observe({
      type: 'paint',
      buffered: true,
    })
  })

async function begin(): Promise<void> {
  await openLanguage(language, navigator.language, (code) => FOLDERS[`./words/${code}/index.ts`]?.())
  if (lastSeen() === undefined && !inDemo()) {
    showFirst(false)
    await painted()
  }
  await open()
}

// Not awaited here: what is fetched then imports this file's chunk.
void begin()
