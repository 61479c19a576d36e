import { computed, effect } from '@preact/signals'
import { render } from 'preact'
import type { Faults } from '../device/faults.ts'
import { inDemo, keepLanguage, keepTheme, lastSeen, showDemo } from '../device/seen.ts'
import { AppProvider } from '../screens/app.ts'
import { fetchFaces } from '../screens/lazy.tsx'
import { Screens } from '../screens/screens.tsx'
import { languageOf } from '../words/languages.ts'
import { openProgram } from './program.ts'
import { tellStarted } from './updating.ts'

/**
 * Opens the program and shows it in `root`, in place of the first screen and of no finger on it. `wantsOwn`: the own table
 * was asked for there while the program was still being fetched.
 */
export async function start(
  root: HTMLElement,
  faults: Faults,
  wantsOwn: () => Promise<boolean>,
): Promise<void> {
  // Not the first visit: all is on the phone, and the first card may be any.
  if (lastSeen() !== undefined) fetchFaces()
  const app = await openProgram(faults)
  const dark = matchMedia('(prefers-color-scheme: dark)')
  const settings = computed(() => app.table.value.settings)
  effect(() => {
    const { theme, language } = settings.value
    const dim = theme === 'dim' || (theme === 'auto' && dark.matches)
    document.documentElement.dataset.theme = dim ? 'dim' : 'paper'
    document.documentElement.lang = languageOf(language)
    keepLanguage(language)
    keepTheme(dim ? 'dim' : 'paper')
  })
  if (await wantsOwn()) app.go({ at: 'board' })
  // Asked for while the own table was being opened.
  if (inDemo() && !app.demo && !(await app.tryDemo())) showDemo(false)
  render(
    <AppProvider value={app}>
      <Screens />
    </AppProvider>,
    root,
  )
  root.removeAttribute('aria-busy')
  tellStarted()
}
