import type { ShadedSource } from "../hiding/shaded.js";
import { directMap } from "./direct-map.js";
import type { KeptSet } from "./kept-set.js";
import type { Bounced } from "./types.js";

/** Bounced light of one source at all stations of a kept set. */
export function bouncedColumn(kept: KeptSet, source: ShadedSource): Bounced {
  const { light, variance, spotLight, spotVariance } = directMap(kept, source);
  const { cells, spots, direct, reach, viewChange, reachChange } = kept;
  const n = cells.count;
  const count = kept.stations.length;
  const bounced = new Float64Array(count);
  const error = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let sum = 0;
    let byView = 0;
    let byExchange = 0;
    let noise = 0;
    for (let c = 0; c < n; c++) {
      const e = light[c] as number;
      if (e === 0) continue;
      const r = (direct[i * n + c] as number) + (reach[i * n + c] as number);
      sum += r * e;
      byView += (viewChange[i * n + c] as number) * e;
      byExchange += (reachChange[i * n + c] as number) * e;
      noise += r * r * (variance[c] as number);
    }
    for (let k = spots.start[i] as number; k < (spots.start[i + 1] as number); k++) {
      const r = spots.weight[k] as number;
      sum += r * (spotLight[k] as number);
      noise += r * r * (spotVariance[k] as number);
    }
    bounced[i] = Math.max(0, sum);
    error[i] = Math.sqrt(byView * byView + byExchange * byExchange + noise);
  }
  return { bounced, error };
}
