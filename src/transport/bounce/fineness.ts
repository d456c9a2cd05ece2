import type { Quality } from "./types.js";

/** How finely bounced light is worked out. */
export interface Fineness {
  /** Paths in one set; a power of two. */
  readonly paths: number;
  /** Least number of sets for one station and source. */
  readonly leastSets: number;
  /** No set is begun that would lead past so many corners of paths; a path counts as one corner more than it has. */
  readonly mostCorners: number;
  /** The same where more than 0.05 stop of the station's light from the source is not known, and so many would tell. */
  readonly hardCorners: number;
  /** Sets are added until the standard error is below this share of the station's whole light from the source. */
  readonly target: number;
  /** Standard errors of the sets' mean in the stated error: more where few paths may have missed what is rare and bright. */
  readonly errors: number;
}

/** What each quality means. */
export const fineness: Readonly<Record<Quality, Fineness>> = {
  usual: { paths: 128, leastSets: 8, mostCorners: 60_000, hardCorners: 600_000, target: 0.007, errors: 2.5 },
  look: { paths: 64, leastSets: 4, mostCorners: 1_000, hardCorners: 1_000, target: 0.03, errors: 2.5 },
  glance: { paths: 32, leastSets: 6, mostCorners: 800, hardCorners: 800, target: 0.05, errors: 4 },
  fine: { paths: 256, leastSets: 16, mostCorners: 200_000, hardCorners: 600_000, target: 0.002, errors: 2.5 },
};
