/// <reference lib="webworker" />
import { type LoadAsk, type LoadReply, makeLoadDesk } from './messages.ts'

/** The load beside the page: questions in, answers out. The only file here that knows a worker's globals. */
const scope = self as unknown as DedicatedWorkerGlobalScope

// A message lets other messages pass in between and, unlike a timer, isn't slowed when nested.
const { port1, port2 } = new MessageChannel()
const queue: (() => void)[] = []
port1.onmessage = () => queue.shift()?.()
const later = (run: () => void): void => {
  queue.push(run)
  port2.postMessage(null)
}

const ask = makeLoadDesk((reply: LoadReply) => scope.postMessage(reply), later)
scope.onmessage = (event: MessageEvent<LoadAsk>) => ask(event.data)
