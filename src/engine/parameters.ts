/**
 * Numbers of the water balance that a person does not set. Each carries its unit and where it comes from:
 * *seen* in a source, *memory* (a source not re-seen), *tuned* (to trade experience), *assumption*.
 * Water is counted in mm over the face it stands on (1 mm = 1 kg/m2), rates in mm/s.
 */

/** Part of a soak test's porosity that a short dip can fill. Seen for bricks 0.71 to 0.97; studio range 0.85 to 0.9. */
export const FILLABLE_OF_SOAK = 0.85
/** The same of a boil or vacuum test's porosity. Seen for bricks: 0.57 to 0.8. */
export const FILLABLE_OF_BOIL = 0.7

/**
 * Coat to body equalisation, mm/s per unit of filling, times the difference in filling: a body's widest pores fill last
 * and pull least. Tuned.
 */
export const COAT_TO_BODY = 2.8e-4
/** Back from the body to a coat that dries before it, mm/s per unit of filling. Tuned, 0.5e-4 to 4e-4. */
export const BODY_TO_COAT = 1.5e-4
/** Half of the wall to half, mm/s per unit of saturation. Tuned, 0.5e-4 to 4e-4. */
export const HALF_TO_HALF = 1.8e-4

/** The sheen has gone when so much of the newest coat's pores is empty. Tuned to the trade's waits. */
export const TOUCH_EMPTY = 0.05
/** Thirsty again: room for this part of the water the next coat must shed. Tuned, 0.4 to 1. */
export const THIRSTY_PART = 0.6
/** Kiln-dry: every coat filled no more than this ... Tuned. */
export const KILN_COAT_FILLED = 0.1
/** ... and no more water in wall and coats than this part of the dry wall's mass. Tuned, 0.005 to 0.03. */
export const KILN_WATER_PART = 0.02

/** Below this filling the liquid threads break and drying recedes inward. Memory for porous solids, 0.2 to 0.4. */
export const CRITICAL_FILLED = 0.3
/** Below this filling of a coat its own evaporation fades and the body behind it supplies the rest. Tuned. */
export const COAT_FADES_FILLED = 0.15
/** Vapour resistance of dry coat and body against still air of the same thickness. Seen for bricks 8 to 46. */
export const VAPOUR_RESISTANCE = 12
/**
 * Liquid diffusivity in a body's pores: dry, mm2/s, and how its logarithm grows with the filled part. Seen for a brick
 * (Masea): 2.4e-9 m2/s at its dry end, 3.6e-7 at its wet end.
 */
export const LIQUID_MM2_PER_S = 2.4e-3
export const LIQUID_SLOPE = Math.log(3.6e-7 / 2.4e-9)

/** Heat capacity of fired clay, J/(kg K). Handbook range 750 to 920, memory. */
export const CLAY_J_PER_KG_K = 850
export const WATER_J_PER_KG_K = 4186

/** Part of the room that the inside of a pot sees for radiation. Tuned. */
export const INSIDE_RADIATION = 0.3

/**
 * Airing of the waxed underside, which stands for water that creeps from the floor into the wall and leaves there: over
 * the hours of a floor's drying it travels its few centimetres (liquid diffusivity of brick up to 4e-7 m2/s, seen).
 * Tuned.
 */
export const FLOOR_CREEP_AIRING = 0.3

/** Surface tension of glaze slop, N/m. Assumption: water is 0.072, organics lower it. */
export const SLOP_TENSION_N_PER_M = 0.06
/** Standard gravity (3rd CGPM, 1901). */
export const GRAVITY_M_PER_S2 = 9.80665
/** Solids fraction at which viscosity and yield stress are told: a slop of 1.45 with solids of 2.6. */
export const SLOP_SOLIDS = 0.281
/** Viscosity of slop there and its growth with the solids fraction. Tuned. */
export const SLOP_VISCOSITY_PA_S = 0.06
export const SLOP_VISCOSITY_SLOPE = 18
/**
 * Yield stress there and its growth. A judgement between kaolin in water (extrapolated below 10 % by volume) and the
 * 3.9 Pa at which Harman & Schaefer 1944 part good glazes from poor ones on a glass plate.
 */
export const SLOP_YIELD_PA = 2
export const SLOP_YIELD_SLOPE = 11
/** Seconds after the lift for which a film drains where a thirsty wall sets it. Tuned. */
export const DRAIN_THIRSTY_S = 3
/** Seconds a pot is held to drip where nobody says otherwise. Common practice, no source. */
export const DRIP_S = 10

/** Longest time shown as a number, minutes: seven days. */
export const HORIZON_MIN = 7 * 24 * 60
