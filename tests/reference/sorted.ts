/**
 * Every test of this room, its rows and what stands against the engine in it. Counted are the first three kinds, each
 * row once:
 * *printed*: a value printed in the work named, to a tolerance under 15 % that it supports;
 * *code*: independent code, or the same law summed or marched apart from the engine's way;
 * *closed*: a closed form or a balance done by hand.
 * Not counted: *memory*, values and practice that nobody looked up again; *itself*, a table or formula the code was typed
 * from, a conversion, one row out of another, or a number tuned on the very value; *wide*, ranges and bounds of 15 % and
 * more, laws quoted without a value, and what is told as not reproduced.
 */
export type Kind = 'printed' | 'code' | 'closed' | 'memory' | 'itself' | 'wide'

/** Title as in the file, rows, kind; work, place and tolerance of a printed value, or whose code it is. */
export type Sorted = readonly [title: string, rows: number, kind: Kind, source?: string]

const ASHRAE = 'ASHRAE Handbook Fundamentals 2017, ch. 1'
const SHEET = 'sheet quoting the Handbook for Australian Potters (scribd 187727916): last digit'

export const SORTED: Readonly<Record<string, readonly Sorted[]>> = {
  advice: [
    ['%d mm at %d', 5, 'closed'],
    ['%d mm in %d s', 3, 'closed'],
    ['five seconds are thinner than a credit card at 1.45 and thicker at 1.55', 1, 'memory'],
    [
      'two dips of two seconds are a card within a quarter, the second on a coat that is touch-dry',
      1,
      'memory',
    ],
    ['a 3 mm wall takes no more than its pores, and no seconds give 0.9 mm', 1, 'closed'],
    ['three dips of 4, 3, 3 s fill 4 mm and not 14 mm', 1, 'memory'],
  ],
  air: [
    ['at %d degC is %d Pa (ASHRAE table 3)', 3, 'printed', `${ASHRAE}, table 3: 300 ppm`],
    ['at %d degC is %d Pa (IAPWS-95)', 3, 'code', 'IAPWS-95 by CoolProp 8.0.0: 300 ppm'],
    [
      'at 300 K is 3536.58941 Pa (IAPWS-IF97 release, table 35, computer-program verification)',
      1,
      'printed',
      'IAPWS R7-97(2012), table 35: 300 ppm between the two laws',
    ],
    ['at %d degC is %d Pa (FAO-56 example 3)', 2, 'printed', 'FAO paper 56, example 3: 0.2 % by Tetens'],
    ['saturated at %d degC weighs %d g/m3', 3, 'code', 'IAPWS-95 by CoolProp 8.0.0: 0.3 %, ideal gas'],
    [
      'at %d degC, %d hPa, humidity %d holds %d g/kg of dry air (MetPy examples)',
      2,
      'printed',
      'MetPy documentation, mixing_ratio_from_relative_humidity and its inverse: 0.2 %, another law of saturation',
    ],
    ['takes at %d degC %d kJ/kg', 3, 'code', 'IAPWS-95 by CoolProp 8.0.0: 0.02 %'],
    [
      'ASHRAE 2017 ch. 1, example 1: air of 40 degC, 14 % has its dew point at 7 degC',
      1,
      'printed',
      `${ASHRAE}, example 1: read off a chart to 0.5 K`,
    ],
    ['spreads at 25 degC by %d m2/s (textbook tables)', 2, 'memory'],
    ['saturation pressure over ice and water to 1e-9', 1, 'code', 'psychrolib 1.1.1'],
    ['dew point to 0.003 K', 1, 'code', 'psychrolib 1.1.1'],
    [
      'a fanned pair gives its humidity to 1.2 points (another equation of the wet bulb)',
      1,
      'code',
      'psychrolib 1.1.1',
    ],
    ['pressure at altitude to 1e-5', 1, 'code', 'psychrolib 1.1.1'],
    [
      'ASHRAE table 1: 95461 Pa at 500 m, 89875 Pa at 1000 m',
      1,
      'printed',
      `${ASHRAE}, table 1: last digits, 2 Pa`,
    ],
    ['%s agrees with FAO-56 eq. 16 at %d to 0.5 points', 3, 'itself'],
    [
      '958 hPa, 25/12 degC is 19.83 % (MetPy example; its coefficient is 6.21e-4, ours 5 % more: 2 points)',
      1,
      'printed',
      'MetPy documentation, relative_humidity_wet_psychrometric: 2 points, as the coefficients differ',
    ],
    ['with the coefficient 6.62e-4 of AWS330 manual, appendix B, 18/12 agrees to 0.3 points', 1, 'itself'],
    [
      'cylinder, Re 6071, Pr 0.7: 40.637 (Churchill & Bernstein)',
      1,
      'code',
      'Bergman et al., example 7.3, in the tests of the library ht: 1e-7',
    ],
    ['cylinder within 15 %% of %s', 5, 'wide'],
    [
      'upright face of a 0.3 m duct, 45 against 15 degC: 47.83 (Bergman et al., example 9.3)',
      1,
      'printed',
      'Bergman et al., Fundamentals of Heat and Mass Transfer, example 9.3: 0.5 %',
    ],
    ['upright face within 15 % of 0.59 Ra^1/4 (McAdams, from memory), Ra 1e5 to 1e8', 1, 'memory'],
    ['sheet, Pr 0.7: twice the local 0.2927 Re^1/2 of the exact boundary layer (from memory)', 1, 'memory'],
    [
      'a wrapped can in 30 degC, 40 % settles at 19.4 degC without radiation (Cengel, example 14-12)',
      1,
      'printed',
      'Cengel, Heat and Mass Transfer, example 14-12: 0.3 K',
    ],
    [
      'without radiation lies within 0.5 K of the thermodynamic wet bulb (psychrolib)',
      1,
      'code',
      'psychrolib 1.1.1',
    ],
    [
      'still air over water at 20 degC, 50 %: 113 g/m2h from a pool; a pot within 25 % (Shah 2002: laws 18 % off)',
      1,
      'wide',
    ],
    ['radiation among surfaces at 20 degC is 5.1 W/m2K at emissivity 0.9 (4 e sigma T3)', 1, 'closed'],
    [
      'heat and mass agree by Lewis: h/hm is rho cp Le^2/3, about 1100 (textbook rule, from memory)',
      1,
      'memory',
    ],
    ['a wet pot loses 60 to 105 g/m2h in a room at 21 degC, 32 % (common practice, no source)', 1, 'memory'],
  ],
  bucket: [
    ['10 L in a bucket of 280 mm stand 162.4030 mm', 1, 'closed'],
    ['a pail of 80 to 120 mm, 100 high, holds 795.87014 mL', 1, 'closed'],
    [
      'a cone of slope one filled to level h holds pi h3/3: doubling the depth is eight times the slop',
      1,
      'closed',
    ],
    ['Archimedes: an upturned cylinder of 50 by 120 raises it 15.3061 mm', 1, 'closed'],
    ['the least liquid for it, 20 mm off the floor, is 7.67805 L', 1, 'closed'],
    [
      'a full cup pushes aside its clay, an upturned one its outside less the strip let in by Boyle',
      1,
      'closed',
    ],
    [
      '0.546 mm over the drawn mug takes 49.7 mL of slop and 36.3 g dry; twelve take 0.596 L (by mass balance)',
      1,
      'closed',
    ],
    ['wet and dry take-up agree with the weights of the same mug: 72.0 g wet', 1, 'itself'],
    [
      'a straight rim of 150 in a vessel of 200, 25 deep, 10 off the floor: 0.66 L to a line at 21 mm',
      1,
      'closed',
    ],
    ['a bowl narrowing to 140 mm at 25 mm needs 0.69 L', 1, 'closed'],
  ],
  casting: [
    ['S %d and R %d draw A %d', 3, 'closed'],
    ['a cake of resistance rho has R2 = B/rho, not 1/(B rho)', 1, 'closed'],
    ['a wall that drinks without effort leaves the cake alone: L2 = t/(rho B)', 1, 'closed'],
    ['a cake without resistance leaves the wall alone: L = S sqrt(t)/B', 1, 'closed'],
    ['a wall that does not drink casts nothing', 1, 'closed'],
    ['an ample wall casts by the root of time: four times the seconds, twice the coat', 1, 'closed'],
    ['a full wall stops: L = W/B however long', 1, 'closed'],
    [
      'closed forms agree with marching the resistances, old coats first',
      1,
      'code',
      'the resistances marched in 200 000 steps: 1e-6',
    ],
    ['%d g in a minute over 30 in2 (ASTM C216, C270) is %d mm/sqrt s: a conversion', 4, 'itself'],
    ['two water dips give the sorptivity whatever clings', 1, 'closed'],
    ['the fillable part of a soak test lies among measured bricks', 1, 'wide'],
    ['and of a boil test too', 1, 'wide'],
    ['the assumed sorptivity is within the range measured on bricks, 0.39 to 2.2 mm/sqrt min', 1, 'wide'],
    ['water at %d degC has %d mN/m and %d mPa s (IAPWS)', 3, 'itself'],
    ['at %d degC a wall drinks as the root of tension over viscosity (IAPWS releases)', 8, 'itself'],
    ['drag-out with gravity taken off (White & Tallmadge)', 1, 'closed'],
    ['a thin film is that of Landau, Levich and Derjaguin', 1, 'closed'],
    // Printed is 0.02 in other units: 0.626 is worked out of it.
    ['drag-out of plating baths: 0.626 of the root of mu U over rho g, within a tenth', 1, 'itself'],
    ['the mean of a draining plate is two thirds of its lower end (Jeffreys)', 1, 'closed'],
    ['what yield stress holds stays: 1.4 Pa is 0.09846 mm', 1, 'closed'],
    ['the mean is that of the film, summed in thin strips', 1, 'code', 'summed in 20 000 strips: 1e-6'],
    ['an unmeasured slop of 1.45 clings by less than 0.04 g/cm2', 1, 'wide'],
    ['2 s near 1.44 is near 0.41 mm, tuned on it', 1, 'itself'],
    ['%d s is within the trade range', 3, 'memory'],
    ['a wet gain tells the coat', 1, 'closed'],
    ['a scratch moves the factor as far as its error allows', 1, 'closed'],
  ],
  cones: [
    // Both lists are one publisher's, in two units.
    ['cone %s: %d and %d degF', 32, 'itself'],
    ['American %s, %s, %d degC/h: %d degC (%s)', 20, 'itself'],
    ['Seger %s: %d degC, no rate stated', 9, 'itself'],
    ['Seger 7 is some 20 K above the American 7: makes are different cones', 1, 'itself'],
    ['the older figure for %s at 150 degC/h, %d degC, is not used', 4, 'itself'],
    ['in a series a later cone is never cooler at the same rate, large or self-supporting', 1, 'itself'],
    ['2300 degF is about cone 9, not 6 (degF list above)', 1, 'itself'],
    ['a rise at constant rate, %d kJ/mol, %d degC/h: exponential integral', 6, 'closed'],
    ['a hold at %d degC, %d kJ/mol: Arrhenius', 3, 'closed'],
    ['a rise at 60 degC/h to the end point of cone %s, and 4 degC more or less', 13, 'itself'],
    ["from cone %s to %s the dose grows as Laplace's estimate says", 3, 'closed'],
    ['cone %s at %d degC/h falls %d min about', 8, 'itself'],
  ],
  cooling: [
    [
      'a steel ball of 5 cm: 450 to 150 degC in air of 100 (Holman, Heat Transfer, example 4-1: 5819 s)',
      1,
      'printed',
      'Holman, Heat Transfer, example 4-1: last digit',
    ],
    [
      'a junction of a time constant of 1 s, 25 to 199 degC in gas of 200 (Incropera, Heat and Mass Transfer, 5.1: 5.2 s)',
      1,
      'printed',
      'Incropera, Heat and Mass Transfer, example 5.1: last digit',
    ],
    [
      'a body as a cylinder of water, 37 to 25 degC in air of 20 (Cengel, Heat Transfer, example 4-2: 12.2 h)',
      1,
      'printed',
      'Cengel, Heat Transfer, example 4-2: last digit',
    ],
    [
      'a steel ball in a medium of 394.3 K, 699.9 K after an hour (Geankoplis, Transport Processes, 5.2-1: 474.6 K)',
      1,
      'printed',
      'Geankoplis, Transport Processes, example 5.2-1: 0.5 K',
    ],
    ['of %d the law is that of its own rate, forth and back', 5, 'code', 'Runge and Kutta, marched here'],
    ['half of the folds lie before the reading that is asked for', 1, 'closed'],
  ],
  fired: [
    [
      '%d lies above a part of %d',
      6,
      'printed',
      'NIST/SEMATECH e-Handbook, 1.3.6.7.2, four degrees: half of the last digit of t',
    ],
    ['density is the slope of the distribution', 1, 'closed'],
    ['at most %d of %d at %d', 5, 'code', 'every way counted one by one: 1e-12'],
    [
      '%d kJ/mol at 1222 degC change a dose by %d a kelvin (R of CODATA 2018: 8.314462618 J/(mol K))',
      3,
      'closed',
    ],
    [
      'nine nodes carry the moments of the normal law up to the sixteenth, and its part below 1.5',
      1,
      'closed',
    ],
    ['a system of Hilbert’s matrix has its known whole-numbered inverse', 1, 'closed'],
  ],
  geometry: [
    ['cylinder 50 by 100: 314.1593 cm2 around, 78.5398 cm2 base, 785.3982 mL', 1, 'closed'],
    ['frustum 40/60 by 100: 320.38084 cm2, 795.87014 mL', 1, 'closed'],
    ['cone 50 by 120: 204.20352 cm2, 314.15927 mL', 1, 'closed'],
    ['hemisphere 50: 157.07963 cm2 and 261.79939 mL to 0.01 % and 0.02 % in 64 pieces', 1, 'closed'],
    ['Archimedes: a zone of a sphere has the area of its cylinder, wherever it is cut', 1, 'closed'],
    ['cap of height 40 on a sphere of 60: 234.57225 mL, rim 56.56854', 1, 'closed'],
    ['a lying cylinder %d deep is filled %d (Perry, from memory)', 8, 'memory'],
    ['the hoof cut from a cylinder by a plane through a diameter of its base is 2/3 R2 h', 1, 'closed'],
    ['a slanted cut clear of both ends leaves the cylinder of the mean height', 1, 'closed'],
    ['an inside %d deep, rim %d under, slop %d, %d Pa rises as Boyle has it', 3, 'closed'],
    ['100 mm under, 88 mm deep, slop 1.45: 1.20 mm', 1, 'itself'],
    ['a drawn mug: 265.1189 cm2 outside, 257.8026 inside, 627.1907 / 442.0032 / 185.1875 mL', 1, 'closed'],
    [
      'Pappus: area and volume of every usual pot are those of its centroids (CRC concise encyclopedia)',
      1,
      'code',
      'lines and areas of 50 points a piece: 0.1 %',
    ],
    ['a %d mL beaker of %d by %d mm holds 1.1 to 1.4 times that', 5, 'memory'],
    [
      'a medium cup holds 250 to 450 mL and weighs 180 to 400 g bisque-fired (common practice, no source)',
      1,
      'memory',
    ],
  ],
  learning: [
    ['%s', 4, 'closed'],
    ['two watched waits are the precision-weighted mean (normal prior, closed form)', 1, 'closed'],
    ['an answer that may be wrong teaches a mixture of knowing and not knowing', 1, 'closed'],
    ['P(%d)', 5, 'printed', 'Abramowitz & Stegun, table 26.1: 1e-12'],
    ['quantiles of one log-normal', 1, 'closed'],
    ['three nodes stand for the normal law of the fill factor to 10 %', 1, 'closed'],
  ],
  'melt-tile': [
    ['dry %d mm, band %d mm, run %d mm: dose %d', 3, 'closed'],
    ['three stripes under the square law give the one dose: sum R h^2 / sum h^4', 1, 'closed'],
    ['the solver on a pot runs what the tile ran', 1, 'itself'],
    ['on a flat round floor: volume over area', 1, 'closed'],
    ['in a round bowl: a spherical cap, V = pi d^2 (3 R - d)/3', 1, 'closed'],
    ['one ordinary coat of a medium glaze holds above a 6 mm bare foot', 1, 'memory'],
    ['three coats of a runny glaze run', 1, 'memory'],
  ],
  melt: [
    ['30 mm of 0.5 mm at dose %d: front at %d mm, before draining catches up', 4, 'closed'],
    ['30 mm of 0.5 mm at dose %d: front at %d mm in the thinning stage', 4, 'closed'],
    [
      'the published scaling: A = 1, k = 1, t = 1000 gives x_f = 13.10371',
      1,
      'code',
      'Basilisk example viscolsqrt.c, constants: 0.6 % on cells',
    ],
    ['the film at that front is 0.1144714 thick', 1, 'code', 'Basilisk example viscolsqrt.c: 2 % on cells'],
    ['dose %d at %d mm: %d mm', 5, 'closed'],
    [
      'nu %d, %d deg, Re %d: film %d mm, mean speed %d m/s',
      2,
      'code',
      'vectors of an open film-flow package (model_filmflow_laminar): 2e-4',
    ],
    ['1 mm of 1000 Pa s, 2400 kg/m3: 7.8453e-9 m2/s, 0.4707 mm/min on the mean', 1, 'closed'],
    ['a cone opening by %d mm a mm at dose %d', 2, 'closed'],
    ['at the pole of a dome of radius %d mm, dose %d: h = (h0^-2 + 4 P/R)^(-1/2)', 3, 'closed'],
    ['%d over %d mm at dose %d', 3, 'closed'],
    // The certificate's formula against its own table; the engine multiplies by a constant.
    ['NBS 710: ten minutes at %d degC, 10^%d poise: %d per mm', 5, 'itself'],
    [
      '%s: up to the peak and down again equals a fine midpoint sum',
      4,
      'code',
      '40 000 midpoints a leg: 1e-6',
    ],
    ['the apparent energy of DGG I, 1100 to 1400 degC, lies in the band used for other firings', 1, 'wide'],
  ],
  outside: [
    // Within 18 %, the mean deviation of that law, in the kindest air and size only.
    ['at %d degC in half damp air of %d degC loses %d kg/m2h', 9, 'wide'],
    ['moved by %d m/s over %d mm the nine come to %d to %d %% of the law', 4, 'wide'],
    // 1.1 of 4.7 K and 1.5 of 8.3: heat through the vessel is not told.
    ['at humidity %d its water stands %d K below its air', 2, 'wide'],
    ['at humidity %d it stays warmer than the wet bulb, %d K below, by a tenth to two fifths', 2, 'wide'],
    [
      'sand: its filling over 334 hours, twenty points, to 0.03',
      1,
      'printed',
      'Iden, Diamantopoulos & Durner 2021, sand_evap_rate.csv: 0.03 of filling, its start is told to 0.015',
    ],
    ['sand: it has slowed to %d of its steady rate at a filling of %d', 2, 'wide'],
    ['a face at %d degC that its air would dry at once is fed %d mm/s', 2, 'closed'],
    // Two laws quoted without a value.
    ['the steady stage of %d, %d and %d mm lies on a line', 2, 'wide'],
    ['critical %d, equilibrium %d: from %d to %d in %d, so from %d to %d in %d', 3, 'closed'],
    ['a sheet of 0.9 kg that loses 0.1 g/s at first takes 11.75 h', 1, 'closed'],
    ['follows a straight line from 20 to 30 degC that holds at 15', 1, 'wide'],
    ['a bisque of wall tile absorbs at least as fast as a wall tile was seen to', 1, 'wide'],
    // The grams are printed; stress and dry mm are worked out of them here.
    ['0.04 g/cm2 is a stress of 3.9 Pa whatever the density', 1, 'itself'],
    ['0.04 g/cm2 of a slop of %d is %d mm dry', 4, 'itself'],
    ['an unmeasured slop of %d clings by less than the limit', 2, 'wide'],
    ['the film of an unmeasured slop stays under a dipped enamel coat on steel', 1, 'wide'],
    ['a dipping slop has the viscosity at which washcoats load best', 1, 'wide'],
    // The code was typed from the formula of these.
    ['at %d, %d Pa, %d Pa s, after %d s: %d mm dry', 12, 'itself'],
    ['an unmeasured slop of %d leaves %d to %d mm on a full wall', 4, 'itself'],
    ['%d Pa at 1.45 and 0.06 Pa s leave %d mm after 10 s', 2, 'itself'],
  ],
  packing: [
    [
      '%d equal circles go into a circle',
      14,
      'printed',
      'Graham, Lubachevsky, Nurmela & Ostergard, Discrete Math. 181 (1998) 139: reached to 2 % of the radius',
    ],
    [
      '%d equal circles go into a square',
      12,
      'printed',
      'Nurmela & Ostergard, Discrete Comput. Geom. 18 (1997) 111; OEIS A281115: reached to 2 % of the radius',
    ],
    [
      'circles of 1 to %d go into one of %d at 0.97, from 18 on at 0.95, 150 kicks',
      7,
      'printed',
      'Ye, Huang & Lu, table of best containers for radii 1 to n: reached to 3 %, at 18 to 5 %',
    ],
    ['two discs go nowhere where only one has room: an overlap is never taken for none', 1, 'closed'],
    ['no more unit discs than Groemer allows go into %s', 3, 'closed'],
    ['equal discs cover pi over the root of 12 of the plane at most', 1, 'closed'],
    ['discs that differ by %d cover %d at most', 2, 'memory'],
  ],
  slurry: [
    [
      '1500 g/L at gravity 2.5 holds 833.3 g dry and 666.7 g water',
      1,
      'printed',
      'S. Altmann, potters.org subject 11877: 0.05 g',
    ],
    [
      '14 kg dry at %d needs %d kg water (same)',
      2,
      'printed',
      'S. Altmann, potters.org subject 11877: 0.01 kg',
    ],
    ['at %d holds %d g dry a litre (handbook table)', 14, 'printed', SHEET],
    // A hundred over the rows above.
    ['at %d, %d mL hold 100 g dry', 14, 'itself'],
    ['mud of %d to %d lb/gal takes the barite of the field formula', 3, 'memory'],
    ['mud of %d to %d lb/gal takes the water of the field formula', 2, 'memory'],
    ['10 L of 1.60 to 1.45 takes 3.3333 L', 1, 'closed'],
    ['10 L of 1.40 to 1.45 by dry mix of 2.6 takes 1.1304 kg and makes 10.4348 L', 1, 'closed'],
  ],
}
