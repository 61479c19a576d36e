import { effect } from '@preact/signals'
import { render } from 'preact'
import { AppProvider } from './screens/app.ts'
import { Screens } from './screens/screens.tsx'
import './ui/style.css'
import './ui/desk.css'
import { openProgram } from './wire/program.ts'

const app = await openProgram()
const dark = matchMedia('(prefers-color-scheme: dark)')
effect(() => {
  const { theme, language } = app.table.value.settings
  const dim = theme === 'dim' || (theme === 'auto' && dark.matches)
  document.documentElement.dataset.theme = dim ? 'dim' : 'paper'
  document.documentElement.lang = language
})
const root = document.getElementById('app')
if (root)
  render(
    <AppProvider value={app}>
      <Screens />
    </AppProvider>,
    root,
  )
