/// <reference lib="webworker" />
import { type Ask, makeDesk, type Reply, warm } from './messages.ts'

/** A table that was left alone for so long is worth the battery of a long search, ms. Assumption. */
const QUIET_MS = 8000

/** The planner beside the page: questions in, answers out. The only file here that knows a worker's globals. */
const scope = self as unknown as DedicatedWorkerGlobalScope

// A message lets other messages pass in between and, unlike a timer, isn't slowed when nested.
const { port1, port2 } = new MessageChannel()
const queue: (() => void)[] = []
port1.onmessage = () => queue.shift()?.()
const later = (run: () => void): void => {
  queue.push(run)
  port2.postMessage(null)
}

const ask = makeDesk(
  (reply: Reply) => scope.postMessage(reply),
  later,
  (run) => setTimeout(run, QUIET_MS),
)
scope.onmessage = (event: MessageEvent<Ask>) => ask(event.data)
warm()
