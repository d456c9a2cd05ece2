import type { Quality } from "./types.js";

/** How finely bounced light is worked out. */
export interface Fineness {
  /** Paths in one set; a power of two. */
  readonly paths: number;
  /** Least and greatest number of sets for one station and source. */
  readonly leastSets: number;
  readonly mostSets: number;
  /** Sets are added until the standard error is below this share of the station's whole light from the source. */
  readonly target: number;
}

/** What each quality means. */
export const fineness: Readonly<Record<Quality, Fineness>> = {
  usual: { paths: 128, leastSets: 6, mostSets: 32, target: 0.007 },
  fine: { paths: 256, leastSets: 16, mostSets: 128, target: 0.002 },
};
