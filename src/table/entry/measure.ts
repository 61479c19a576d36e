import type { LimitedField } from '../model/limits.ts'

export type Units = 'metric' | 'us'

/** A unit that can be typed: what is stored is typed x `per` + `plus`. */
export interface Unit {
  /** Its symbol, shown behind the number; '' for a bare number. No word: symbols are alike in every language. */
  readonly label: string
  readonly per: number
  readonly plus?: number
  /** Decimals that are shown at most. */
  readonly digits: number
}

export type Quantity =
  | 'length'
  | 'coat'
  | 'density'
  | 'gravity'
  | 'part'
  | 'temperature'
  | 'volume'
  | 'cup'
  | 'seconds'
  | 'minutes'
  | 'speed'
  | 'rise'
  | 'weight'
  | 'grams'
  | 'fineGrams'
  | 'area'
  | 'altitude'
  | 'count'

const MM: Unit = { label: 'mm', per: 1, digits: 1 }
const COAT_MM: Unit = { label: 'mm', per: 1, digits: 2 }
const CM: Unit = { label: 'cm', per: 10, digits: 2 }
const METRE: Unit = { label: 'm', per: 1000, digits: 3 }
/** International inch, exactly 25.4 mm (NIST SP 811, appendix B.8). */
const INCH: Unit = { label: 'in', per: 25.4, digits: 2 }
const MIL: Unit = { label: 'mil', per: 0.0254, digits: 0 }
const BARE: Unit = { label: '', per: 1, digits: 2 }
const G_PER_ML: Unit = { label: 'g/ml', per: 1, digits: 3 }
const G_PER_L: Unit = { label: 'g/l', per: 0.001, digits: 0 }
const PERCENT: Unit = { label: '%', per: 0.01, digits: 1 }
const CELSIUS: Unit = { label: '°C', per: 1, digits: 1 }
const FAHRENHEIT: Unit = { label: '°F', per: 5 / 9, plus: -160 / 9, digits: 1 }
const LITRE: Unit = { label: 'L', per: 1, digits: 2 }
const CUP_ML: Unit = { label: 'ml', per: 1, digits: 0 }
const CUP_LITRE: Unit = { label: 'L', per: 1000, digits: 3 }
const ML: Unit = { label: 'ml', per: 0.001, digits: 0 }
/** US liquid gallon, 3.785 411 784 L, and its quarter (NIST SP 811, appendix B.8). */
const GALLON: Unit = { label: 'gal', per: 3.785411784, digits: 2 }
const QUART: Unit = { label: 'qt', per: 0.946352946, digits: 2 }
const GRAM: Unit = { label: 'g', per: 1, digits: 0 }
const TENTH_GRAM: Unit = { label: 'g', per: 1, digits: 1 }
/** A pocket scale's. */
const HUNDREDTH_GRAM: Unit = { label: 'g', per: 1, digits: 2 }
const KILO: Unit = { label: 'kg', per: 1000, digits: 3 }
/** Avoirdupois, exactly 28.349523125 g (NIST SP 811, appendix B.8). */
const OUNCE: Unit = { label: 'oz', per: 28.349523125, digits: 1 }
const CM2: Unit = { label: 'cm²', per: 1, digits: 0 }
/** International inch squared, exactly 6.4516 cm2. */
const INCH2: Unit = { label: 'sq in', per: 6.4516, digits: 1 }
const HEIGHT_M: Unit = { label: 'm', per: 1, digits: 0 }
/** International foot, exactly 0.3048 m. */
const FOOT: Unit = { label: 'ft', per: 0.3048, digits: 0 }
const SECOND: Unit = { label: 's', per: 1, digits: 1 }
const MINUTE: Unit = { label: 'min', per: 1, digits: 1 }
const HOUR: Unit = { label: 'h', per: 60, digits: 2 }
const MM_PER_S: Unit = { label: 'mm/s', per: 1, digits: 0 }
const INCH_PER_S: Unit = { label: 'in/s', per: 25.4, digits: 1 }
const CELSIUS_PER_H: Unit = { label: '°C/h', per: 1, digits: 0 }
const FAHRENHEIT_PER_H: Unit = { label: '°F/h', per: 5 / 9, digits: 0 }
const COUNT: Unit = { label: '', per: 1, digits: 0 }

const inches = { in: INCH, inch: INCH, inches: INCH, '"': INCH, '″': INCH, '”': INCH }

interface Measure {
  /** The unit of a number typed without one. */
  readonly home: Readonly<Record<Units, Unit>>
  /** Units that may be typed behind the number, in small letters. */
  readonly typed: Readonly<Record<string, Unit>>
}

/** How each kind of quantity is written. */
export const MEASURES: Readonly<Record<Quantity, Measure>> = {
  length: { home: { metric: MM, us: INCH }, typed: { mm: MM, cm: CM, m: METRE, ...inches } },
  coat: { home: { metric: COAT_MM, us: MIL }, typed: { mm: COAT_MM, mil: MIL, mils: MIL, ...inches } },
  density: {
    home: { metric: G_PER_ML, us: G_PER_ML },
    typed: { 'g/ml': G_PER_ML, 'g/cm3': G_PER_ML, 'g/cc': G_PER_ML, 'kg/l': G_PER_ML, 'g/l': G_PER_L },
  },
  gravity: { home: { metric: BARE, us: BARE }, typed: { 'g/ml': BARE, 'g/cm3': BARE, 'g/cc': BARE } },
  part: { home: { metric: PERCENT, us: PERCENT }, typed: { '%': PERCENT, percent: PERCENT } },
  temperature: {
    home: { metric: CELSIUS, us: FAHRENHEIT },
    typed: { '°c': CELSIUS, c: CELSIUS, '°f': FAHRENHEIT, f: FAHRENHEIT },
  },
  volume: {
    home: { metric: LITRE, us: GALLON },
    typed: { l: LITRE, litre: LITRE, litres: LITRE, liters: LITRE, ml: ML, gal: GALLON, qt: QUART },
  },
  cup: { home: { metric: CUP_ML, us: CUP_ML }, typed: { ml: CUP_ML, l: CUP_LITRE } },
  seconds: { home: { metric: SECOND, us: SECOND }, typed: { s: SECOND, sec: SECOND, seconds: SECOND } },
  minutes: { home: { metric: MINUTE, us: MINUTE }, typed: { min: MINUTE, minutes: MINUTE, h: HOUR } },
  speed: {
    home: { metric: MM_PER_S, us: INCH_PER_S },
    typed: { 'mm/s': MM_PER_S, 'in/s': INCH_PER_S },
  },
  rise: {
    home: { metric: CELSIUS_PER_H, us: FAHRENHEIT_PER_H },
    typed: { '°c/h': CELSIUS_PER_H, 'c/h': CELSIUS_PER_H, '°f/h': FAHRENHEIT_PER_H, 'f/h': FAHRENHEIT_PER_H },
  },
  weight: { home: { metric: GRAM, us: OUNCE }, typed: { g: GRAM, kg: KILO, oz: OUNCE } },
  grams: { home: { metric: TENTH_GRAM, us: TENTH_GRAM }, typed: { g: TENTH_GRAM, kg: KILO, oz: OUNCE } },
  fineGrams: { home: { metric: HUNDREDTH_GRAM, us: HUNDREDTH_GRAM }, typed: { g: HUNDREDTH_GRAM } },
  area: { home: { metric: CM2, us: INCH2 }, typed: { cm2: CM2, 'cm²': CM2, in2: INCH2, 'sq in': INCH2 } },
  altitude: { home: { metric: HEIGHT_M, us: FOOT }, typed: { m: HEIGHT_M, ft: FOOT, feet: FOOT } },
  count: { home: { metric: COUNT, us: COUNT }, typed: {} },
}

/** What each field measures. */
export const QUANTITY: Readonly<Record<LimitedField, Quantity>> = {
  number: 'count',
  grams: 'weight',
  heightMm: 'length',
  rimMm: 'length',
  bellyMm: 'length',
  footMm: 'length',
  wallMm: 'length',
  footLineMm: 'length',
  galleryMm: 'length',
  absorption: 'part',
  tempC: 'temperature',
  rh: 'part',
  altitudeM: 'altitude',
  wetC: 'temperature',
  potsC: 'temperature',
  clothMm: 'length',
  clothG: 'grams',
  airFactor: 'gravity',
  clothMin: 'minutes',
  sorptivityMmPerSqrtS: 'gravity',
  tileG: 'grams',
  areaCm2: 'area',
  tileS: 'seconds',
  gramsPerMl: 'density',
  toleranceGramsPerMl: 'density',
  solidsGravity: 'gravity',
  insideMm: 'length',
  litres: 'volume',
  bucketHeightMm: 'length',
  limitMm: 'coat',
  pinMm: 'coat',
  clingsGramsPerCm2: 'gravity',
  slideG: 'fineGrams',
  holdS: 'seconds',
  heldS: 'seconds',
  edgeUpMm: 'length',
  depthMm: 'length',
  leadInS: 'seconds',
  lowerMmPerS: 'speed',
  dripS: 'seconds',
  staleMin: 'minutes',
  stackLimitMm: 'coat',
  collarVesselMm: 'length',
  firstWaitMin: 'minutes',
  laterWaitMin: 'minutes',
  kilnWaitMin: 'minutes',
  loadMin: 'minutes',
  agoMin: 'minutes',
  dryMm: 'coat',
  bandMm: 'length',
  runMm: 'length',
  longestMm: 'length',
  riseCPerH: 'rise',
  fireHoldMin: 'minutes',
  topC: 'temperature',
  logC: 'temperature',
  copies: 'count',
  chamberMm: 'length',
  shelfMm: 'length',
  shelfThickMm: 'length',
  shelfCount: 'count',
  postMm: 'length',
  postCount: 'count',
  upMm: 'length',
  angleDeg: 'count',
  reachMm: 'length',
  readC: 'temperature',
  offsetC: 'temperature',
  meltMm: 'length',
  factor: 'gravity',
  drip: 'gravity',
  firings: 'count',
  cupMl: 'cup',
  cupEmptyG: 'weight',
  cupFullG: 'weight',
}
