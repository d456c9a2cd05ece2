/** How finely interreflection is worked out: `usual` for every day, `fine` with about four times the patches. */
export type Quality = "usual" | "fine";

/** Bounced light of one source, station by station in the scene's order. */
export interface Bounced {
  /** Luminous exposure by way of surfaces, lx s per lm s of the source; 0 or more. */
  readonly bounced: Float64Array;
  /** How far each may be off, in the same unit. */
  readonly error: Float64Array;
}

/**
 * What one surface does for a meter under some lights; both numbers in lx s. In stops the surface gives
 * log2((without + takes) / without). Light that goes by way of two surfaces is missed with either black, so the numbers
 * of all surfaces do not add up to the bounced light.
 */
export interface Contributor {
  /**
   * What the surface belongs to, as the recipe names it: `floor`, `wall left`, a piece of the set with both of its
   * sides and all of its strips, a person's name, or `person` for the only one.
   */
  readonly surface: string;
  /** What the reading would lose if the surface were black, further bounces included. */
  readonly takes: number;
  /** The reading with that surface black: direct light, and what the other surfaces still bounce. */
  readonly without: number;
}
