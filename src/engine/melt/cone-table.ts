/**
 * Pyrometric cones: end points by make, mounting and heating rate.
 *
 * American series: one publisher's current chart, degC, cones 022 to 08 read in two copies; from 07 up the 60 and
 * 150 degC/h columns agree to 0.2 degC with a separate Fahrenheit list of self-supporting cones; large cones from
 * a supplier's list; cone 6 from a published forum quotation (2165/2232/2269 degF). `memory` marks what no copy
 * showed. Older charts, which give 1222 degC for cone 6 at 150 degC/h, are left out on purpose.
 * Seger series: a supplier's list that states no rate. The same number is another cone there.
 */

export type ConeMake = 'american' | 'seger'
export type ConeMounting = 'selfSupporting' | 'ironFree' | 'large' | 'small' | 'unstated'
/** How far a figure can be leant on: read in copies of the chart, read in one other list, or only remembered. */
export type ConeMark = 'chart' | 'list' | 'memory'

/** Which chart a cone is read in: the make and how the cone stands. */
export interface ConeSeries {
  readonly make: ConeMake
  readonly mounting: ConeMounting
}

/** One end point. `rateCPerH` is the rise over the last 100 degC; null where the list states none. */
export interface ConeFigure extends ConeSeries {
  readonly cone: string
  readonly rateCPerH: number | null
  readonly tempC: number
  readonly mark: ConeMark
}

type Row = readonly [cone: string, ...tempsC: (number | null)[]]

const COLUMNS = [
  ['selfSupporting', 15],
  ['selfSupporting', 60],
  ['selfSupporting', 150],
  ['large', 60],
  ['large', 150],
  ['small', 300],
] as const

// Rows are an array: an object with the keys '022' and '6' would be put in another order.
const AMERICAN: readonly Row[] = [
  ['022', null, 586, 590, null, null, 630],
  ['021', null, 600, 617, null, null, 643],
  ['020', null, 626, 638, null, null, 666],
  ['019', 656, 678, 695, 676, 693, 723],
  ['018', 686, 715, 734, 712, 732, 752],
  ['017', 705, 738, 763, 736, 761, 784],
  ['016', 742, 772, 796, 769, 794, 825],
  ['015', 750, 791, 818, 788, 816, 843],
  ['014', 757, 807, 838, 807, 836, 870],
  ['013', 807, 837, 861, 837, 859, 880],
  ['012', 843, 861, 882, 858, 880, 900],
  ['011', 857, 875, 894, 873, 892, 915],
  ['010', 891, 903, 915, 898, 913, 919],
  ['09', 907, 920, 930, 917, 928, 955],
  ['08', 922, 942, 956, 942, 954, 983],
  ['07', 962, 976, 987, 973, 985, 1008],
  ['06', 981, 998, 1013, 995, 1011, 1023],
  ['05.5', 1004, 1015, 1025, null, null, 1043],
  ['05', 1021, 1031, 1044, 1030, 1046, 1062],
  // Large 04 at 150 is listed as 1070 though its neighbours suggest about 1075: kept as published.
  ['04', 1046, 1063, 1077, 1060, 1070, 1098],
  ['03', 1071, 1086, 1104, 1086, 1101, 1131],
  ['02', 1078, 1102, 1122, 1101, 1120, 1148],
  ['01', 1093, 1119, 1138, 1117, 1137, 1178],
  ['1', 1109, 1137, 1154, 1136, 1154, 1184],
  ['2', 1112, 1142, 1164, 1142, 1162, 1190],
  ['3', 1115, 1152, 1170, 1152, 1168, 1196],
  ['4', 1141, 1162, 1183, 1160, 1181, 1209],
  ['5', 1159, 1186, 1207, 1184, 1205, 1221],
  ['5.5', 1167, 1203, 1225, null, null, null],
  ['6', 1185, 1222, 1243, 1220, 1241, 1255],
  ['7', 1201, 1239, 1257, 1237, 1255, 1264],
  ['8', 1211, 1249, 1271, 1247, 1269, 1300],
  ['9', 1224, 1260, 1280, 1257, 1278, 1317],
  ['10', 1251, 1285, 1305, 1282, 1303, 1330],
]

const IRON_FREE: readonly Row[] = [
  ['010', 871, 886, 893],
  ['09', 899, 919, 928],
  ['08', 924, 946, 957],
]

const SEGER: readonly Row[] = [
  ['06a', 990],
  ['04a', 1025],
  ['1a', 1125],
  ['5a', 1215],
  ['6a', 1240],
  ['7', 1260],
  ['8', 1280],
  ['9', 1300],
  ['10', 1320],
]

const FIRST_BEYOND_COPIES = AMERICAN.findIndex(([cone]) => cone === '07')

function americanMark(row: number, cone: string, mounting: ConeMounting, rateCPerH: number): ConeMark {
  if (cone.endsWith('.5')) return 'memory'
  if (mounting === 'large') return 'list'
  if (row < FIRST_BEYOND_COPIES) return 'chart'
  if (mounting === 'small') return cone === '06' || cone === '04' ? 'list' : 'memory'
  return rateCPerH === 15 && cone !== '6' ? 'memory' : 'list'
}

const figuresOf = (
  rows: readonly Row[],
  columns: readonly (readonly [ConeMounting, number | null])[],
  make: ConeMake,
  markOf: (row: number, cone: string, mounting: ConeMounting, rateCPerH: number) => ConeMark,
): ConeFigure[] =>
  rows.flatMap(([cone, ...tempsC], row) =>
    columns.flatMap(([mounting, rateCPerH], column) => {
      const tempC = tempsC[column]
      if (tempC === null || tempC === undefined) return []
      return [{ cone, make, mounting, rateCPerH, tempC, mark: markOf(row, cone, mounting, rateCPerH ?? 0) }]
    }),
  )

/** Every end point known, coolest cone first inside a series, slower rise first inside a cone. */
export const CONE_FIGURES: readonly ConeFigure[] = [
  ...figuresOf(AMERICAN, COLUMNS, 'american', americanMark),
  ...figuresOf(
    IRON_FREE,
    [15, 60, 150].map((rate) => ['ironFree', rate] as const),
    'american',
    () => 'chart',
  ),
  ...figuresOf(SEGER, [['unstated', null]], 'seger', () => 'list'),
]
