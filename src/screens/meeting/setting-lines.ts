import type { Settings } from '../../../shared/nouns.ts'
import type { LimitedField } from '../../table/model/limits.ts'
import type { room } from '../../words/en/room.ts'
import type { MeetingWords } from '../../words/meeting.ts'
import { amount } from '../text/amounts.ts'

/** What settings are said with: their names are those of the room. */
export interface SettingTexts {
  readonly words: MeetingWords
  readonly room: typeof room
  readonly units: Settings['units']
  /** A moment of the phone's clock, epoch ms. */
  readonly moment: (epochMs: number) => string
}

type Named = (room: SettingTexts['room']) => string
const NUMBERS: Readonly<Partial<Record<keyof Settings & LimitedField, Named>>> = {
  staleMin: (w) => w.stale,
  stackLimitMm: (w) => w.limit,
  collarVesselMm: (w) => w.vessel,
  firstWaitMin: (w) => w.firstWait,
  laterWaitMin: (w) => w.laterWait,
  kilnWaitMin: (w) => w.kilnWait,
  loadMin: (w) => w.load,
}

/** A setting of the table: its name, and how it is. */
function ofSetting(
  { words, room: w, units, moment }: SettingTexts,
  name: string,
  { wax, waxFirst, readyMeans, candle, kilnOnAt, ...rest }: Partial<Settings>,
): readonly [string, string] | undefined {
  if (wax !== undefined) return [w.wax, w.waxes[wax]]
  if (waxFirst !== undefined) return [w.order, w.orders[waxFirst ? 'wax' : 'wipe']]
  if (readyMeans !== undefined) return [w.ready, w.readies[readyMeans]]
  if (candle !== undefined) return [w.candle, w.candles[candle ? 'yes' : 'no']]
  if (kilnOnAt !== undefined) return [w.kilnOn, kilnOnAt === null ? words.meeting.noHour : moment(kilnOnAt)]
  const field = name as keyof typeof NUMBERS
  const [named, value] = [NUMBERS[field], rest[field]]
  return named && value !== undefined ? [named(w), amount(field, value, units)] : undefined
}

/** The name of the one setting that these are. */
export const settingName = (texts: SettingTexts, facts: Partial<Settings>): string =>
  pairsOf(texts, facts)[0]?.[0] ?? ''

/** How each is, without its name. */
export const settingValues = (texts: SettingTexts, facts: Partial<Settings>): string[] =>
  pairsOf(texts, facts).map(([, value]) => value)

const pairsOf = (texts: SettingTexts, facts: Partial<Settings>) =>
  Object.entries(facts).flatMap(([name, value]) => {
    const pair = ofSetting(texts, name, { [name]: value })
    return pair ? [pair] : []
  })
