import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { at } from './places.ts'

export interface OwnServer {
  readonly url: string
  /** Ends the process, once: nothing listens there any more. */
  stop(): Promise<void>
}

/** The built app from a process of its own, on any free port, below `base`. */
export async function ownServer(base: string): Promise<OwnServer> {
  const child: ChildProcess = spawn(
    process.execPath,
    [at('tests/tools/serve.mjs'), '--port', '0', '--root', at('dist'), '--base', base],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  )
  const [first] = (await once(child.stdout!, 'data')) as [Buffer]
  return {
    url: String(first).trim(),
    async stop() {
      if (child.exitCode !== null || child.signalCode !== null) return
      const exited = once(child, 'exit')
      child.kill()
      await exited
    },
  }
}
