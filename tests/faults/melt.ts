/** Faults of the melt, the cone and the flow tile. */
import type { Fault } from './fault.ts'

const MELT = 'tests/reference/melt.test.ts'
const TILE = 'tests/reference/melt-tile.test.ts'
const CONES = 'tests/reference/cones.test.ts'
const LAWS = 'tests/laws/melt.test.ts'
const VERDICTS = 'tests/unit/engine/melt.test.ts'
const UNIT_TILE = 'tests/unit/engine/melt-tile.test.ts'
const UNIT_CONES = 'tests/unit/engine/cones.test.ts'
const LOOK = 'tests/unit/engine/lookahead.test.ts'
const REMEDY = 'tests/unit/engine/melt-remedy.test.ts'
const TABLE_TILE = 'tests/unit/table/tile.test.ts'
const TABLE_FIRING = 'tests/unit/table/firing.test.ts'
const TABLE_REMEDY = 'tests/unit/table/remedies.test.ts'
const engine = (name: string): string => `src/engine/${name}.ts`

export const MELT_FAULTS: readonly Fault[] = [
  {
    id: 'an ordinary single coat is called near',
    file: engine('melt/melt'),
    find: 'const NEAR_SHARE = 0.5',
    replace: 'const NEAR_SHARE = 0.1',
    tests: ['tests/unit/engine/single-coats.test.ts'],
  },
  {
    id: 'melt runs with the square of its thickness',
    file: engine('melt/flow'),
    find: 'flux[i + 1] = carry * h',
    replace: 'flux[i + 1] = carry',
    tests: [MELT],
  },
  {
    id: 'radius of the wall ignored',
    file: engine('melt/path'),
    find: 'areaMm2: Float64Array.from(middle, (p, i) => p.rMm * ',
    replace: 'areaMm2: Float64Array.from(middle, (_, i) => line[0]!.rMm * ',
    tests: [MELT],
  },
  {
    id: 'lean of the wall ignored',
    file: engine('melt/path'),
    find: 'slopeRMm[i] = slope * faces[i]!.rMm',
    replace: 'slopeRMm[i] = Math.sign(slope) * faces[i]!.rMm',
    tests: [MELT],
  },
  {
    id: 'what runs off is lost',
    file: engine('melt/flow'),
    find: 'if (end === cells) melt.gone += step * flux[cells]!',
    replace: 'if (end > cells) melt.gone += step * flux[cells]!',
    tests: [LAWS],
  },
  {
    id: 'steps past the stable one',
    file: engine('melt/flow'),
    find: 'COURANT / (3 * fastest)',
    replace: '(9 * COURANT) / fastest',
    tests: [LAWS],
  },
  {
    id: 'the smaller dose of an overlap',
    file: engine('melt/coats'),
    find: 'dosePerMm[i] = Math.max(dosePerMm[i]!, dose)',
    replace: 'dosePerMm[i] = dosePerMm[i] === 0 ? dose : Math.min(dosePerMm[i]!, dose)',
    tests: [VERDICTS],
  },
  {
    id: 'an overlap line slides as on bare wall',
    file: engine('melt/flow'),
    find: 'behind * behind + behind * ahead + ahead * ahead',
    replace: 'behind * behind + 0 * ahead',
    tests: [MELT],
  },
  {
    id: 'a run hidden by an overlap line',
    file: engine('melt/melt'),
    find: 'Math.max(0, frontMm(melt) - before, ...melt.edges.map((edge) => edge.atMm - wall.edgeMm))',
    replace: 'Math.max(0, frontMm(melt) - before, 0 * wall.edgeMm)',
    tests: [VERDICTS],
  },
  {
    id: 'margin forgotten',
    file: engine('melt/melt'),
    find: 'wall.edgeMm + Math.max(marginFactor * runMm, runOf())',
    replace: 'wall.edgeMm + runMm',
    tests: [VERDICTS],
  },
  {
    id: 'an untested glaze is cleared',
    file: engine('melt/melt'),
    find: "if (untestedGlazes.length > 0) doubts.push('noTest')",
    replace: "if (untestedGlazes.length > 9) doubts.push('noTest')",
    tests: [VERDICTS],
  },
  {
    id: 'an untried pair is cleared',
    file: engine('melt/melt'),
    find: "if (untried.length > 0) doubts.push('untriedPair')",
    replace: "if (untried.length > 9) doubts.push('untriedPair')",
    tests: [VERDICTS],
  },
  {
    id: 'a flat is judged',
    file: engine('melt/melt'),
    find: "if (outside.length > 0 && isFlat(line, path.lengthMm)) doubts.push('flat')",
    replace: "if (outside.length > 9 && isFlat(line, path.lengthMm)) doubts.push('flat')",
    tests: [VERDICTS],
  },
  {
    id: 'a tile read without its draining',
    file: engine('melt/flow-tile'),
    find: 'if (run <= bandMm / 2) return run / meltMm ** 2',
    replace: 'if (run <= bandMm * 99) return run / meltMm ** 2',
    tests: [TILE],
  },
  {
    id: 'the thin stripe counts as the thick one',
    file: engine('melt/flow-tile'),
    find: 'checkedStripe(stripe).dryMm ** 4',
    replace: 'checkedStripe(stripe).dryMm ** 0',
    tests: [UNIT_TILE],
  },
  {
    id: 'longest drip ignored',
    file: engine('melt/flow-tile'),
    find: 'return drips.length === 0 ? DRIP.usual : Math.max(...drips)',
    replace: 'return DRIP.usual + 0 * drips.length',
    tests: [UNIT_TILE, TABLE_TILE],
  },
  {
    id: 'the dose of a pair taken for the glaze alone',
    file: 'src/table/firing/tiles.ts',
    find: 'tile.bucketId === bucketId && tile.underId === underId',
    replace: 'tile.bucketId === bucketId && (underId === undefined || tile.underId === underId)',
    tests: [TABLE_TILE],
  },
  {
    id: 'another firing taken for the same',
    file: 'src/table/firing/glaze-flow.ts',
    find: 'if (sameFiring(firing, planned)) return dose',
    replace: 'if (planned) return dose',
    tests: [TABLE_TILE],
  },
  {
    id: 'the upper edge of another firing is the likely one',
    file: engine('melt/firing'),
    find: 'high: Math.max(...ratios)',
    replace: 'high: ratios[1]!',
    tests: [CONES],
  },
  {
    id: 'hold forgotten',
    file: 'src/table/firing/firing.ts',
    find: 'return heat && { ...heat, holdMin }',
    replace: 'return heat && { ...heat, holdMin: 0 * holdMin }',
    tests: [TABLE_FIRING],
  },
  {
    id: 'cone 06 read as 6',
    file: engine('melt/cones'),
    find: ".replace(/^o(?=\\d)/, '0')",
    replace: ".replace(/^[o0](?=\\d)/, '')",
    tests: [UNIT_CONES],
  },
  {
    id: 'rate of the rise ignored',
    file: engine('melt/cones'),
    find: 'tempC: lower.tempC + share * (upper.tempC - lower.tempC)',
    replace: 'tempC: lower.tempC + 0 * share * upper.tempC',
    tests: [UNIT_CONES],
  },
  {
    id: 'a wrong row of the cone table',
    file: engine('melt/cone-table'),
    find: "['6', 1185, 1222, 1243,",
    replace: "['6', 1185, 1232, 1243,",
    tests: [CONES],
  },
  {
    id: 'heat work of the middle alone',
    file: engine('melt/firing'),
    find: 'const share = (s + 0.5 + 0.5 * NODES[g]!) / steps',
    replace: 'const share = (s + 0.5 + 0 * NODES[g]!) / steps',
    tests: [CONES],
  },
  {
    id: 'a typed temperature that disagrees passes',
    file: engine('melt/cones'),
    find: 'if (same && Math.abs(typedC - end.tempC) <= FAR_C) return null',
    replace: 'if (same || Math.abs(typedC - end.tempC) > FAR_C) return null',
    tests: [CONES, TABLE_FIRING],
  },
  {
    id: 'frames of the look-ahead start anew',
    file: engine('melt/melt-preview'),
    find: 'flow(melt, share - before)',
    replace: 'flow(melt, share)',
    tests: [LOOK],
  },
  {
    id: 'a coat drawn where it was put',
    file: engine('melt/melt-preview'),
    find: 'Math.min(...mine.map((coat) => coat.fromMm), ...slid)',
    replace: 'Math.min(...mine.map((coat) => coat.fromMm), ...slid.slice(9))',
    tests: [LOOK],
  },
  {
    id: 'a remedy that does not mend',
    file: engine('melt/remedy'),
    find: 'mendFor(input, dipId, pot, isClear)',
    replace: 'mendFor(input, dipId, pot, isOff)',
    tests: [REMEDY],
  },
  {
    id: 'an edge that leaves the inside bare',
    file: 'src/table/advice/remedies.ts',
    find: 'pot.facts.pourInsideFirst === true || coatsOn(pot)',
    replace: 'pot.facts.wallMm !== 0 || coatsOn(pot)',
    tests: [TABLE_REMEDY],
  },
]
