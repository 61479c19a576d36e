/** English of what is called when nobody looks at the kiln's screen. */
export const kiln = {
  call: {
    cone: 'Kiln: look at the cones',
    hold: 'Kiln: the hold is over',
    lid: (temp: string) => `Kiln: about at ${temp}, the lid`,
    unload: (temp: string) => `Kiln: about at ${temp}, unload`,
    read: 'Kiln: read it again',
  },
  body: 'An estimate: look at the cone, or the thermometer, first.',
}
