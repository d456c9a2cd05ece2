import type { Scene, Source, Station } from "../scene/types.js";
import { type SceneLight, sceneLight } from "./scene-light.js";

/**
 * What every source gives every station per lumen-second of the source. Power, gels, sensitivity and aperture do not
 * enter, so changing them only repeats `mix`; moving one light changes one column.
 */
export interface LightField {
  readonly stations: number;
  readonly sources: number;
  /** lx s per lm s, a row of sources for each station. */
  readonly direct: Float64Array;
  /** The same for light by way of surfaces; null where it is left out. */
  readonly bounced: Float64Array | null;
  /** How far each part of `bounced` may be off; null with it. */
  readonly error: Float64Array | null;
}

/**
 * The light field of a scene: direct light with what hides it, and bounced light, of all sources, lamps that are off
 * included, at all stations.
 *
 * @param light - The light of the same set, where it is at hand; the scene's sources may be others.
 */
export function lightField(scene: Scene, light: SceneLight = sceneLight(scene)): LightField {
  const stations = scene.stations.length;
  const sources = scene.sources.length;
  const direct = new Float64Array(stations * sources);
  const bounced = new Float64Array(stations * sources);
  const error = new Float64Array(stations * sources);
  for (let j = 0; j < sources; j++) {
    for (let i = 0; i < stations; i++) {
      const reach = light.reach(scene.sources[j] as Source, scene.stations[i] as Station);
      direct[i * sources + j] = reach.direct;
      bounced[i * sources + j] = reach.bounced;
      error[i * sources + j] = reach.error;
    }
  }
  return { stations, sources, direct, bounced, error };
}

/** Direct light at one station from one source per lumen-second, lx s per lm s. */
export function directOf(field: LightField, station: number, source: number): number {
  return field.direct[station * field.sources + source] ?? 0;
}
