/** English of telling pots apart after the fire. */
export const which = {
  shelf: 'It stood on shelf',
  high: 'High now',
  wide: 'Widest now',
  stack: 'Glaze as it looks',
  bar: 'COMPARE',
  sure: (percent: string) => `${percent} sure`,
  sole: 'It is this one, by all that was seen. Tap it.',
  which: 'Tap the one it is. None is taken for it untapped.',
  none: 'All pots of this load are found.',
  found: (pots: string) => `Found: ${pots}`,
  nothing: 'Fill in what you see: its shelf, height, width or glaze.',
  other: 'NONE OF THESE',
}
