import { emptyVector } from "../physics/light-vector.js";
import type { Scene, Source, Station } from "../scene/types.js";
import { type PreparedSource, preparedReading, prepareSource } from "./direct.js";

/**
 * What every source gives every station per lumen-second of the source. Power, gels, sensitivity and aperture do not
 * enter, so changing them only repeats `mix`; moving one light changes one column.
 */
export interface LightField {
  readonly stations: number;
  readonly sources: number;
  /** lx s per lm s, a row of sources for each station. */
  readonly direct: Float64Array;
  /** The same for light by way of surfaces; null while that is not computed. */
  readonly bounced: Float64Array | null;
}

/** Fills one column of a field: what one source gives all stations. Allocates nothing for sources of one luminance. */
export function fillColumn(
  direct: Float64Array,
  source: PreparedSource,
  column: number,
  sources: number,
  stations: readonly Station[],
): void {
  const scratch = emptyVector();
  for (let i = 0; i < stations.length; i++) {
    const { at, facing, receptor } = stations[i] as Station;
    direct[i * sources + column] = preparedReading(
      source,
      at[0],
      at[1],
      at[2],
      facing[0],
      facing[1],
      facing[2],
      receptor,
      scratch,
    );
  }
}

/** The light field of a scene: direct light of all sources, lamps that are off included, at all stations. */
export function lightField(scene: Scene): LightField {
  const stations = scene.stations.length;
  const sources = scene.sources.length;
  const direct = new Float64Array(stations * sources);
  for (let j = 0; j < sources; j++) {
    fillColumn(direct, prepareSource(scene.sources[j] as Source), j, sources, scene.stations);
  }
  return { stations, sources, direct, bounced: null };
}

/** Direct light at one station from one source per lumen-second, lx s per lm s. */
export function directOf(field: LightField, station: number, source: number): number {
  return field.direct[station * field.sources + source] ?? 0;
}
