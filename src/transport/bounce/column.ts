import type { ShadedSource } from "../hiding/shaded.js";
import { directMap } from "./direct-map.js";
import type { KeptSet } from "./kept-set.js";
import type { Bounced } from "./types.js";

/** Bounced light of one source at all stations of a kept set. */
export function bouncedColumn(kept: KeptSet, source: ShadedSource): Bounced {
  const { light, variance } = directMap(kept, source);
  const n = kept.cells.count;
  const count = kept.stations.length;
  const bounced = new Float64Array(count);
  const error = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let sum = 0;
    let byView = 0;
    let bySystem = 0;
    let noise = 0;
    for (let c = 0; c < n; c++) {
      const e = light[c] as number;
      if (e === 0) continue;
      const r = kept.reach[i * n + c] as number;
      sum += r * e;
      byView += ((kept.reachByView[i * n + c] as number) - r) * e;
      bySystem += ((kept.reachBySystem[i * n + c] as number) - r) * e;
      noise += r * r * (variance[c] as number);
    }
    bounced[i] = Math.max(0, sum);
    error[i] = Math.sqrt(byView * byView + bySystem * bySystem + noise);
  }
  return { bounced, error };
}
