/** English of the outline that is read off a photo. */
export const photo = {
  title: 'Outline from a photo',
  stand: [
    'Stand the pot on a table, nothing close behind it.',
    'Hold the phone upright, as high as the middle of the pot.',
    'An arm’s length away, or more. Light from a side.',
  ],
  one: 'Measure its height or its widest part with a ruler. A low bowl: both.',
  camera: 'Take a photo',
  file: 'Choose a picture',
  stays: 'The photo is not kept. Only the outline is.',
  round: 'A pot with a handle, a spout or corners is not round: measure it by hand.',
  notRead: 'That file is no photo that can be read here.',
  wait: 'One moment',
  box: 'Draw a box close round the pot, corner to corner.',
  side: 'Trace the right side from the foot up to the rim. Tap where it turns, or drag.',
  sideDone: 'Up to the rim: next',
  footLeft: 'Tap the left end of the foot.',
  rimLeft: 'Tap the left end of the rim.',
  undo: 'Take back',
  again: 'Another photo',
  retrace: 'Trace again',
  looks: 'Do you see into the pot?',
  look: { yes: 'Yes', no: 'No', line: 'Rim is a line' },
  which: 'Which length did you measure?',
  known: { heightMm: 'Height', bellyMm: 'Widest, often the rim' },
  length: 'Its length',
  find: 'Find the outline',
  keep: 'Keep it',
  found: 'Does the line lie on the pot? Where it is dotted no edge was found.',
  height: 'high',
  rim: 'rim',
  widest: 'widest',
  foot: 'foot',
  steep: 'The phone was high above the rim. Hold it lower for a surer height.',
  picture: 'The photo',
  wrong: {
    points: (value: string, least: string, most: string) =>
      `Points up the side: ${value}. Tap ${least} to ${most}, foot first.`,
    height: (value: string, least: string, most: string) =>
      `From foot to rim it is ${value} of the picture, allowed are ${least} to ${most}. Trace from the foot up.`,
    across: (value: string, least: string, most: string) =>
      `Foot or rim is ${value} of the picture across, allowed are ${least} to ${most}. Trace the right side, then tap the left ends.`,
    edge: (value: string, least: string, most: string) =>
      `An edge shows on ${value} of the outline, needed are ${least} to ${most}. Measure both lengths again, or put something plain behind the pot.`,
    off: (value: string, least: string, most: string) =>
      `The edge lies ${value} from your taps, allowed are ${least} to ${most}. Trace it again, closer.`,
    lengths: (value: string, _least: string, most: string) =>
      `Height and widest are ${value} off what the photo shows, allowed are ${most}. Measure both again.`,
    low: (value: string, least: string) =>
      `It is ${value} as high as wide, needed is ${least}. Measure a pot so low by hand.`,
    known: (value: string, least: string) =>
      `Lengths known: ${value}. This photo needs ${least}: measure the other too.`,
    heightMm: (value: string, least: string, most: string) => `Height ${value}: only ${least} to ${most}.`,
    rimMm: (value: string, least: string, most: string) => `Rim ${value}: only ${least} to ${most}.`,
    bellyMm: (value: string, least: string, most: string) => `Widest ${value}: only ${least} to ${most}.`,
    footMm: (value: string, least: string, most: string) => `Foot ${value}: only ${least} to ${most}.`,
    wallMm: (value: string, least: string, most: string) =>
      `The wall of ${value} leaves no room inside. Only ${least} to ${most}.`,
  },
}
