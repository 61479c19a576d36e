/** English of a load while it cools. */
export const cool = {
  bungAt: (clock: string) => `Bung out at ${clock}`,
  calendar: 'Into the calendar',
  coldTwice: (clock: string) =>
    `The lid was lifted hot: pots are hotter than the air about them. Read it again from ${clock}.`,
  fromNever: (from: string, never: string) => `${from} to ${never}`,
  lidAt: (temp: string, at: string) => `Lid from ${temp}: ${at}`,
  moreReadings: (below: string) => `Two readings below ${below} from here on, and the hours are told.`,
  oneMore: (below: string) => `One more reading below ${below}, once it has fallen, and the hours are told.`,
  openHot: (lid: string, out: string) =>
    `Lid lifted above ${lid}: cold air can crack pots. Take none out above ${out}.`,
  openUnread: (out: string) => `Unload below ${out}: read it.`,
  readAt: (temp: string, at: string) => `Read again at ${temp}, about ${at}`,
  readAtTemp: (temp: string) => `Read again at ${temp}`,
  thermometer: 'It is the thermometer’s place, not the pots’.',
  unloadAt: (temp: string, at: string) => `Below ${temp}: ${at}`,
}
