/** From this many stops on a difference from the plan is acted on (common practice, no source). */
export const ACT = 0.3;
/** From this many on it is noted (common practice, no source). */
export const NOTE = 0.2;
/** Up to this many it is what meters and dials do by themselves (common practice, no source). */
export const SAME = 0.1;
/** A lamp whose output the readings leave open by more than this to either side, in stops, is not determined. */
export const TELLING = 1;
/** A lamp that gives less than this, in stops, has not fired (common practice, no source). */
export const DARK = -6;
/**
 * A cause is told from the best one where the squares of what it leaves, in tolerances of the readings, come to this
 * much more: four in standard deviations, of which a tolerance holds two, the usual bound of a single number at 95 %.
 */
export const APART = 1;
