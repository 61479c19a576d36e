/** English of what is called when nobody looks at the kiln's screen. */
export const kiln = {
  call: {
    cone: 'Kiln: look at the cones',
    hold: 'Kiln: the hold is over',
    lid: 'Kiln: about at 120 °C, the lid',
    unload: 'Kiln: about at 60 °C, unload',
    read: 'Kiln: read it again',
  },
  body: 'An estimate: look at the cone, or the thermometer, first.',
}
