import type { Scene } from "../scene/types.js";
import { meterKey } from "../transport/meter.js";
import { type SceneLight, sceneLight } from "../transport/scene-light.js";
import { sourceKey } from "../transport/source-key.js";

/** The light of scenes, which may share what they have in common. */
export type LightOf = (scene: Scene) => SceneLight;

/**
 * Lights that share what depends on the set alone, among scenes with the same room, surfaces, bodies and stations; and
 * all of it where the lamps are the same too, so that a change of the camera costs nothing. Answers are the same as
 * without sharing.
 */
export function sharedLights(): LightOf {
  const bySet = new Map<string, SceneLight>();
  const byLamps = new Map<string, SceneLight>();
  return (scene) => {
    const { room, polygons, bodies, stations, sources } = scene;
    const set = JSON.stringify([room, polygons, bodies, stations.map(meterKey)]);
    const lamps = JSON.stringify([
      set,
      sources.map((source) => [source.name, sourceKey(source), source.energy, source.fullEnergy]),
    ]);
    const known = byLamps.get(lamps);
    if (known !== undefined) return known;
    const light = bySet.get(set)?.withLamps(scene) ?? sceneLight(scene);
    if (!bySet.has(set)) bySet.set(set, light);
    byLamps.set(lamps, light);
    return light;
  };
}
