/** How finely interreflection is worked out: `usual` for every day, `fine` to a third of its error. */
export type Quality = "usual" | "fine" | "look" | "glance";

/** How long a place that few paths light is worked on. */
export type Patience = "long" | "short";

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
