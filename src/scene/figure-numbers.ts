/**
 * The figure's numbers, as shares of the stature (Drillis and Contini's segment proportions, 1966, from memory).
 * `docs/guide/figure.md` publishes them; heights are above the soles of one who stands.
 */
export const figure = {
  head: { across: 0.045, ahead: 0.057, up: 0.067, height: 0.933 },
  neck: { radius: 0.032, from: 0.82, to: 0.88 },
  trunk: { across: 0.115, ahead: 0.075, up: 0.165, height: 0.67 },
  leg: { radius: 0.045, side: 0.055, hip: 0.5, knee: 0.285, ankle: 0.039 },
  /** `length` runs from the shoulder to the fingertips. */
  arm: { radius: 0.026, side: 0.13, shoulder: 0.8, length: 0.44 },
  /** Heights of the stations at the front of the body. */
  stations: { face: 0.933, chest: 0.72, knee: 0.285, shin: 0.16 },
  /** Default height of a seat. */
  seat: 0.25,
} as const;

/** Default stature, m, and default reflectances. */
export const defaultStature = 1.7;
/** Default reflectance of the skin, 0 to 1 (common practice, no source). */
export const defaultSkin = 0.35;
/** Default reflectance of the clothes, 0 to 1 (common practice, no source). */
export const defaultCloth = 0.3;
/** Default reflectance of the hair, 0 to 1 (common practice, no source). */
export const defaultHair = 0.08;
/** How fast the fastest part of a person moves, by the word of the recipe, m/s (common practice, no source). */
export const speeds: Readonly<Record<string, number>> = {
  still: 0,
  turns: 0.5,
  walks: 1.4,
  swings: 2,
  jumps: 4,
  throws: 5,
};
