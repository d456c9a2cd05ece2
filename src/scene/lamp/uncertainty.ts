/** How far an output may be off by the way it is known, in stops to either side (common practice, no source). */
export const uncertainty = {
  metered: 0.3,
  guideNumber: 0.5,
  efficacy: 1,
  /** A plain output is taken as stated. */
  output: 0,
} as const;
