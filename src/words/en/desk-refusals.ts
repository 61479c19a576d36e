/** English of what is refused where hands are clean. */
export const deskRefusal = {
  'number-taken': (f: Facts) => `Number ${f.number} is already on the table.`,
  'place-taken': (f: Facts) => `Pot ${f.number} stands there.`,
  'letter-taken': (f: Facts) => `Letter ${f.letter} belongs to ${f.by}.`,
  'in-use': (f: Facts) => `Still used by ${f.by}.`,
  'hidden-letters': 'A letter in it does not show. Type the name anew.',
  'too-long': (f: Facts) => `At most ${f.most} letters.`,
  missing: 'Fill this in.',
  'no-such-pot': 'No pot has these measures. Is the wall too thick?',
  'not-a-cone': 'That is no cone of this make.',
  'unknown-tile': 'That tile is not kept.',
  'unknown-stack': 'Choose a stack first.',
  'at-kiln': 'Not so at the kiln.',
}

type Facts = Readonly<Record<string, string | number>>
