import type { Scene } from "../scene/types.js";
import { meterKey } from "../transport/meter.js";
import { type SceneLight, sceneLight } from "../transport/scene-light.js";

/** The light of scenes, which may share what they have in common. */
export type LightOf = (scene: Scene) => SceneLight;

/**
 * Lights that are shared among scenes with the same room, surfaces, bodies and stations, so that a change of a lamp's
 * power or of the camera costs no light, and a moved lamp only its own. Answers are the same as without sharing.
 */
export function sharedLights(): LightOf {
  const bySet = new Map<string, SceneLight>();
  return (scene) => {
    const { room, polygons, bodies, stations } = scene;
    const set = JSON.stringify([room, polygons, bodies, stations.map(meterKey)]);
    const known = bySet.get(set);
    if (known !== undefined) return known;
    const light = sceneLight(scene);
    bySet.set(set, light);
    return light;
  };
}
