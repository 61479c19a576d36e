import type { Name } from '../name.ts'
import { front } from './front.ts'

/** English of a screen that failed: fetched with what stands in its place. */
export const broken = {
  title: 'Something broke on this page',
  text: 'Your pots and every hit are kept, and the waits go on. Try again, or go on from another page.',
  again: 'Try again',
  board: 'To the board',
  bench: 'To the bench',
  backUp: front.unopened.backUp,
  passOn: front.unopened.passOn,
  failed: front.unopened.failed,
  out: (pot: Name, place: string, ago: string) => `${pot} on ${place}: out of the bucket ${ago} ago`,
}
