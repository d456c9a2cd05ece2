import { emptyVector } from "../../src/physics/light-vector.js";
import type { Scene, Source, Station } from "../../src/scene/types.js";
import { type PreparedSource, preparedReading, prepareSource } from "../../src/transport/direct.js";
import type { LightField } from "../../src/transport/light-field.js";

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

/**
 * The light of a scene's sources as if nothing stood between them and the stations and nothing threw light back:
 * direct light of all sources, lamps that are off included, at all stations.
 */
export function freeField(scene: Scene): LightField {
  const stations = scene.stations.length;
  const sources = scene.sources.length;
  const direct = new Float64Array(stations * sources);
  for (let j = 0; j < sources; j++) {
    fillColumn(direct, prepareSource(scene.sources[j] as Source), j, sources, scene.stations);
  }
  return { stations, sources, direct, bounced: null, error: null };
}
