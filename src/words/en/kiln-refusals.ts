/** English of why something is not done at the kiln, by what is wrong. */
export const refusal: Readonly<Record<string, string | ((n: string) => string)>> = {
  'no-kiln': 'That kiln is not known.',
  'no-load': 'That load is not known.',
  'no-shelf': 'There is no such shelf.',
  'no-place': 'No such place: tap on the shelf.',
  'other-kiln': (n: string) =>
    n === '1'
      ? 'Its shelves are of another kind: what stands is to be proposed anew.'
      : `Its shelves are of another kind: all ${n} that stand are to be proposed anew.`,
  'not-back': 'Put right what came after it first.',
  wet: 'Its pots are not dry: candle first, or wait.',
  'hot-kiln': 'This kiln is still hot with another load.',
  'shelf-below': 'The shelf below is not loaded yet.',
  loaded: (n: string) => `Shelf ${n} is loaded: it stays as it is.`,
  'lit-already': 'The kiln is on: the load stays as it is.',
  'not-lit': 'The kiln is not on yet.',
  'off-already': 'The kiln is off already.',
  'not-off': 'The kiln is not off yet.',
  'open-already': 'The lid is open already.',
  'on-other-load': (n: string) => `${n} is in another load.`,
  'already-fired': (n: string) => `${n} was fired already.`,
  'not-open': 'The lid is not open yet.',
  'matched-already': (n: string) => `${n} was found already.`,
  'same-minute': 'There is a reading of that minute. Give this one another time.',
}
