import type { ShadedSource } from "../hiding/shaded.js";
import type { KeptSet } from "./kept-set.js";
import type { Bounced } from "./types.js";

/** Bounced light of one source at all stations of a kept set. */
export function bouncedColumn(kept: KeptSet, _source: ShadedSource): Bounced {
  return { bounced: new Float64Array(kept.stations), error: new Float64Array(kept.stations) };
}
