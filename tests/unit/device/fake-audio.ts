/** An audio context without sound: its clock is told, and it writes down what is started when. */
export interface Started {
  readonly atS: number
  readonly lastsS: number
  /** Context time from which on nothing of it is heard. */
  stoppedS: number
}

const param = () => ({
  value: 1,
  setTargetAtTime: () => undefined,
  setValueAtTime: () => undefined,
  linearRampToValueAtTime: () => undefined,
})
const node = <Part extends object>(part: Part) => ({ connect: <To>(to: To): To => to, ...part })

export class FakeContext {
  static opened: FakeContext[] = []
  /** The clock its own one follows unless it is stuck, ms. */
  static pageMs: () => number = () => 0
  readonly sampleRate = 8000
  readonly outputLatency = 0
  readonly baseLatency = 0
  readonly destination = node({})
  readonly started: Started[] = []
  state = 'running'
  private readonly fromMs = FakeContext.pageMs()
  private stuckS: number | undefined

  constructor() {
    FakeContext.opened.push(this)
  }

  get currentTime(): number {
    return this.stuckS ?? (FakeContext.pageMs() - this.fromMs) / 1000
  }

  /** From now on it says that it runs, and does not. */
  die(): void {
    this.stuckS = this.currentTime
  }

  createGain = () => node({ gain: param() })
  createWaveShaper = () => node({ curve: null })
  createBuffer = (_channels: number, length: number, rate: number) => ({
    duration: length / rate,
    copyToChannel: () => undefined,
  })
  createBufferSource = () => {
    let mine: Started | undefined
    return node({
      buffer: null,
      start: (atS = 0, _skipS = 0, lastsS = 0) => {
        mine = { atS, lastsS, stoppedS: Number.POSITIVE_INFINITY }
        this.started.push(mine)
      },
      stop: (atS: number) => {
        if (mine) mine.stoppedS = Math.min(mine.stoppedS, atS)
      },
    })
  }

  addEventListener(): void {}
  async resume(): Promise<void> {
    this.state = 'running'
  }
  async close(): Promise<void> {
    this.state = 'closed'
  }
}
