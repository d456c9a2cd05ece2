import type { ShadedSource } from "../hiding/shaded.js";
import type { KeptSet } from "./kept-set.js";
import { reachOf } from "./reach.js";
import type { Bounced } from "./types.js";

/** Bounced light of one source at all stations of a kept set. */
export function bouncedColumn(kept: KeptSet, source: ShadedSource): Bounced {
  const reaches = kept.stations.map((_, i) => reachOf(kept, source, i));
  return {
    bounced: Float64Array.from(reaches, ({ bounced }) => bounced),
    error: Float64Array.from(reaches, ({ error }) => error),
  };
}
