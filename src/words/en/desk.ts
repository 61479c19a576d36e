import { board, places } from './board.ts'
import { measured } from './measured.ts'
import { melt } from './melt.ts'
import { pot } from './pot.ts'
import { shelf } from './shelf.ts'
import { stacks } from './stacks.ts'

/** English of the screens for clean hands, a file a screen. Short; the number with its unit. */
export const desk = {
  board,
  pot,
  places,
  stacks,
  measured,
  melt,
  shelf,
  demo: { here: 'This is the demo.', leave: 'Back to my pots' },
  back: 'Back',
  save: 'Save',
  done: 'Done',
  takeBack: 'Take back',
  range: (least: string, most: string) => `${least} to ${most}`,
  optional: (range: string) => `${range}, or empty`,
  letters: (most: number) => `up to ${most} letters`,
  wrong: {
    missing: (range: string) => `Fill this in: ${range}.`,
    unreadable: (range: string) => `Not a number. ${range}.`,
    'not-whole': (range: string) => `A whole number, ${range}.`,
    'out-of-range': (range: string) => `Only ${range}.`,
    place: 'A letter and a number, as B 3.',
    letter: 'One capital letter.',
    name: (most: number) => `A name of 1 to ${most} letters.`,
  },
  meant: (text: string) => `${text}?`,
  holdHint: 'Hold it down',
  form: {
    beaker: 'beaker',
    bowl: 'bowl',
    bottle: 'bottle',
    cup: 'cup',
    jar: 'jar',
    plate: 'plate',
    cylinder: 'cylinder',
    lid: 'lid',
  },
  size: { small: 'small', medium: 'medium', large: 'large' },
  pattern: {
    hatch: 'hatch',
    wave: 'wave',
    dots: 'dots',
    brick: 'brick',
    cross: 'cross',
    dash: 'dash',
    ring: 'ring',
    chevron: 'chevron',
  },
}
