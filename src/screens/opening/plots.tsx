import { DeskHead } from '../desk/head.tsx'
import { DensityPlot } from './density-plot.tsx'
import { useBackWords } from './plot-part.tsx'
import { RunsPlot } from './runs-plot.tsx'
import { WaitsPlot } from './waits-plot.tsx'
import './back.css'

/** Three plots where looking beats reading: runs told and found, waits by the checks behind them, a bucket's density. */
export function Plots() {
  const w = useBackWords()
  return (
    <div class="desk">
      <DeskHead title={w.title} back={{ at: 'fired' }} />
      <main class="desk-main-part">
        <RunsPlot />
        <WaitsPlot />
        <DensityPlot />
      </main>
    </div>
  )
}
