/** How finely interreflection is worked out: `usual` for every day, `fine` with about four times the patches. */
export type Quality = "usual" | "fine";

/** Bounced light of one source, station by station in the scene's order. */
export interface Bounced {
  /** Luminous exposure by way of surfaces, lx s per lm s of the source; 0 or more. */
  readonly bounced: Float64Array;
  /** How far each may be off, in the same unit. */
  readonly error: Float64Array;
}

/** What one surface does for one station under one source; both numbers in lx s per lm s of the source. */
export interface Contributor {
  /** The surface by its name in the recipe; strips, sides and pieces of a wall count together. */
  readonly surface: string;
  /** Light that reaches the station from this surface as its last bounce. */
  readonly amount: number;
  /** All bounced light that would reach the station if this surface were black. */
  readonly without: number;
}
