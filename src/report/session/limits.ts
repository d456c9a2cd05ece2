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
/** Causes that leave this much more than the best one, in stops, are told from it (common practice, no source). */
export const APART = 0.05;
